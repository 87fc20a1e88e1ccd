/** One number of the day: its warning first, the figures that decide, what to do, and how it was worked out. */
import type { ComponentChildren } from 'preact';
import { useMemo } from 'preact/hooks';
import { type Answer, subjects } from '../../numbers/index.ts';
import type { Lead, Missing, TrackPart } from '../../prep/index.ts';
import { own } from '../choice/choice.ts';
import { Glyph } from '../glyph.tsx';
import { Cautions, Figures, HowWorkedOut, Marked, Notes, PlateFigure, Said } from '../numbers/answered.tsx';
import { toProblem } from '../numbers/ask-line.tsx';
import { plateOf } from '../numbers/plates/index.ts';
import { typedOf } from '../numbers/question.ts';
import { Refused } from '../parts.tsx';
import { hashOf, type Keep } from '../place.ts';
import { trackWords } from '../words/track.tsx';

/** As it is called in the pit. */
export const NAMES: Readonly<Record<TrackPart['subject'], string>> = {
  air: trackWords.air,
  carburation: trackWords.mainJet,
  tyres: trackWords.coldPressures,
  premix: trackWords.fuel,
  gearing: trackWords.gearing,
};

export function Part(props: {
  readonly part: TrackPart;
  readonly kart: string;
  readonly keep: Keep;
  /** What another part above has said to be missing. */
  readonly told: readonly Missing[];
  /** Instead of the figures in a row; a hand goes to work on it, so the caution stands before it. */
  readonly lead?: ComponentChildren;
  readonly children?: ComponentChildren;
}) {
  const { part, kart, keep, told, lead, children } = props;
  const { subject: name, question, answer, warning, missing, from } = part;
  const subject = subjects.find(one => one.name === name);
  const id = `track-${name}`;
  const open = missing.filter(({ what }) => !told.some(other => other.what === what));
  const waits = open.length < missing.length && answer === null;
  return (
    <section class="group track-part" aria-labelledby={id}>
      <h2 id={id}>{NAMES[name]}</h2>
      {warning !== null && (
        <div class="seizure" role="note">
          <Glyph sign="caution" />
          <p>
            <strong>{trackWords.warning}</strong> {warning}
          </p>
        </div>
      )}
      {lead === undefined ? (
        <Leads lead={part.lead} />
      ) : (
        <>
          {answer?.kind === 'answer' && <Cautions answer={answer} />}
          {lead}
        </>
      )}
      {answer?.kind === 'problems' && <Refused problems={answer.problems.map(toProblem)} />}
      {answer?.kind === 'answer' && (
        <>
          <Marked answer={answer} />
          <Said answer={answer} />
          {lead === undefined && <Cautions answer={answer} />}
        </>
      )}
      {children}
      {waits && <p class="note">{trackWords.firstAirAbove}</p>}
      <Lacks missing={open} />
      {from.length > 0 && <p class="soft from">{from.join(' ')}</p>}
      {question !== null && answer?.kind === 'answer' && <More part={part} question={question} answer={answer} />}
      {subject && (
        <div class="no-print">
          <HowWorkedOut subject={subject} />
        </div>
      )}
      <a
        class="button plain wide no-print"
        href={hashOf({ sheet: 'numbers', number: name })}
        onClick={() => question && asIfTyped(keep, kart, name, question)}
      >
        {trackWords.openInNumbers(NAMES[name].toLowerCase())}
      </a>
    </section>
  );
}

/** The Numbers sheet opens with this question in its fields, and its answer beneath. */
function asIfTyped(keep: Keep, kart: string, name: string, question: Readonly<Record<string, unknown>>): void {
  const typed = JSON.stringify(typedOf(question));
  keep.set(`numbers typed ${kart} ${name}`, typed);
  keep.set(`numbers asked ${kart} ${name}`, typed);
}

const Leads = ({ lead }: { readonly lead: readonly Lead[] }) =>
  lead.length === 0 ? null : (
    <dl class="leads">
      {lead.map(({ label, text }) => (
        <div key={label}>
          <dt>{label}</dt>
          <dd>{own(text)}</dd>
        </div>
      ))}
    </dl>
  );

const Lacks = ({ missing }: { readonly missing: readonly Missing[] }) =>
  missing.length === 0 ? null : (
    <ul class="rows lacks">
      {missing.map(({ what, how }) => (
        <li key={what}>
          <Glyph sign="not known" />
          <div>
            <b>{what}</b>
            <p>{how}</p>
          </div>
        </li>
      ))}
    </ul>
  );

/** Drawn at once where a picture says it faster, else with the rest. */
const DRAWN: ReadonlySet<TrackPart['subject']> = new Set(['carburation']);

function More(props: {
  readonly part: TrackPart;
  readonly question: Readonly<Record<string, unknown>>;
  readonly answer: Answer;
}) {
  const { part, question, answer } = props;
  const subject = subjects.find(({ name }) => name === part.subject);
  const drawn = useMemo(() => plateOf(part.subject, { question, answer }), [part.subject, question, answer]);
  const plate = drawn && <PlateFigure drawn={drawn} />;
  const first = DRAWN.has(part.subject);
  return (
    <>
      {first && plate}
      <details class="group more no-print">
        <summary>
          <h2>{first || !plate ? trackWords.notesAndFigures : trackWords.drawingNotesAndFigures}</h2>
        </summary>
        {!first && plate}
        <Notes answer={answer} />
        {subject && <Figures subject={subject} answer={answer} />}
      </details>
    </>
  );
}
