/** Two laps side by side: where one gained and lost against the other, and what the kart held. */
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { ChosenColumns } from '../../laps/index.ts';
import { isComparable, type LapSession, lapSessions } from '../../laps/index.ts';
import { PrintTitle, Refused } from '../parts.tsx';
import type { Session, Snapshot } from '../session.ts';
import type { ComparedLaps, CompareTell, Side } from './comparing.ts';
import { Envelope } from './envelope.tsx';
import type { LapsProps } from './sheet.tsx';
import { SpeedMap } from './speed-map.tsx';
import { Traces } from './traces.tsx';
import { choiceOf, lapsCount, lapText, nameOf, sizeOf } from './words.ts';

type Pick = { readonly fact: string; readonly lap: number };

export function Compare({ snapshot, session, keep }: LapsProps) {
  const sessions = useMemo(() => comparableSessions(snapshot), [snapshot]);
  const slot = `compare ${snapshot.kart.name}`;
  const [picks, setPicks] = useState(() => pickedFrom(keep.get(slot)));
  const [a, b] = [standing(picks[0], sessions, 'middle'), standing(picks[1], sessions, 'best')];
  const put = (next: readonly [Pick, Pick]): void => {
    keep.set(slot, JSON.stringify(next));
    setPicks(next);
  };
  const [first, second] = [sideOf(a, sessions, snapshot), sideOf(b, sessions, snapshot)];
  const heard = useComparing(session, first, second);
  return (
    <>
      <PrintTitle
        title="Two laps compared"
        kart={snapshot.kart.name}
        event={bothNamed(sessions, [a, b])}
        invented={snapshot.kart.invented}
      />
      {a === undefined || b === undefined ? (
        <p class="note">
          The book keeps no log with a full lap yet. Bring one in: laps timed by hand have no speed and no place to
          compare.
        </p>
      ) : (
        <>
          <div class="compare-picks">
            <PickLap name="First" sessions={sessions} pick={a} onPick={next => put([next, b])} />
            <PickLap name="Second" sessions={sessions} pick={b} onPick={next => put([a, next])} />
          </div>
          {heard?.kind === 'reading' && (
            <p class="soft" role="status">
              Reading the logs … {sizeOf(heard.bytes)}
            </p>
          )}
          {heard?.kind === 'not compared' && (
            <Refused
              problems={[
                { code: 'wrong shape', where: 'compare', message: heard.say, remedy: 'Choose two laps of one track.' },
              ]}
            />
          )}
          {heard?.kind === 'compared' && <Result of={heard} laps={[a.lap, b.lap]} />}
        </>
      )}
    </>
  );
}

