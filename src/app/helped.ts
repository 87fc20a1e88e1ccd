/** Did it help, from the book: changes of the set-up against the laps of one day on one track. */
import type { Fact } from '../book/index.ts';
import {
  type Advice,
  adviceFor,
  type Effect,
  effectSay,
  helped,
  isComparable,
  type LapSession,
  lapSessions,
  runSpreadFrom,
  type TestLap,
  type TestRun,
  type Told,
} from '../laps/index.ts';
import { type At, given } from './asking.ts';
import { Refusal, refuse } from './problem.ts';
import type { Queries } from './queries.ts';

export type HelpedQuestion = At & {
  /** A setting, or part of its name; the newest day on which one changed when left out. */
  readonly change?: string;
  /** s a lap: the effect that a test is to find, and what makes no practical difference. */
  readonly worth?: number;
  readonly matters?: number;
};
export type RunOfTest = { readonly session: string; readonly on: readonly string[]; readonly laps: number };
export type HelpedAnswer = {
  readonly day: string;
  readonly track: string | null;
  readonly runs: readonly RunOfTest[];
  readonly effects: readonly (Effect & { readonly say: string; readonly advice?: Advice })[];
  readonly about: Omit<Told, 'kind' | 'effects'> | null;
  readonly notTold: string | null;
  readonly say: readonly string[];
};

type Settings = Readonly<Record<string, string>>;
type Driven = { readonly session: LapSession; readonly settings: Settings; readonly laps: readonly TestLap[] };
type Day = { readonly day: string; readonly track: string | null; readonly runs: readonly Driven[] };

/** Throws `Refusal` where no day has laps with and without a change, or none goes by the name. */
export async function helpedOf(
  queries: Pick<Queries, 'facts'>,
  kart: string,
  { change, worth, matters, ...at }: HelpedQuestion = {},
): Promise<HelpedAnswer> {
  const facts = (await queries.facts(kart, at)).map(({ fact }) => fact);
  const days = daysOf(facts);
  const wanted = change?.trim().toLowerCase();
  const isWanted = (label: string): boolean => wanted === undefined || label.toLowerCase().includes(wanted);
  const found = days.findLast(day => changesIn(day).some(isWanted));
  if (found === undefined) throw new Refusal([noTest(change, days)]);
  const runs = testOf(found);
  const runSpread = runSpreadFrom(days.filter(day => day !== found).map(testOf));
  const told = helped(runs, { runSpread, ...given({ matters }) });
  const head = {
    ...{ day: found.day, track: found.track },
    runs: runs.map(({ on, laps }, n) => ({
      session: found.runs[n]?.session.label ?? '',
      on,
      laps: laps.filter(lap => !lap.out && !lap.marked).length,
    })),
  };
  if (told.kind === 'not told') return { ...head, effects: [], about: null, notTold: told.why, say: [told.say] };
  const { kind: _, effects: all, ...about } = told;
  const effects = all
    .filter(effect => isWanted(effect.change))
    .map(effect => ({
      ...effect,
      say: effectSay(effect),
      ...given({ advice: adviceFor(runs, told, effect, worth) }),
    }));
  const say = effects.flatMap(effect => (effect.advice ? [effect.say, effect.advice.say] : [effect.say]));
  return { ...head, effects, about, notTold: null, say };
}

/** Outings of one day on one track, dry and wet apart, oldest first. */
function daysOf(facts: readonly Fact[]): readonly Day[] {
  const days = new Map<string, { day: string; track: string | null; runs: Driven[] }>();
  for (const session of lapSessions(facts)) {
    if (session.times.length === 0) continue;
    const { at, track, wet, times } = session;
    const key = JSON.stringify([at.slice(0, 10), track, wet]);
    const day = days.get(key) ?? { day: at.slice(0, 10), track, runs: [] };
    days.set(key, day);
    const settings = settingsAt(facts, at);
    for (const outing of new Set(times.map(lap => lap.outing)))
      day.runs.push({ session, settings, laps: lapsOf(times.filter(lap => lap.outing === outing)) });
  }
  return [...days.values()];
}

const lapsOf = (times: LapSession['times']): readonly TestLap[] => {
  const laps = times.map((lap): TestLap => ({ time: lap.time, out: lap.way === 'out', marked: !isComparable(lap) }));
  // A stopwatch starts with the first full lap: the way out was driven all the same.
  return laps[0]?.out ? laps : [{ time: Number.NaN, out: true }, ...laps];
};

/** The set-up facts up to a moment, the last word on each setting; struck ones are not among them. */
function settingsAt(facts: readonly Fact[], at: string): Settings {
  const struck = new Set(facts.flatMap(fact => (fact.kind === 'struck' ? [fact.fact] : [])));
  const changes = facts.filter(fact => fact.kind === 'set-up' && fact.at <= at && !struck.has(fact.id));
  return Object.assign(
    {},
    ...changes
      .toSorted((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0))
      .map(fact => (fact.kind === 'set-up' ? fact.changes : {})),
  );
}

/** Against the first run of the day: each other value of a setting is a change. */
function testOf({ runs }: Day): readonly TestRun[] {
  const base = baseOf(runs);
  return runs.map(({ settings, laps }) => ({
    laps,
    on: Object.entries(settings).flatMap(([name, value]) => (base[name] === value ? [] : [`${name} ${value}`])),
  }));
}

/** What a setting was before the book first names it nobody wrote down: then what it went back to at the end of the day. */
function baseOf(runs: readonly Driven[]): Settings {
  const base: Record<string, string> = {};
  for (const name of new Set(runs.flatMap(({ settings }) => Object.keys(settings)))) {
    const values = runs.flatMap(({ settings }) => settings[name] ?? []);
    const [first, last] = [values[0], values.at(-1)];
    const value = runs[0]?.settings[name] ?? (last === first ? undefined : last);
    if (value !== undefined) base[name] = value;
  }
  return base;
}

const changesIn = (day: Day): readonly string[] => testOf(day).flatMap(({ on }) => on);

const noTest = (change: string | undefined, days: readonly Day[]) =>
  refuse(
    'unknown event',
    'change',
    change === undefined
      ? 'Expected a day with laps before and after a change of the set-up, got none.'
      : `Expected a setting that changed between the laps of one day, got "${change}".`,
    days.length === 0
      ? 'Bring in laps first: kartwright laps import FILE, or laps by-hand TIMES.'
      : `Write changes between the runs down: kartwright log set-up. ${changedSay(days)}`,
  );

function changedSay(days: readonly Day[]): string {
  const all = [...new Set(days.flatMap(changesIn))];
  return all.length === 0 ? 'None changed so far.' : `Changed so far: ${all.slice(-8).join(', ')}.`;
}
