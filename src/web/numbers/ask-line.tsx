/** One field of a question: its name, what it means with an example, and what was refused about it. */
import { type Problem, sentence } from '../../app/index.ts';
import type { InputProblem } from '../../numbers/index.ts';
import { Refused } from '../parts.tsx';
import { numbersWords } from '../words/numbers.ts';
import { capital } from '../words/reads.ts';
import type { ChoiceField, TextField } from './fields.ts';

export const toProblem = ({ path, expected, got, remedy }: InputProblem): Problem => ({
  code: 'reading',
  where: path,
  message: numbersWords.expectedGot(expected, got),
  // Whole questions as JSON are for the command line; here one press shows the example.
  remedy: sentence(remedy.replace(/(^|; )an example: .*$/s, numbersWords.tryExampleShowsOne)),
});

export const Needed = () => <span class="needed"> {numbersWords.needed}</span>;

/** An id may hold no space. */
const idOf = (path: string): string => `ask-${path.replace(/[^a-z0-9]+/gi, '-')}`;

export function Line(props: {
  readonly field: TextField | ChoiceField;
  readonly path: string;
  readonly value: string;
  readonly problems: readonly InputProblem[];
  readonly onTyped: (text: string) => void;
}) {
  const { field, value, problems, onTyped } = props;
  const id = idOf(props.path);
  const hint = hintOf(field);
  const of = {
    id,
    value,
    'aria-invalid': problems.length > 0,
    ...(hint === '' ? {} : { 'aria-describedby': `${id}-hint` }),
  };
  return (
    <div class="entry-field">
      <label for={id}>
        {capital(field.key)}
        {field.must && <Needed />}
      </label>
      {field.is === 'choice' ? (
        <select {...of} class="field" onChange={e => onTyped(e.currentTarget.value)}>
          <option value="">{numbersWords.notSaid}</option>
          {field.choices.map(choice => (
            <option key={choice} value={choice}>
              {choice}
            </option>
          ))}
        </select>
      ) : (
        <input
          {...of}
          type="text"
          autocomplete="off"
          autocapitalize="off"
          spellcheck={false}
          onInput={e => onTyped(e.currentTarget.value)}
        />
      )}
      {hint !== '' && (
        <p class="soft" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      <Refused problems={problems.map(toProblem)} />
    </div>
  );
}

const hintOf = (field: TextField | ChoiceField): string =>
  [capital(field.meaning), field.is === 'text' && field.example !== '' ? numbersWords.forExample(field.example) : '']
    .filter(Boolean)
    .join(', ');
