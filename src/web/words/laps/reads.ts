/** How a lap time, a size and a count of laps read. */
import type { Lap, LapSession, LogProblem, SessionLap, Zero } from '../../../laps/index.ts';
import { dateOf, timeOf } from '../reads.ts';

export const lapsReadsWords = {
  best: 'best',
  doesNotCount: 'does not count',
  laps: (count: number) => `${count} ${count === 1 ? 'lap' : 'laps'}`,
  sessionOf: (time: string) => `session of ${time}`,
  problem: (expected: string, got: string, line: number | undefined) =>
    `Expected ${expected}, got ${got}${line === undefined ? '' : ` in line ${line}`}.`,
};

/** 95 of 100 lie within so many standard deviations. */
const WITHIN = 1.96;

/** '39.84' or '1:02.31': no more digits than the spread bears, and hundredths where none is known. */
export function lapText(seconds: number, spread?: number): string {
  const digits = digitsFor(spread);
  const whole = Number(seconds.toFixed(digits));
  const minutes = Math.floor(whole / 60);
  if (minutes === 0) return whole.toFixed(digits);
  return `${minutes}:${(whole - 60 * minutes).toFixed(digits).padStart(digits === 0 ? 2 : digits + 3, '0')}`;
}

/** '± 0.06': 95 of 100 such laps lie within. */
export const within = (spread: number): string => `± ${(WITHIN * spread).toFixed(digitsFor(spread))}`;

const digitsFor = (spread = 0.02): number => (WITHIN * spread < 0.02 ? 3 : WITHIN * spread < 2 ? 2 : 1);

/** What stands against a lap, in a word or two. */
export const flagsOf = ({ doubts }: Lap): string => doubts.join(', ');

/** What is said of a lap of the book beside its time. */
export const remarksOn = (lap: SessionLap, best: SessionLap | null): string =>
  [lap === best ? lapsReadsWords.best : '', lap.marked ? lapsReadsWords.doesNotCount : '', ...(lap.doubts ?? [])]
    .filter(Boolean)
    .join(', ');

/** '18.4 MB'. */
export function sizeOf(bytes: number): string {
  if (bytes < 1000) return `${bytes} B`;
  return bytes < 1_000_000 ? `${(bytes / 1000).toFixed(0)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}

export const problemText = ({ expected, got, line, remedy }: LogProblem) => ({
  message: lapsReadsWords.problem(expected, got, line),
  remedy: `${remedy.charAt(0).toUpperCase()}${remedy.slice(1)}.`,
});

/** When a second of a log was, where the log says so: '2025-06-14T09:12:00.000Z'. */
export const momentIn = (zero: Zero, seconds: number): string | undefined =>
  zero.kind === 'day'
    ? new Date(Date.parse(`${zero.day}T00:00:00Z`) + Math.round(seconds * 1000)).toISOString()
    : undefined;

export const lapsCount = (count: number): string => lapsReadsWords.laps(count);

/** What a session goes by, with day and time of this place where it has no name of its own. */
export const nameOf = ({ label, at }: { readonly label: string; readonly at: string }): string =>
  label
    .replace(/^\d{4}-\d\d-\d\d(?= › )/, dateOf(at))
    .replace(/session of \d\d:\d\d UTC$/, lapsReadsWords.sessionOf(timeOf(at)));

/** Of a session to choose: its name, track and day, each once. */
export const choiceOf = (session: Pick<LapSession, 'label' | 'at' | 'event' | 'track'>): string =>
  [nameOf(session), session.track, session.event === null ? null : dateOf(session.at)]
    .filter(part => part !== null)
    .join(', ');

/** The middle one; of an even number the slower of the two. */
export const middleOf = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
