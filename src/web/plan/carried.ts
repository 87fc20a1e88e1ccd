/**
 * A plan for several hands or certain times, after something was done: the same rows at the same times without what is done
 * by now. So a finished step moves no other, and the page waits for no new plan.
 */
import type { State } from '../../book/index.ts';
import type { Plan, Step } from '../../prep/index.ts';

export const toDo = ({ steps }: Pick<Plan, 'steps'>): readonly Step[] => steps.filter(({ state }) => state !== 'done');

/** @param now the plan for one person and time without end, of the moment: it says what is done and what is still due */
export function carried(before: Plan, now: Plan, { posture }: Pick<State, 'posture'>): Plan {
  const done = now.steps.filter(({ state }) => state === 'done');
  const open = new Set(toDo(now).map(({ key }) => key));
  let turned = false; // the first turn of the kart that is left is done if it stands so
  const rows = toDo(before).filter(({ action, key, posture: wanted }) => {
    if (action !== 'posture') return open.has(key);
    const isDone = !turned && wanted === posture;
    turned = true;
    return !isDone;
  });
  const numberOf = new Map(rows.map(({ n }, i) => [n, done.length + i + 1]));
  const steps = rows.map((row): Step => {
    const after = row.after.flatMap(n => numberOf.get(n) ?? []);
    return { ...row, n: numberOf.get(row.n) ?? row.n, after, state: after.length === 0 ? 'ready' : 'waiting' };
  });
  const whyNow = (step: Step): Step => ({
    ...step,
    whyNow: step.whyNow.map(why => ({ ...why, steps: why.steps.flatMap(n => numberOf.get(n) ?? []) })),
  });
  return {
    ...before,
    minutes: steps.reduce((sum, { minutes }) => sum + minutes, 0),
    steps: [...done, ...steps.map(whyNow)],
  };
}
