/** What a test said, in sentences, and what to do next. */
import { type Effect, NOT_SEPARATE, type Told } from './helped.ts';
import type { TestRun } from './series.ts';
import { type More, moreFor, planFor, type TestPlan } from './test-plan.ts';

/** s a lap: what a person with nothing else in mind wants to find. Common practice. */
export const WORTH = 0.1;

export const secondsText = (value: number): string => `${value.toFixed(2).replace(/^-(0\.00)$/, '$1')} s`;
const around = ({ effect, low, high }: Effect): string =>
  `${effectText(effect)} ± ${secondsText((high - low) / 2)} a lap`;
const effectText = (value: number): string => value.toFixed(2).replace('-', '−');

export function effectSay(effect: Effect): string {
  const { change, verdict, why, low, high, smallest } = effect;
  const half = secondsText((high - low) / 2);
  const size = Math.abs(effect.effect).toFixed(2);
  if (verdict === 'faster') return `${change} gained ${size} ± ${half} a lap.`;
  if (verdict === 'slower') return `${change} cost ${size} ± ${half} a lap.`;
  if (verdict === 'no practical difference') return `${change} makes no practical difference: ${around(effect)}.`;
  const could = `An effect of ${secondsText(smallest)} would have shown 4 times of 5.`;
  if (why === NOT_SEPARATE)
    return `Cannot separate ${change} from the track: it came or went only once. Both together: ${around(effect)}.`;
  if (why === 'several changes')
    return `Cannot tell whether ${change} helps: ${around(effect)} would do alone, but not as one of several changes judged at once.`;
  return `Cannot tell yet whether ${change} helps: ${around(effect)}. ${could}`;
}

export type Advice = { readonly more?: More; readonly plan?: TestPlan; readonly say: string };

/** What to drive next so that an effect of `worth` s would show; undefined where the verdict stands. */
export function adviceFor(runs: readonly TestRun[], told: Told, effect: Effect, worth = WORTH): Advice | undefined {
  if (effect.verdict !== 'cannot tell') return undefined;
  const { change } = effect;
  const spreads = { lap: told.lapSpread, run: told.runSpread };
  const more = moreFor(runs, change, { worth, spreads });
  const want = `to see ${secondsText(worth)} a lap`;
  if (more) {
    const order = more.runs.map(each => `${each} it`).join(', ');
    const laps = `${inWords(more.laps * (more.runs.length / 2))} more lap${more.laps * more.runs.length === 2 ? '' : 's'} each way`;
    const split = more.runs.length > 2 ? `, ${more.laps} a run` : '';
    return { more, say: `${laps} ${want}: ${order}${split}, each after a way out.` };
  }
  const plan = planFor(worth, spreads);
  if (plan)
    return {
      plan,
      say: `Another day, ${want}: ${plan.order} (A without ${change}, B with it), ${plan.laps} laps that count each.`,
    };
  return {
    say: `With laps that differ by ${secondsText(told.lapSpread)} no test of one day is enough ${want}.`,
  };
}

const inWords = (count: number): string =>
  ['no', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten', 'eleven', 'twelve'][count] ??
  `${count}`;
