/**
 * How long a person waits for a plan of the whole six-speed template, all of it due: the first plan that is shown, and the
 * last with its reasons. Wished for with two people and two windows: the first in 100 ms, the last in 2 s. With how much time
 * each left out enters comes after that.
 */
import { fold } from '../src/book/index.ts';
import { makePlan, type Plan, type PlanAsk, planning } from '../src/prep/index.ts';
import { benchKart } from './kart.ts';
import { type Figure, median, ms, times } from './measure.ts';
import { workload } from './workload.ts';

const RUNS = 5;
const FIRST = 100;
const LAST = 2000;
const now = '2026-05-01T08:00:00.000Z';

export async function kartPlans(): Promise<readonly Figure[]> {
  const kart = benchKart();
  const state = fold([]);
  const asks: readonly [string, PlanAsk][] = [
    ['two people, 180 and 300 min', { now, people: 2, windows: [{ minutes: 180 }, { minutes: 300 }] }],
    ['two people, all of it', { now, people: 2 }],
    ['one person, all of it', { now }],
  ];
  const fixed = await workload();
  const figures: Figure[] = [];
  for (const [what, ask] of asks) {
    const first = await median(RUNS, () => planning(kart, state, ask).next());
    const plan = withReasons(planning(kart, state, ask));
    const last = await median(RUNS, () => withReasons(planning(kart, state, ask)));
    const gap = (100 * (plan.span - plan.bound)) / plan.bound;
    const told = `${plan.span} min, bound ${plan.bound} by ${plan.boundBy}, gap ${gap.toFixed(1)} %, ${plan.leftOut.length} left out`;
    figures.push({ what: `${what}, first plan`, value: ms(first), ratio: beside(first, FIRST, fixed) });
    figures.push({
      what: `${what}, last: ${plan.steps.length} steps`,
      value: ms(last),
      ratio: `${beside(last, LAST, fixed)}; ${told}`,
    });
    if (plan.leftOut.length === 0) continue;
    const whole = await median(1, () => makePlan(kart, state, ask));
    figures.push({
      what: `${what}, and with how much time each left out enters`,
      value: ms(whole),
      ratio: `${times(whole, last, 'the plan')}; ${times(whole, fixed, 'the fixed workload')}`,
    });
  }
  return figures;
}

const beside = (took: number, wished: number, fixed: number): string =>
  `${times(took, wished, `${wished} ms`)}; ${times(took, fixed, 'the fixed workload')}`;

/** The last plan but for with how much time what is left out enters. */
function withReasons(steps: Generator<Plan, Plan>): Plan {
  for (;;) {
    const { done, value } = steps.next();
    if (done || value.steps.some(({ whyNow }) => whyNow.length > 0)) return value;
  }
}
