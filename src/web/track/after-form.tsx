/** After a session: everything in one form and one press, in less than a minute with gloves on. */

import { TYRES } from '../../book/index.ts';
import { CORNERS } from '../../kart/index.ts';
import { ownUnitOf } from '../choice/choice.ts';
import { Caution } from '../parts.tsx';
import type { Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { eventsOf } from '../views/entry-field.tsx';
import { trackWords } from '../words/track.tsx';
import {
  AFTER,
  afterSaid,
  fieldAfter,
  hotKey,
  outOfLimits,
  PLACES,
  pressureUnit,
  saidAgain,
  treadKey,
} from './after-said.ts';
import { type Asking, Corners, Entry, Stepper, Tick, Tiles } from './fields.tsx';
import { Press } from './press.tsx';
import type { Typed } from './said.ts';
import { useTyped, useWriting } from './writing.ts';
import { keepWritten } from './written.tsx';

const PLUG = [
  ['lean', trackWords.lean],
  ['right', trackWords.right],
  ['rich', trackWords.rich],
  ['', trackWords.notRead],
] as const;
const IMPACTS = [
  ['', trackWords.none],
  ['knock', 'A knock'],
  ['hit', 'A hit'],
  ['crash', 'A crash'],
] as const;

export function AfterForm(props: {
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: Keep;
  /** What stands there before anybody typed: as the last session was, and the event under way. */
  readonly likely: Typed;
  readonly onWritten: () => void;
}) {
  const { snapshot, session, keep, likely, onWritten } = props;
  const { kart, state } = snapshot;
  const entry = useTyped(keep, `track after ${kart.name}`, likely);
  const trackOf = (event: string | undefined) => state.events[event ?? '']?.track;
  const writing = useWriting({
    form: 'after',
    entry,
    session,
    read: typed => afterSaid(kart, typed, trackOf(typed.event)),
    fieldOf: (problem, drafts) => fieldAfter(kart, drafts, problem),
    again: (drafts, problems, asks) => (saidAgain(problems, asks) ? outOfLimits(drafts, problems) : undefined),
    onWritten(facts) {
      keepWritten(keep, kart.name, facts);
      onWritten();
    },
  });
  const { asking } = writing;
  const asLast = likely.minutes === undefined ? undefined : trackWords.asSessionBeforeChange;
  return (
    <section class="step no-print" aria-label={trackWords.afterSession}>
      <header>
        <b>{trackWords.afterSession}</b>
        <span>{trackWords.onePressWritesItAll}</span>
      </header>
      <div class="step-body after">
        <Press writing={writing} button={trackWords.writeItAllDown}>
          <div class="two-fields steppers">
            <Stepper asking={asking} at="minutes" label={trackWords.engineRan} unit="min" />
            <Stepper asking={asking} at="laps" label={trackWords.laps} />
          </div>
          {asLast && <p class="soft">{asLast}</p>}
          <Caution text={trackWords.engineOffBeforeHandsGo} />
          <Corners
            asking={asking}
            legend={trackWords.hotWithinMinute}
            keyOf={hotKey}
            unit={pressureUnit(kart, 'hot pressure')}
          />
          <Tiles
            asking={asking}
            at="plug"
            label={trackWords.plugAndPistonAfterFull}
            choices={PLUG}
            hint={trackWords.engineOffAndColdEnough}
          />
          <div class="two-fields">
            <Entry asking={asking} at="litres" label={AFTER.litres.label} unit="l" />
            <Entry asking={asking} at="meterHours" label={AFTER.meterHours.label} unit="h" />
          </div>
          <Tick asking={asking} at="wet" label={trackWords.itWasWet} />
          <Named asking={asking} snapshot={snapshot} />
          <Impact asking={asking} />
          <Treads asking={asking} />
        </Press>
      </div>
    </section>
  );
}

function Named({ asking, snapshot }: { readonly asking: Asking; readonly snapshot: Snapshot }) {
  const { typed, put } = asking;
  return (
    <div class="two-fields">
      <div class="entry-field">
        <label for="after-event">{trackWords.event}</label>
        <select
          id="after-event"
          class="field"
          value={typed.event ?? ''}
          onChange={e => put('event', e.currentTarget.value)}
        >
          <option value="">{trackWords.noImpact}</option>
          {eventsOf(snapshot).map(([event, text]) => (
            <option key={event} value={event}>
              {text}
            </option>
          ))}
        </select>
      </div>
      <div class="entry-field">
        <label for="after-session">{trackWords.session}</label>
        <input
          id="after-session"
          autocomplete="off"
          maxLength={200}
          value={typed.session ?? ''}
          onInput={e => put('session', e.currentTarget.value)}
        />
      </div>
    </div>
  );
}

const isOpen = ({ typed, problemsAt }: Asking, keys: readonly string[]): boolean =>
  keys.some(key => (typed[key] ?? '') !== '' || problemsAt(key).length > 0);

function Impact({ asking }: { readonly asking: Asking }) {
  const hit = (asking.typed.severity ?? '') !== '';
  return (
    <details class="group" open={isOpen(asking, ['severity', 'corner'])}>
      <summary>
        <h2>
          {trackWords.impact} <span>{hit ? asking.typed.severity : trackWords.noImpact}</span>
        </h2>
      </summary>
      <Tiles asking={asking} at="severity" label={trackWords.howHard} choices={IMPACTS} />
      {hit && (
        <Tiles
          asking={asking}
          at="corner"
          label={trackWords.whereItWasHit}
          choices={CORNERS.map(corner => [corner, corner === 'whole' ? trackWords.atNoOneCorner : corner] as const)}
        />
      )}
    </details>
  );
}

const TREADS = TYRES.flatMap(tyre => PLACES.map(place => treadKey(tyre, place)));

function Treads({ asking }: { readonly asking: Asking }) {
  return (
    <details class="group" open={isOpen(asking, TREADS)}>
      <summary>
        <h2>
          {trackWords.treadTemperatures} <span>{trackWords.byProbe(ownUnitOf('°C'))}</span>
        </h2>
      </summary>
      {TYRES.map(tyre => (
        <fieldset key={tyre}>
          <legend>{tyre}</legend>
          <div class="three-fields">
            {PLACES.map(place => (
              <Entry key={place} asking={asking} at={treadKey(tyre, place)} label={`${place}`} />
            ))}
          </div>
        </fieldset>
      ))}
    </details>
  );
}
