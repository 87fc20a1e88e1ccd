/** Laps as plain lines: each with its time, how far that may be off, and what stands against it. */
import type { LapsIn } from '../../app/index.ts';
import type { LapSession, SessionLap } from '../../laps/index.ts';
import { count, duration, shortTime, wrap } from './wrap.ts';

export function lapsInText({ facts, session, log, gate, say }: Extract<LapsIn, { kind: 'recorded' }>): string {
  const skipped = log?.skipped ?? [];
  return [
    wrap(`recorded ${facts.map(({ kind, id }) => `${kind} ${id}`).join(', ')}`),
    lapSessionText(session),
    ...(gate === undefined ? [] : [wrap(GATE[gate])]),
    ...skipped.map(({ count: so, say: what, lines }) =>
      wrap(`${so} ${what} (line ${lines.join(', ')}${so > lines.length ? ' …' : ''})`, 'passed over: '),
    ),
    ...say.map(each => wrap(each, 'note: ')),
  ].join('');
}

const GATE = {
  given: 'Cut at the gate that was given; it is remembered for the track.',
  remembered: 'Cut at the gate of the track, as it was set last.',
  proposed: 'Cut at a gate found in the log; --gate sets another, --track remembers it.',
} as const;

export const lapListText = (sessions: readonly LapSession[]): string =>
  sessions.length === 0
    ? wrap('No laps are in the book: kartwright laps import FILE, or laps by-hand TIMES.')
    : sessions.map(headOf).join('');

export const lapSessionText = (session: LapSession): string =>
  headOf(session) + (session.times.length === 0 ? '' : lapBody(session));

/** The laps alone, or how many there were. */
export const lapBody = (session: LapSession): string =>
  session.times.length === 0
    ? wrap(`${count(session.laps, 'lap')}, without times.`)
    : session.times.map(lap => lapLine(lap, session)).join('');

function headOf(session: LapSession): string {
  const { at, label, track, laps, best, minutes, metres, timed, wet } = session;
  const parts = [
    `${count(laps, 'lap')}${timed === 'not said' ? '' : ` ${timed}`}`,
    ...(best ? [`best ${lapTime(best.time)} s ± ${band(best)} (lap ${best.number})`] : []),
    ...(minutes === null ? [] : [duration(minutes)]),
    ...(metres === null ? [] : [`${(metres / 1000).toFixed(1)} km`]),
    ...(track === null ? [] : [track]),
    ...(wet ? ['wet'] : []),
  ];
  return wrap(`${label}: ${parts.join(', ')}`, `${shortTime(at)}  `);
}

function lapLine(lap: SessionLap, { best }: LapSession): string {
  const name = lap.way ?? String(lap.number);
  const sectors = lap.sectors?.map(each => (each === null ? '-' : each.toFixed(2))).join('  ') ?? '';
  const marks = [...(lap.number !== null && lap.number === best?.number ? ['best'] : []), ...(lap.doubts ?? [])];
  const time = `${lapTime(lap.time).padStart(9)} s${lap.way ? '' : ` ± ${band(lap)}`}`;
  return `${`  ${name.padStart(4)}  ${time.padEnd(20)}  ${sectors}  ${marks.join(', ')}`.trimEnd()}\n`;
}

/** '52.310', '1:02.310'. */
export function lapTime(seconds: number): string {
  const thousandths = Math.round(seconds * 1000);
  const minutes = Math.floor(thousandths / 60_000);
  const rest = ((thousandths % 60_000) / 1000).toFixed(3);
  return minutes === 0 ? rest : `${minutes}:${rest.padStart(6, '0')}`;
}

/** Half of the band that holds 95 of 100, s. */
const band = ({ spread }: SessionLap): string => (1.96 * spread).toFixed(spread < 0.005 ? 4 : 2);
