/**
 * The plan at hand once a step of it is done, so that the next one stands there at once. The plan that is made anew behind it
 * mostly says the same; where it says otherwise it takes the place of this one, and that is told.
 */
import type { Plan, Step } from '../../prep/index.ts';

/**
 * The same plan gives the same one again, so whoever asks while the step is being worked on has it when it is done.
 * @param key of a step that was done as the plan asks: found good, made, taken off, refitted; nothing new follows from it
 */
export function finished(plan: Plan, key: string): Plan {
  const known = foreseen.get(plan);
  if (known?.key === key) return known.then;
  const then = without(plan, key);
  foreseen.set(plan, { key, then });
  return then;
}
const foreseen = new WeakMap<Plan, { readonly key: string; readonly then: Plan }>();

function without(plan: Plan, key: string): Plan {
  const step = plan.steps.find(one => one.key === key && one.state !== 'done');
  if (step === undefined) return plan;
  const done = plan.steps.filter(({ state }) => state === 'done');
  const rest = plan.steps.filter(one => one !== step && one.state !== 'done');
  const numberOf = new Map(rest.map(({ n }, i) => [n, done.length + i + 2]));
  const now = (numbers: readonly number[]): readonly number[] => numbers.flatMap(n => numberOf.get(n) ?? []);
  const steps = rest.map((one): Step => {
    const after = now(one.after);
    const place = {
      n: numberOf.get(one.n) ?? one.n,
      after,
      state: after.length === 0 ? 'ready' : 'waiting',
      get whyNow() {
        return one.whyNow.map(why => ({ ...why, steps: now(why.steps) }));
      },
    };
    // As it stands, not read: why a row stands where it stands is worked out when somebody asks.
    const { getOwnPropertyDescriptors: asTheyStand } = Object;
    return Object.defineProperties({}, { ...asTheyStand(one), ...asTheyStand(place) }) as Step;
  });
  const last: Step = { ...step, n: done.length + 1, after: [], whyNow: [], state: 'done' };
  return { ...plan, minutes: plan.minutes - step.minutes, steps: [...done, last, ...steps] };
}