function Result({ of, laps: [a, b] }: { readonly of: ComparedLaps; readonly laps: readonly [number, number] }) {
  const { compared, say, line, driven, grip, jumps } = of;
  const { distance, delta, speeds, pieces } = compared;
  const [kmhA, kmhB] = speeds.map(of => of.map(each => each * 3.6)) as [Float64Array, Float64Array];
  return (
    <>
      <section class="group" aria-label="Said of both">
        {say.map((text, n) => (
          <p key={text} class={n === 0 ? 'verdict-words' : ''}>
            {n === 0 ? <b>{text}</b> : text}
          </p>
        ))}
      </section>
      <div class="log-page">
        <section class="group" aria-label="Over the distance">
          <h2>
            Speed and time <span>over the distance</span>
          </h2>
          <figure class="sheet">
            <Traces
              title="Speed of both laps over the distance."
              unit="km/h"
              traces={[
                { name: `first, lap ${a}`, look: 'dashed', x: distance, y: kmhA },
                { name: `second, lap ${b}: thick`, look: 'signal', x: distance, y: kmhB },
              ]}
            />
            <Traces
              title="Time of the second lap less that of the first, over the distance. The table says it by pieces of the track."
              unit="s behind the first; below 0 ahead"
              height={110}
              zero
              traces={[{ name: '', look: 'plain', x: distance, y: delta }]}
            />
          </figure>
        </section>
        <section class="group" aria-label="On the track">
          <h2>
            On the track <span>thick is fast</span>
          </h2>
          <figure class="sheet">
            <SpeedMap
              title="The line of the laps, as thick as the second was fast, with corners by number."
              path={line}
              speed={speeds[1]}
              signs={pieces.flatMap(({ name, from, to }) => {
                const number = /^corner (\d+)/.exec(name)?.[1];
                const n = Math.min(
                  line.x.length - 1,
                  Math.round((((from + to) / 2) * (line.x.length - 1)) / (distance.at(-1) ?? 1)),
                );
                return number === undefined ? [] : [{ at: { x: line.x[n] ?? 0, y: line.y[n] ?? 0 }, text: number }];
              })}
            />
          </figure>
        </section>
      </div>
      <section class="group" aria-label="Where it was gained and lost">
        <h2>
          Gained and lost <span>second against first</span>
        </h2>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by keys */}
        <section class="wide-table" tabIndex={0} aria-label="Table of the pieces of the track">
          <table class="lap-table">
            <thead>
              <tr>
                <th scope="col">Piece</th>
                <th scope="col">Difference, s</th>
                <th scope="col">First, km/h</th>
                <th scope="col">Second, km/h</th>
                <th scope="col">Best driven, s</th>
                <th scope="col">Spread, s</th>
              </tr>
            </thead>
            <tbody>
              {pieces.map(({ name, difference, spread, speeds: [one, two] }, n) => {
                const own = driven.pieces[n];
                const clear = Math.abs(difference) > 1.96 * spread;
                return (
                  <tr key={name}>
                    <th scope="row" class="piece">
                      {name}
                    </th>
                    <td>
                      {clear ? <b>{signed(difference)}</b> : signed(difference)}{' '}
                      <span class="soft">± {(1.96 * spread).toFixed(2)}</span>
                      {clear && <small>{difference < 0 ? 'gained' : 'lost'}</small>}
                    </td>
                    <td>{(one * 3.6).toFixed(0)}</td>
                    <td>{(two * 3.6).toFixed(0)}</td>
                    <td>{own ? own.best.toFixed(2) : '–'}</td>
                    <td>{own ? own.spread.toFixed(2) : '–'}</td>
                  </tr>
                );
              })}
              <tr>
                <th scope="row">the whole lap</th>
                <td>
                  <b>{signed(compared.difference)}</b>
                </td>
                <td colSpan={2}>slowest in a corner, fastest on a straight</td>
                <td>{driven.ideal.toFixed(2)}</td>
                <td>{driven.spread.toFixed(2)}</td>
              </tr>
            </tbody>
          </table>
        </section>
        <p class="soft">
          Best driven and spread are of the {lapsCount(driven.laps)} of the first session; the sum of the best pieces is
          a lap that nobody drove, and comes out too fast. Bold: more than the receiver may be off.
          {jumps > 0 && ` ${jumps === 1 ? '1 fix that jumps' : `${jumps} fixes that jump`} left out.`}
        </p>
      </section>
      <section class="group" aria-label="What the kart held">
        <h2>
          What the kart held <span>first session</span>
        </h2>
        <figure class="sheet held">
          <Envelope title="Acceleration the kart held in each direction, in g. The table says the same." grip={grip} />
        </figure>
        <GripTable grip={grip} />
      </section>
    </>
  );
}

const G = 9.80665; // m/s², by definition

