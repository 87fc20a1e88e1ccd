/** The air now: what was read is a fact, and every answer is worked out anew from it. */
import { useState } from 'preact/hooks';
import type { FactOf } from '../../book/index.ts';
import { hashOf, type Keep } from '../place.ts';
import type { Session, Snapshot } from '../session.ts';
import { readAtTrackWords } from '../words/read-at-track.ts';
import { timeOf } from '../words/reads.ts';
import { trackWords } from '../words/track.tsx';
import { AIR, asksElevation, lastAirAt, PRESSURES, weatherSaid } from './air-said.ts';
import { Entry, Tiles } from './fields.tsx';
import { Press } from './press.tsx';
import { useTyped, useWriting } from './writing.ts';
import { keepWritten } from './written.tsx';

type Props = {
  readonly snapshot: Snapshot;
  readonly session: Session;
  readonly keep: Keep;
  readonly track: string | undefined;
  readonly onWritten: () => void;
};

/** The reading that counts, with the way to read again; the form while there is none. */
export function AirNow(props: Props) {
  const last = newestOf(props.snapshot);
  const [again, setAgain] = useState(false);
  const isBegun = props.keep.get(slotOf(props.snapshot)) !== '';
  if (last !== undefined && !again && !isBegun)
    return (
      <section class="air-read" aria-label={trackWords.airNow}>
        <p>
          <small class="soft">{trackWords.airRead(timeOf(last.at))}</small>
          <b>{readAtTrackWords.air(last).replace(/(\d) (?=\S)/g, '$1\u00a0')}</b>
        </p>
        {/* What is being written would close the form that is opened meanwhile. */}
        <button
          type="button"
          class="button no-print"
          disabled={props.session.view().writing}
          onClick={() => setAgain(true)}
        >
          {trackWords.readItAgain}
        </button>
      </section>
    );
  return (
    <AirForm
      {...props}
      onWritten={() => {
        setAgain(false);
        props.onWritten();
      }}
    />
  );
}

const slotOf = ({ kart }: Snapshot): string => `track air ${kart.name}`;
const HALF_DAY_MS = 12 * 3_600_000; // as long as a reading is asked with

const newestOf = ({ facts }: Snapshot): FactOf<'weather'> | undefined =>
  facts.find(
    ({ fact, struck }) => struck === null && fact.kind === 'weather' && Date.now() - Date.parse(fact.at) <= HALF_DAY_MS,
  )?.fact as FactOf<'weather'> | undefined;

function AirForm({ snapshot, session, keep, track, onWritten }: Props) {
  const entry = useTyped(keep, slotOf(snapshot), lastAirAt(snapshot.facts, track));
  const writing = useWriting({
    form: 'air',
    entry,
    session,
    read: typed => {
      const heard = weatherSaid(typed, track);
      return heard.ok ? { ok: true, value: [heard.value] } : heard;
    },
    fieldOf: ({ where }) => where.replace(/^.*\./, ''),
    again: (drafts, _, asks) => (asks ? drafts : undefined),
    onWritten(facts) {
      keepWritten(keep, snapshot.kart.name, facts);
      onWritten();
    },
  });
  const { asking } = writing;
  return (
    <section class="step no-print" aria-label={trackWords.airNow}>
      <header>
        <b>{trackWords.airNow}</b>
        <span>{track ?? trackWords.noTrackNamed}</span>
      </header>
      <div class="step-body">
        <Press writing={writing} button={trackWords.thisIsAir}>
          <div class="two-fields">
            <Entry asking={asking} at="celsius" label={AIR.celsius.label} unit="°C" />
            <Entry asking={asking} at="trackCelsius" label={AIR.trackCelsius.label} unit="°C" />
            <Entry asking={asking} at="humidity" label={AIR.humidity.label} unit="%" />
            <Entry asking={asking} at="pascal" label={AIR.pascal.label} unit="hPa" />
          </div>
          <Tiles asking={asking} at="pressureIs" label={trackWords.whichPressure} choices={PRESSURES} />
          {asksElevation(asking.typed) && <Entry asking={asking} at="elevation" label={AIR.elevation.label} unit="m" />}
          <p class="soft">{trackWords.anotherUnitMay(hashOf({ sheet: 'numbers', number: 'air' }))}</p>
        </Press>
      </div>
    </section>
  );
}
