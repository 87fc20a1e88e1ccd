/** The session of laps, from one form into the book: which track and event, how long the engine ran, which run it was. */
import type { ComponentChildren } from 'preact';
import { useState } from 'preact/hooks';
import type { Problem } from '../../app/index.ts';
import { useBeingWritten } from '../kept.ts';
import type { Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { type Asking, Stepper, Tick } from '../track/fields.tsx';
import { Press } from '../track/press.tsx';
import type { Typed } from '../track/said.ts';
import { keepWritten } from '../track/written.tsx';
import { eventsOf } from '../views/entry-field.tsx';
import { lapsWords } from '../words/laps/sheet.tsx';
import { dayOf, spanOf, timeOf } from '../words/reads.ts';
import type { Answered, LapsWritten } from './into-book.ts';
import { fieldAt, runsWithoutLaps, type SessionSaid, sessionSaid, tracksOf } from './saying.ts';

export function SessionForm(props: {
  readonly form: string;
  /** Whose laps they are, for who hears the page. */
  readonly of: string;
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: Keep;
  /** What is written besides: once one of these is another one, what was asked about is judged anew. */
  readonly beside: readonly unknown[];
  /** What stands there before anybody typed. */
  readonly likely: Typed;
  /** The log names no day. */
  readonly undated?: boolean;
  readonly button: string;
  readonly disabled?: boolean;
  readonly children?: ComponentChildren;
  /** Whether the laps still stand as they were drawn. */
  readonly stands?: () => boolean;
  readonly send: (said: SessionSaid, sure: boolean) => Promise<Answered<LapsWritten>>;
  readonly onWritten: (written: LapsWritten) => void;
}) {
  const { form, of, snapshot, session, keep, beside, likely, undated, button, children, send, onWritten } = props;
  const { stands = () => true } = props;
  const [typedHere, setTyped] = useState<Typed>({});
  const [refused, setRefused] = useState<readonly Problem[]>([]);
  const [asked, setAsked] = useState<{ readonly typed: Typed; readonly beside: readonly unknown[] }>();
  const busy = session.view().writing;
  const [isSent, isWritten] = useBeingWritten(session);
  const typed = { ...likely, ...typedHere };
  const asksAgain =
    asked !== undefined &&
    JSON.stringify(asked.typed) === JSON.stringify(typed) &&
    asked.beside.every((one, i) => one === beside[i]);
  const asking: Asking = {
    form,
    typed,
    problemsAt: key => refused.filter(problem => fieldAt(problem) === key),
    put(key, text) {
      setTyped({ ...typedHere, [key]: text });
      setRefused(refused.filter(problem => fieldAt(problem) !== key));
    },
  };
  const press = async (again: boolean): Promise<void> => {
    if (!stands()) return;
    const said = sessionSaid(typed);
    if (!said.ok) return setRefused(said.problems);
    const answer = await isWritten(send(said.value, again && asksAgain));
    if (answer.kind === 'refused') {
      setRefused(answer.problems);
      setAsked(answer.asksAgain ? { typed, beside } : undefined);
      return;
    }
    setRefused([]);
    setAsked(undefined);
    keepWritten(keep, snapshot.kart.name, answer.value.facts);
    onWritten(answer.value);
  };
  const again = (typed.run ?? '') !== '';
  const rest = refused.filter(problem => fieldAt(problem) === undefined);
  return (
    <section class="group no-print" aria-label={lapsWords.intoBookThis(of)}>
      <h2>
        {lapsWords.intoBook} <span>{lapsWords.itsHoursMakePartsOlder}</span>
      </h2>
      <Press writing={{ asking, isSent, busy, rest, asksAgain, press }} button={button}>
        {children}
        {undated && <WhenDriven asking={asking} />}
        <WhichRun asking={asking} snapshot={snapshot} />
        <div class="two-fields steppers">
          <TrackName asking={asking} snapshot={snapshot} />
          {!again && <Stepper asking={asking} at="minutes" label={lapsWords.engineRan} unit="min" />}
        </div>
        {!again && (
          <>
            <div class="two-fields">
              <EventOf asking={asking} snapshot={snapshot} />
              <div class="entry-field">
                <label for={`${form}-session`}>{lapsWords.session}</label>
                <input
                  id={`${form}-session`}
                  autocomplete="off"
                  maxLength={200}
                  value={typed.session ?? ''}
                  onInput={e => asking.put('session', e.currentTarget.value)}
                />
              </div>
            </div>
            <Tick asking={asking} at="wet" label={lapsWords.itWasWet} />
          </>
        )}
      </Press>
    </section>
  );
}

function WhenDriven({ asking }: Pick<Of, 'asking'>) {
  const id = `${asking.form}-at`;
  return (
    <div class="entry-field">
      <label for={id}>{lapsWords.whenItWasDriven}</label>
      <input
        id={id}
        type="datetime-local"
        aria-describedby={`${id}-why`}
        aria-invalid={asking.problemsAt('at').length > 0}
        value={asking.typed.at ?? ''}
        onInput={e => asking.put('at', e.currentTarget.value)}
      />
      <p id={`${id}-why`} class="soft">
        {lapsWords.logNamesNoDayLeft}
      </p>
      {asking.problemsAt('at').map(({ message, remedy }) => (
        <p key={message} class="refused" role="alert">
          <b>{message}</b> {remedy}
        </p>
      ))}
    </div>
  );
}

type Of = { readonly asking: Asking; readonly snapshot: Snapshot };

/** A run that is written down already counts its hours once. */
function WhichRun({ asking, snapshot }: Of) {
  const runs = runsWithoutLaps(snapshot);
  const problems = asking.problemsAt('run');
  if (runs.length === 0) return null;
  return (
    <div class="entry-field">
      <label for={`${asking.form}-run`}>{lapsWords.whichRunItWas}</label>
      <select
        id={`${asking.form}-run`}
        class="field"
        aria-invalid={problems.length > 0}
        value={asking.typed.run ?? ''}
        onChange={e => asking.put('run', e.currentTarget.value)}
      >
        <option value="">{lapsWords.runNotWrittenDownYet}</option>
        {runs.map(run => (
          <option key={run.id} value={run.id}>
            {[run.event, run.session].filter(Boolean).join(', ') || lapsWords.aRun}, {dayOf(run.at)} {timeOf(run.at)},{' '}
            {spanOf(run.minutes)}
          </option>
        ))}
      </select>
      {problems.map(({ message }) => (
        <p key={message} class="refused" role="alert">
          {lapsWords.chooseItHereSo(message)}
        </p>
      ))}
    </div>
  );
}

function TrackName({ asking, snapshot }: Of) {
  const id = `${asking.form}-track`;
  return (
    <div class="entry-field">
      <label for={id}>{lapsWords.track}</label>
      <input
        id={id}
        list={`${id}s`}
        autocomplete="off"
        maxLength={200}
        value={asking.typed.track ?? ''}
        onInput={e => asking.put('track', e.currentTarget.value)}
      />
      <datalist id={`${id}s`}>
        {tracksOf(snapshot).map(track => (
          <option key={track} value={track} />
        ))}
      </datalist>
    </div>
  );
}

function EventOf({ asking, snapshot }: Of) {
  const id = `${asking.form}-event`;
  return (
    <div class="entry-field">
      <label for={id}>{lapsWords.event}</label>
      <select
        id={id}
        class="field"
        value={asking.typed.event ?? ''}
        onChange={e => asking.put('event', e.currentTarget.value)}
      >
        <option value="">{lapsWords.none}</option>
        {eventsOf(snapshot).map(([event, text]) => (
          <option key={event} value={event}>
            {text}
          </option>
        ))}
      </select>
    </div>
  );
}