function GripTable({ grip: { directions, aside, drive, braking } }: { readonly grip: ComparedLaps['grip'] }) {
  const inG = (value: number | undefined): string =>
    value === undefined ? 'not known' : `${(value / G).toFixed(2)} g`;
  return (
    <>
      <p>
        Aside {inG(aside)}, braking {inG(braking)}, drive {inG(drive)}: 95 of 100 fixes were less.
      </p>
      <details class="group">
        <summary>
          <h2>
            By direction <span>{directions.length} of them</span>
          </h2>
        </summary>
        <table class="lap-table">
          <thead>
            <tr>
              <th scope="col">From straight aside</th>
              <th scope="col">Held</th>
              <th scope="col">Fixes</th>
            </tr>
          </thead>
          <tbody>
            {directions.map(({ angle, reach, fixes }) => (
              <tr key={angle}>
                <th scope="row">
                  {Math.abs((angle * 180) / Math.PI).toFixed(0)}° {angle < 0 ? 'braking' : 'drive'}
                </th>
                <td>{inG(reach)}</td>
                <td>{fixes}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </>
  );
}

const signed = (value: number): string => {
  const text = Math.abs(value).toFixed(2);
  return text === '0.00' ? text : `${value < 0 ? '−' : '+'}${text}`;
};

/** The session of both laps, or the two. */
function bothNamed(sessions: readonly LapSession[], picks: readonly (Pick | undefined)[]): string | null {
  const names = picks.flatMap(pick => sessions.filter(({ fact }) => fact === pick?.fact).map(nameOf));
  return names.length === 0 ? null : [...new Set(names)].join(' and ');
}

function PickLap(props: {
  readonly name: string;
  readonly sessions: readonly LapSession[];
  readonly pick: Pick;
  readonly onPick: (pick: Pick) => void;
}) {
  const { name, sessions, pick, onPick } = props;
  const session = sessions.find(({ fact }) => fact === pick.fact);
  const id = `compare-${name.toLowerCase()}`;
  return (
    <fieldset class="no-print">
      <legend>{name} lap</legend>
      <div class="two-fields column">
        <select
          id={id}
          class="field"
          aria-label={`${name}: session`}
          value={pick.fact}
          onChange={e => {
            const next = sessions.find(({ fact }) => fact === e.currentTarget.value);
            if (next) onPick({ fact: next.fact, lap: bestOf(next) });
          }}
        >
          {sessions.map(one => (
            <option key={one.fact} value={one.fact}>
              {choiceOf(one)}
            </option>
          ))}
        </select>
        <select
          class="field"
          aria-label={`${name}: lap`}
          value={String(pick.lap)}
          onChange={e => onPick({ ...pick, lap: Number(e.currentTarget.value) })}
        >
          {session?.times.flatMap(lap =>
            lap.number === null
              ? []
              : [
                  <option key={lap.number} value={String(lap.number)}>
                    {lap.number}: {lapText(lap.time, lap.spread)}
                    {lap === session.best ? ' best' : ''}
                  </option>,
                ],
          )}
        </select>
      </div>
    </fieldset>
  );
}

/** Newest first: those whose log the book keeps. */
function comparableSessions({ facts }: Snapshot): readonly LapSession[] {
  return lapSessions(facts.map(({ fact }) => fact))
    .filter(({ file, fileKept, gates, laps }) => file !== null && fileKept && gates.length > 0 && laps > 0)
    .toReversed();
}

const bestOf = ({ best }: LapSession): number => best?.number ?? 1;

/** As picked, where that is there; else the newest session. */
function standing(pick: Pick | undefined, sessions: readonly LapSession[], which: 'best' | 'middle'): Pick | undefined {
  const session = sessions.find(({ fact }) => fact === pick?.fact);
  if (session && pick && session.times.some(({ number }) => number === pick.lap)) return pick;
  const [newest] = sessions;
  if (newest === undefined) return undefined;
  const sound = newest.times.filter(isComparable).toSorted((x, y) => x.time - y.time);
  const lap = which === 'best' ? sound[0] : sound[sound.length >> 1];
  return { fact: newest.fact, lap: lap?.number ?? 1 };
}

function sideOf(pick: Pick | undefined, sessions: readonly LapSession[], { facts }: Snapshot): Side | undefined {
  const session = sessions.find(({ fact }) => fact === pick?.fact);
  if (pick === undefined || session?.file == null) return undefined;
  const fact = facts.find(line => line.fact.id === session.fact)?.fact;
  const columns = fact?.kind === 'laps' ? (fact.columns?.roles as ChosenColumns | undefined) : undefined;
  return { file: session.file, gates: session.gates, lap: pick.lap, ...(columns && { columns }) };
}

function pickedFrom(text: string): readonly Pick[] {
  try {
    const kept: unknown = JSON.parse(text || '[]');
    return Array.isArray(kept) ? (kept as readonly Pick[]) : [];
  } catch {
    return [];
  }
}

/** Compared beside the page; another choice ends what runs. */
function useComparing(session: Session, a: Side | undefined, b: Side | undefined): CompareTell | undefined {
  const [heard, setHeard] = useState<CompareTell>();
  const asked = JSON.stringify([a, b]);
  useEffect(() => {
    if (a === undefined || b === undefined) return undefined;
    setHeard({ kind: 'reading', bytes: 0 });
    const worker = new Worker(new URL('./compare-worker.ts', import.meta.url), { type: 'module' });
    worker.onmessage = ({ data }: MessageEvent<CompareTell>) => setHeard(data);
    worker.onerror = ({ message }) =>
      setHeard({
        kind: 'not compared',
        say: `The comparison could not be made: ${message || 'its program is missing'}.`,
      });
    void Promise.all([session.ask.file(a.file), session.ask.file(b.file)]).then(
      logs => worker.postMessage({ a, b, logs }),
      (error: unknown) => setHeard({ kind: 'not compared', say: session.ask.problems(error)[0]?.message ?? '' }),
    );
    return () => worker.terminate();
  }, [asked]);
  return heard;
}
