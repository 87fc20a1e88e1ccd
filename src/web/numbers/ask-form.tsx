/** The form of a question: a field a line, what was refused right beneath it, what was typed left as it is. */
import type { ComponentChildren } from 'preact';
import { useEffect, useRef } from 'preact/hooks';
import { type Problem, sentence } from '../../app/index.ts';
import type { InputProblem } from '../../numbers/index.ts';
import { Refused } from '../parts.tsx';
import { capital } from '../words.ts';
import type { ChoiceField, Field, Form, ListField, TextField } from './fields.ts';
import { problemsAt, problemsElsewhere, type Row, rowsOf, type Typed, textOf } from './question.ts';

type Props = {
  readonly form: Form;
  readonly typed: Typed;
  readonly problems: readonly InputProblem[];
  /** How often it was asked: a new refusal takes the eye to its field. */
  readonly times: number;
  readonly onTyped: (typed: Typed) => void;
  readonly onAsk: () => void;
  readonly children?: ComponentChildren; // further buttons
};

export function AskForm(props: Props) {
  const { form, typed, problems } = props;
  const at = useRef<HTMLFormElement>(null);
  const refused = problems.length > 0 ? props.times : 0;
  useEffect(() => {
    if (refused > 0) at.current?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus();
  }, [refused]);
  const show = (field: Field) => (
    <Entry
      key={field.key}
      field={field}
      typed={typed}
      problems={problems}
      onTyped={value => props.onTyped({ ...typed, [field.key]: value })}
    />
  );
  const filled = form.more.some(field => textOf(typed, field.key) !== '' || rowsOf(typed, field.key).length > 0);
  const wrong = form.more.some(field => problems.some(p => p.path.split('/')[0] === field.key));
  return (
    <form
      ref={at}
      class="ask"
      noValidate
      onSubmit={e => {
        e.preventDefault();
        props.onAsk();
      }}
    >
      {form.first.map(show)}
      {form.more.length > 0 && (
        <details class="group" open={filled || wrong}>
          <summary>
            <h2>
              If known <span>{form.more.length} more</span>
            </h2>
          </summary>
          {form.more.map(show)}
        </details>
      )}
      <Refused problems={problemsElsewhere(form, typed, problems).map(toProblem)} />
      <button type="submit" class="button main big wide">
        Work it out
      </button>
      {props.children}
    </form>
  );
}

const toProblem = ({ path, expected, got, remedy }: InputProblem): Problem => ({
  code: 'reading',
  where: path,
  message: `Expected ${expected}, got ${got}.`,
  remedy: sentence(remedy),
});

/** An id may hold no space. */
const idOf = (path: string): string => `ask-${path.replace(/[^a-z0-9]+/gi, '-')}`;

function Entry(props: {
  readonly field: Field;
  readonly typed: Typed;
  readonly problems: readonly InputProblem[];
  readonly onTyped: (value: string | readonly Row[]) => void;
}) {
  const { field, typed, problems, onTyped } = props;
  if (field.is === 'list')
    return <List field={field} rows={rowsOf(typed, field.key)} problems={problems} onTyped={onTyped} />;
  return <Line field={field} path={field.key} value={textOf(typed, field.key)} problems={problems} onTyped={onTyped} />;
}

function Line(props: {
  readonly field: TextField | ChoiceField;
  readonly path: string;
  readonly value: string;
  readonly problems: readonly InputProblem[];
  readonly onTyped: (text: string) => void;
}) {
  const { field, path, value } = props;
  const problems = problemsAt(props.problems, path);
  const id = idOf(path);
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
        {field.must && <span class="needed"> needed</span>}
      </label>
      {field.is === 'choice' ? (
        <select {...of} class="field" onChange={e => props.onTyped(e.currentTarget.value)}>
          <option value="">not said</option>
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
          onInput={e => props.onTyped(e.currentTarget.value)}
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
  [capital(field.meaning), field.is === 'text' && field.example !== '' ? `for example ${field.example}` : '']
    .filter(Boolean)
    .join(', ');

/** Rows of the same fields; one is added or taken out by a button, never by a gesture. */
function List(props: {
  readonly field: ListField;
  readonly rows: readonly Row[];
  readonly problems: readonly InputProblem[];
  readonly onTyped: (rows: readonly Row[]) => void;
}) {
  const { field, rows, onTyped } = props;
  const one = capital(field.key.replace(/s$/, ''));
  return (
    <fieldset class="list-entry">
      <legend>
        {capital(field.key)}
        {field.must && <span class="needed"> needed</span>}
      </legend>
      {field.meaning !== '' && <p class="soft">{field.meaning}</p>}
      {rows.map((row, n) => (
        <fieldset key={n} class="list-row">
          <legend>
            {one} {n + 1}
          </legend>
          {field.rows.map(part => (
            <Line
              key={part.key}
              field={part}
              path={`${field.key}/${n}/${part.key}`}
              value={row[part.key] ?? ''}
              problems={props.problems}
              onTyped={text => onTyped(rows.map((r, i) => (i === n ? { ...r, [part.key]: text } : r)))}
            />
          ))}
          <button type="button" class="button plain" onClick={() => onTyped(rows.filter((_, i) => i !== n))}>
            Take out {one.toLowerCase()} {n + 1}
          </button>
        </fieldset>
      ))}
      <Refused problems={problemsAt(props.problems, field.key).map(toProblem)} />
      <button type="button" class="button" onClick={() => onTyped([...rows, {}])}>
        Add a {one.toLowerCase()}
      </button>
    </fieldset>
  );
}
