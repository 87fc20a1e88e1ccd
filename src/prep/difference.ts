/** What a new plan does otherwise than the one before: after a find, a missing part, a helper who left, time running late. */
import type { Plan, Step } from './model.ts';

export type PlanDifference = {
  readonly added: readonly Step[];
  /** No longer to do: done meanwhile, or not due any more. */
  readonly done: readonly Step[];
  readonly dropped: readonly Step[];
  /** Steps of both that now stand on the other side of another than before: the fewest that explain the new order. */
  readonly moved: readonly Step[];
  readonly minutes: number; // more than before, for what is still to do
};

export function planDifference(before: Plan, after: Plan): PlanDifference {
  const [then, now] = [toDo(before), toDo(after)];
  const doneNow = new Set(after.steps.flatMap(({ state, key }) => (state === 'done' ? [key] : [])));
  const [was, is] = [keys(then), keys(now)];
  const gone = then.filter(({ key, action }) => !is.has(key) && action !== 'posture');
  const place = new Map(then.map(({ key }, n) => [key, n]));
  const common = now.filter(({ key, action }) => was.has(key) && action !== 'posture');
  const kept = longestRising(common.map(({ key }) => place.get(key) ?? 0));
  return {
    added: now.filter(({ key, action }) => !was.has(key) && action !== 'posture'),
    done: gone.filter(({ key }) => doneNow.has(key)),
    dropped: gone.filter(({ key }) => !doneNow.has(key)),
    moved: common.filter((_, n) => !kept.has(n)),
    minutes: after.minutes - before.minutes + sum(gone.filter(({ key }) => doneNow.has(key))),
  };
}

const toDo = (plan: Plan): readonly Step[] => plan.steps.filter(({ state }) => state !== 'done');
const keys = (steps: readonly Step[]): ReadonlySet<string> => new Set(steps.map(({ key }) => key));
const sum = (steps: readonly Step[]): number => steps.reduce((total, { minutes }) => total + minutes, 0);

/** Places of a longest rising run of the values (patience sorting). */
function longestRising(values: readonly number[]): ReadonlySet<number> {
  const ends: number[] = []; // place of the smallest end of a run of each length
  const before: number[] = [];
  values.forEach((value, n) => {
    let low = 0;
    let high = ends.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((values[ends[middle] ?? 0] ?? 0) < value) low = middle + 1;
      else high = middle;
    }
    before[n] = low === 0 ? -1 : (ends[low - 1] ?? -1);
    ends[low] = n;
  });
  const kept = new Set<number>();
  for (let n = ends.at(-1) ?? -1; n >= 0; n = before[n] ?? -1) kept.add(n);
  return kept;
}
