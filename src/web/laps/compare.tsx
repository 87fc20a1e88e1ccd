/** Two laps side by side: where one gained and lost against the other, and what the kart held. */
import { useEffect, useMemo, useState } from 'preact/hooks';
import type { ChosenColumns } from '../../laps/index.ts';
import { isComparable, type LapSession, lapSessions } from '../../laps/index.ts';
import { PrintTitle, Refused } from '../parts.tsx';
import type { Session, Snapshot } from '../session.ts';
import { compareWords } from '../words/laps/compare.ts';
import { choiceOf, lapsCount, lapText, nameOf, sizeOf } from '../words/laps/reads.ts';
import type { ComparedLaps, CompareTell, Side } from './comparing.ts';
import { Envelope } from './envelope.tsx';
import type { LapsProps } from './sheet.tsx';
import { SpeedAndTime } from './speed-and-time.tsx';
import { SpeedMap } from './speed-map.tsx';
import { WholeName } from './whole-name.tsx';

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
        title={compareWords.twoLapsCompared}
        kart={snapshot.kart.name}
        event={bothNamed(sessions, [a, b])}
        invented={snapshot.kart.invented}
      />
      {a === undefined || b === undefined ? (
        <p class="note">{compareWords.bookKeepsNoLog}</p>
      ) : (
        <>
          <div class="compare-picks">
            <PickLap name={compareWords.first} sessions={sessions} pick={a} onPick={next => put([next, b])} />
            <PickLap name={compareWords.second} sessions={sessions} pick={b} onPick={next => put([a, next])} />
          </div>
          {heard?.kind === 'reading' && (
            <p class="soft" role="status">
              {compareWords.readingLogs(sizeOf(heard.bytes))}
            </p>
          )}
          {heard?.kind === 'not compared' && (
            <Refused
              problems={[
                { code: 'wrong shape', where: 'compare', message: heard.say, remedy: compareWords.chooseTwoLapsOfOne },
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
  return (
    <>
      <section class="group" aria-label={compareWords.saidOfBoth}>
        {say.map((text, n) => (
          <p key={text} class={n === 0 ? 'verdict-words' : ''}>
            {n === 0 ? <b>{text}</b> : text}
          </p>
        ))}
      </section>
      <div class="log-page">
        <section class="group" aria-label={compareWords.overDistance}>
          <h2>
            {compareWords.speedAndTime} <span>{compareWords.alongDistance}</span>
          </h2>
          <SpeedAndTime
            name={compareWords.speedAndTime}
            at={distance}
            dashed={{ name: compareWords.firstLap(a), speed: speeds[0] }}
            thick={{ name: compareWords.secondLapThick(b), speed: speeds[1] }}
            speeds={compareWords.speedOfBothLapsOver}
            behind={{ title: compareWords.timeOfSecondLapLess, unit: compareWords.sBehindFirstBelowAhead, y: delta }}
          />
        </section>
        <section class="group" aria-label={compareWords.onTrack}>
          <h2>
            {compareWords.onTrack} <span>{compareWords.thickIsFast}</span>
          </h2>
          <figure class="sheet">
            <SpeedMap
              title={compareWords.lineOfLapsAsThick}
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
      <section class="group" aria-label={compareWords.whereItWasGained}>
        <h2>
          {compareWords.gainedAndLost} <span>{compareWords.secondAgainstFirst}</span>
        </h2>
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls sideways must be reached by keys */}
        <section class="wide-table" tabIndex={0} aria-label={compareWords.tableOfPiecesOfTrack}>
          <table class="lap-table">
            <thead>
              <tr>
                <th scope="col">{compareWords.piece}</th>
                <th scope="col">{compareWords.difference}</th>
                <th scope="col">{compareWords.firstKmH}</th>
                <th scope="col">{compareWords.secondKmH}</th>
                <th scope="col">{compareWords.bestDriven}</th>
                <th scope="col">{compareWords.spread}</th>
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
                      {clear && <small>{compareWords.gained(difference)}</small>}
                    </td>
                    <td>{(one * 3.6).toFixed(0)}</td>
                    <td>{(two * 3.6).toFixed(0)}</td>
                    <td>{own ? own.best.toFixed(2) : '–'}</td>
                    <td>{own ? own.spread.toFixed(2) : '–'}</td>
                  </tr>
                );
              })}
              <tr>
                <th scope="row">{compareWords.wholeLap}</th>
                <td>
                  <b>{signed(compared.difference)}</b>
                </td>
                <td colSpan={2}>{compareWords.slowestInCornerFastest}</td>
                <td>{driven.ideal.toFixed(2)}</td>
                <td>{driven.spread.toFixed(2)}</td>
              </tr>
            </tbody>
          </table>
        </section>
        <p class="soft">
          {compareWords.bestDrivenAndSpread(lapsCount(driven.laps), jumps > 0 ? compareWords.leftOut(jumps) : '')}
        </p>
      </section>
      <section class="group" aria-label={compareWords.whatKartHeld}>
        <h2>
          {compareWords.whatKartHeld} <span>{compareWords.firstSession}</span>
        </h2>
        <figure class="sheet held">
          <Envelope title={compareWords.accelerationKartHeld} grip={grip} />
        </figure>
        <GripTable grip={grip} />
      </section>
    </>
  );
}

const G = 9.80665; // m/s², by definition

function GripTable({ grip: { directions, aside, drive, braking } }: { readonly grip: ComparedLaps['grip'] }) {
  const inG = (value: number | undefined): string =>
    value === undefined ? compareWords.notKnown : `${(value / G).toFixed(2)} g`;
  return (
    <>
      <p>{compareWords.asideBrakingDrive(inG(aside), inG(braking), inG(drive))}</p>
      <details class="group">
        <summary>
          <h2>
            {compareWords.byDirection} <span>{compareWords.ofThem(directions.length)}</span>
          </h2>
        </summary>
        <table class="lap-table">
          <thead>
            <tr>
              <th scope="col">{compareWords.fromStraightAside}</th>
              <th scope="col">{compareWords.held}</th>
              <th scope="col">{compareWords.fixes}</th>
            </tr>
          </thead>
          <tbody>
            {directions.map(({ angle, reach, fixes }) => (
              <tr key={angle}>
                <th scope="row">
                  {Math.abs((angle * 180) / Math.PI).toFixed(0)}° {compareWords.braking(angle)}
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
      <legend>{compareWords.lap(name)}</legend>
      <div class="two-fields column">
        <select
          id={id}
          class="field"
          aria-label={compareWords.session(name)}
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
          aria-label={compareWords.lapToChoose(name)}
          value={String(pick.lap)}
          onChange={e => onPick({ ...pick, lap: Number(e.currentTarget.value) })}
        >
          {session?.times.flatMap(lap =>
            lap.number === null
              ? []
              : [
                  <option key={lap.number} value={String(lap.number)}>
                    {lap.number}: {lapText(lap.time, lap.spread)}
                    {lap === session.best ? compareWords.best : ''}
                  </option>,
                ],
          )}
        </select>
      </div>
      <WholeName text={session ? choiceOf(session) : ''} />
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
        say: compareWords.comparisonCould(message || compareWords.itsProgramIsMissing),
      });
    void Promise.all([session.ask.file(a.file), session.ask.file(b.file)]).then(
      logs => worker.postMessage({ a, b, logs }),
      (error: unknown) => setHeard({ kind: 'not compared', say: session.ask.problems(error)[0]?.message ?? '' }),
    );
    return () => worker.terminate();
  }, [asked]);
  return heard;
}
