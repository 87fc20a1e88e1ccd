/** An answer: what to do, the plate, the figures, what to doubt, and how it was worked out. */
import { Fragment } from 'preact';
import { useMemo } from 'preact/hooks';
import { type Answer, BIBLIOGRAPHY, readFirst, type Source, type Subject } from '../../numbers/index.ts';
import { ownFigure } from '../choice/choice.ts';
import { Caution } from '../parts.tsx';
import { numbersWords } from '../words/numbers.ts';
import { capital } from '../words/reads.ts';
import { type Drawn, plateOf } from './plates/index.ts';

const CAUTION = /^Caution: /;
/** Past what the formula was checked for, or not to be used: said so before the words. */
const MARKED = /^(Outside|Reject)/;

export function Answered(props: {
  readonly subject: Subject;
  readonly question: Readonly<Record<string, unknown>>;
  readonly answer: Answer;
}) {
  const { subject, question, answer } = props;
  // Not drawn anew with every letter that is typed.
  const drawn = useMemo(() => plateOf(subject.name, { question, answer }), [subject, question, answer]);
  return (
    <>
      <Marked answer={answer} />
      <Said answer={answer} />
      {drawn && <PlateFigure drawn={drawn} />}
      <Cautions answer={answer} />
      <Notes answer={answer} />
      <Figures subject={subject} answer={answer} />
    </>
  );
}

type Of = { readonly answer: Answer };

export function Marked({ answer }: Of) {
  const marked = answer.notes.filter(note => MARKED.test(note));
  if (marked.length === 0) return null;
  return (
    <div class="refused">
      {marked.map(note => (
        <p key={note}>
          <b>{note.startsWith('Reject') ? numbersWords.notToBeUsedSo : numbersWords.outsideWhatThisWas}</b>{' '}
          {capital(note.replace(/^Reject: |^Outside (the range this was checked for|validity): /, ''))}
        </p>
      ))}
    </div>
  );
}

export const Said = ({ answer }: Of) => (
  <div class="said">
    {answer.say
      .filter(text => !CAUTION.test(text))
      .map(text => (
        <p key={text}>{text}</p>
      ))}
  </div>
);

export const Cautions = ({ answer }: Of) => (
  <>
    {answer.say
      .filter(text => CAUTION.test(text))
      .map(text => (
        <Caution key={text} text={capital(text.replace(CAUTION, ''))} />
      ))}
  </>
);

export const Notes = ({ answer }: Of) => (
  <>
    {answer.notes
      .filter(note => !MARKED.test(note))
      .map(note => (
        <p key={note} class="note">
          {note}
        </p>
      ))}
  </>
);

export function Figures({ subject, answer }: { readonly subject: Subject; readonly answer: Answer }) {
  const { first, rest } = readFirst(subject, answer);
  return (
    <section class="group">
      <h2>{numbersWords.figures}</h2>
      <Table
        head={['', 'value']}
        rows={first.map(([name, figure]) => [name, ownFigure(figure)])}
        name={numbersWords.figuresOfAnswer}
      />
      {rest.length > 0 && (
        <details class="behind">
          <summary>{numbersWords.otherFiguresCount(rest.length)}</summary>
          <Table
            head={['', 'value']}
            rows={rest.map(([name, figure]) => [name, ownFigure(figure)])}
            name={numbersWords.otherFiguresTable}
          />
        </details>
      )}
    </section>
  );
}

export function PlateFigure({ drawn }: { readonly drawn: Drawn }) {
  return (
    <figure class="sheet plate-sheet">
      {drawn.drawing}
      <figcaption>
        <details>
          <summary>{numbersWords.drawingAsTable}</summary>
          <Table head={drawn.head} rows={drawn.rows} name={drawn.title} />
        </details>
      </figcaption>
    </figure>
  );
}

function Table(props: {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
  readonly name: string;
}) {
  const [first, ...rest] = props.head;
  return (
    <table class="figures" aria-label={props.name}>
      <thead class={rest.length === 1 ? 'quiet-head' : ''}>
        <tr>
          {first === '' ? <td /> : <th scope="col">{first}</th>}
          {rest.map(text => (
            <th key={text} scope="col">
              {text}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {props.rows.map(([name = '', ...cells]) => (
          <tr key={name}>
            <th scope="row">{capital(name)}</th>
            {cells.map((text, n) => (
              <td key={rest[n]}>
                <Unbroken text={text} />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** `146.05 mm (5 3/4 in)` breaks before what it is on a tape, never inside a number and its unit. */
function Unbroken({ text }: { readonly text: string }) {
  return text.split(/ (?=\()/).map((part, n) => (
    <Fragment key={part}>
      {n > 0 && ' '}
      <span class={part.length <= SHORT && /\d/.test(part) ? 'unbroken' : ''}>{part}</span>
    </Fragment>
  ));
}
const SHORT = 18;

const SEEN: Readonly<Record<Source['seen'], string>> = {
  read: numbersWords.readInPublicCopy,
  excerpt: numbersWords.asQuotedBySomebodyElse,
  memory: numbersWords.fromMemoryNotVerified,
  'common practice': numbersWords.commonPractice,
};

export function HowWorkedOut({ subject: { card } }: { readonly subject: Subject }) {
  return (
    <details class="group how">
      <summary>
        <h2>{numbersWords.howThisWasWorkedOut}</h2>
      </summary>
      <p>{card.what}</p>
      <h3>{numbersWords.equation}</h3>
      <ul class="equations">
        {card.equation.split(/;\s{2,}/).map(line => (
          <li key={line}>{line}</li>
        ))}
      </ul>
      <h3>{numbersWords.symbols}</h3>
      <dl class="symbols">
        {Object.entries(card.symbols).map(([symbol, meaning]) => (
          <div key={symbol}>
            <dt>{symbol}</dt>
            <dd>{meaning}</dd>
          </div>
        ))}
      </dl>
      <h3>{numbersWords.whereItHolds}</h3>
      <p>{card.validity}</p>
      <h3>{numbersWords.sources}</h3>
      <ul class="sources">
        {card.sources.map(key => (
          <li key={key}>
            {BIBLIOGRAPHY[key].title} <span class="soft">({SEEN[BIBLIOGRAPHY[key].seen]})</span>
          </li>
        ))}
      </ul>
    </details>
  );
}
