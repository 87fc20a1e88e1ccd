/** Did it help, from the book: changes of the set-up against the laps of one day on one track. */
import { type Advice, adviceFor, type Effect, effectSay, helped, runSpreadFrom, type Told } from '../laps/index.ts';
import { type At, given } from './asking.ts';
import { Refusal, refuse } from './problem.ts';
import type { Queries } from './queries.ts';
import { changesIn, type TestDay, testDays } from './test-days.ts';

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

/** Throws `Refusal` where no day has laps with and without a change, or none goes by the name. */
export async function helpedOf(
  queries: Pick<Queries, 'facts' | 'kart'>,
  kart: string,
  { change, worth, matters, ...at }: HelpedQuestion = {},
): Promise<HelpedAnswer> {
  const facts = (await queries.facts(kart, at)).map(({ fact }) => fact);
  const days = testDays(facts, await queries.kart(kart, at));
  const wanted = change?.trim().toLowerCase();
  const isWanted = (label: string): boolean => wanted === undefined || label.toLowerCase().includes(wanted);
  const found = days.findLast(day => changesIn(day).some(isWanted));
  if (found === undefined) throw new Refusal([noTest(change, days)]);
  const { runs } = found;
  const runSpread = runSpreadFrom(days.filter(day => day !== found).map(day => day.runs));
  const told = helped(runs, { runSpread, ...given({ matters }) });
  const head = {
    ...{ day: found.day, track: found.track },
    runs: runs.map(({ session, on, laps }) => ({
      session: session.label,
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

const noTest = (change: string | undefined, days: readonly TestDay[]) =>
  refuse(
    'unknown event',
    'change',
    change === undefined
      ? 'Expected a day with laps before and after a change of the set-up, got none.'
      : `Expected a setting that changed between the laps of one day, got "${change}".`,
    days.length === 0
      ? 'Bring in laps first: kartwright laps import FILE, or laps by-hand TIMES.'
      : `Write changes between the runs down: kartwright log set-up, or log set for a dimension. ${changedSay(days)}`,
  );

function changedSay(days: readonly TestDay[]): string {
  const all = [...new Set(days.flatMap(changesIn))];
  return all.length === 0 ? 'None changed so far.' : `Changed so far: ${all.slice(-8).join(', ')}.`;
}
