/** The run that laps belong to: a new one, or one that was logged before its laps came. */
import { type Fact, type FactOf, type KartEvent, outingName, type Payload, type State } from '../book/index.ts';
import { lapSessions } from '../laps/index.ts';
import type { App } from './app.ts';
import { given } from './asking.ts';
import type { LapsIn, SessionSaid } from './laps.ts';
import { type Problem, refuse } from './problem.ts';
import type { Written } from './record.ts';

/** What importing needs of the program around it. */
export type LapBook = Pick<App, 'facts' | 'state' | 'record'> & { readonly now: () => string };
export type LapsDraft = Extract<Payload, { kind: 'laps' }>;
/** When it was driven, as far as is known: the beginning and end of a log, or the moment a person named. */
export type When = { readonly from?: string; readonly at?: string };

/** Facts that count, in the order of the record. */
export const factsThatCount = async (book: LapBook, kart: string): Promise<readonly Fact[]> =>
  (await book.facts(kart)).flatMap(({ fact, struck }) => (struck ? [] : [fact]));

export const lapsAmong = (facts: readonly Fact[]): readonly FactOf<'laps'>[] =>
  facts.filter((fact): fact is FactOf<'laps'> => fact.kind === 'laps');
const runsAmong = (facts: readonly Fact[]): readonly FactOf<'ran'>[] =>
  facts.filter((fact): fact is FactOf<'ran'> => fact.kind === 'ran');

/** The event named, else the one that was on. */
export const eventAt = ({ events }: State, at: string, named: string | undefined): KartEvent | undefined =>
  named === undefined ? Object.values(events).find(({ from, until }) => from <= at && at <= until) : events[named];

/** What is said of the session, with what the event or the run it belongs to adds. */
export function sessionSaid<T extends SessionSaid>(said: T, event: KartEvent | undefined, facts: readonly Fact[]): T {
  const run = runsAmong(facts).find(({ id }) => id === said.run);
  const { event: name = event?.event, track = event?.track, session } = run ?? {};
  return { ...given({ event: name, track, session }), ...said };
}

export const runOf = (
  { event, session, track, wet, conditions }: SessionSaid,
  { minutes, laps }: { readonly minutes: number; readonly laps: number },
  on: KartEvent | undefined,
): Payload => ({
  ...{ kind: 'ran', minutes, laps },
  ...given({ event, session, track, conditions, wet: wet ?? (on?.wet || undefined) }),
});

/** A session is logged within so long of its end, ms: common practice. */
const LOGGED_WITHIN = 3 * 3_600_000;
/** How far the clock of a logger and of a hand may differ, ms. */
const CLOCKS = 30 * 60_000;

/** Is there a run without laps that may be this one? Counting it again would make the parts older than they are. */
export function askedOfRun(facts: readonly Fact[], said: SessionSaid, when: When, now: string): readonly Problem[] {
  if (said.run !== undefined || said.sure) return [];
  const taken = new Set(lapsAmong(facts).map(({ run }) => run));
  const until = when.at ?? now;
  const [first, last] = [Date.parse(when.from ?? until) - CLOCKS, Date.parse(until) + LOGGED_WITHIN];
  const maybe = runsAmong(facts).filter(run => {
    if (taken.has(run.id)) return false;
    const named = (key: 'event' | 'session'): boolean | undefined =>
      run[key] === undefined || said[key] === undefined ? undefined : run[key] === said[key];
    if (named('event') === false || named('session') === false) return false;
    if (named('event') && named('session')) return true;
    const at = Date.parse(run.at);
    return at >= (when.from === undefined ? first - LOGGED_WITHIN : first) && at <= last;
  });
  const run = maybe.at(-1);
  if (run === undefined) return [];
  const all = maybe.map(one => `${one.id} (${inWords(one)})`).join(', ');
  return [
    refuse(
      'already ran',
      'run',
      `Expected a session that is not in the book, and ${inWords(run)} is there without laps.`,
      `Give the laps to it with run ${run.id}, so that its hours count once${maybe.length > 1 ? `; others: ${all}` : ''}; or say again as sure that this is another run.`,
    ),
  ];
}

const inWords = (run: FactOf<'ran'>): string => `${outingName(run)}, ${run.minutes} min`;

/** What a person should know of laps given to an earlier run. */
export function sayOfRun(facts: readonly Fact[], id: string, laps: number): readonly string[] {
  const run = runsAmong(facts).find(one => one.id === id);
  if (run === undefined) return [];
  const counted = run.laps ?? 0;
  return [
    `The laps belong to the run ${inWords(run)}: no hours are added.`,
    ...(counted === laps
      ? []
      : [
          `That run counts ${counted} laps on the parts, and here are ${laps}; to count these, strike it and bring the laps in again.`,
        ]),
  ];
}

export const writtenAt = ({ by, sure, id }: Written, { at }: When): Written => ({ by, ...given({ at, sure, id }) });

/** What was written, as the book now shows it. */
export async function lapsWritten(
  book: LapBook,
  kart: string,
  facts: readonly Fact[],
  say: readonly string[],
): Promise<Extract<LapsIn, { kind: 'recorded' }>> {
  const all = await factsThatCount(book, kart);
  const session = lapSessions(all).find(({ fact }) => facts.some(({ id }) => id === fact));
  if (session === undefined) throw new Error('lapsWritten: facts must hold laps, got none');
  return { kind: 'recorded', facts, session, say };
}
