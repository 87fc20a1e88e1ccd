/** What is not in the plan for want of time: what it would add, with how much time it enters, and what it means to leave it. */
import { choose } from './choose.ts';
import type { Due, LeftOut } from './model.ts';
import { SAME, type Trials } from './trial.ts';

/** What was left out, named at once; the minutes are those of its own work till they are worked out. */
export const named = (left: readonly Due[], minutesOf: (due: Due) => number): readonly LeftOut[] =>
  left.map(one => ({
    item: one.item,
    title: one.title,
    grade: one.grade,
    minutes: minutesOf(one),
    needs: null,
    consequence: consequence(one),
  }));

/**
 * The least time with which each of these enters, to `step` minutes: with a step less it does not. Choosing is done anew
 * for longer and longer times. From one to the next nothing changes unless a set that was too long for the one fits the
 * other, so what lies between is passed over.
 */
export function entersWith(
  queue: readonly (readonly Due[])[],
  trials: Trials,
  left: readonly Due[],
  from: number,
  step: number,
): ReadonlyMap<Due, number> {
  const found = new Map<Due, number>();
  for (let n = 0, room = from; found.size < left.length; room = from + n * step) {
    let longer = Number.POSITIVE_INFINITY; // the shortest of what was too long
    const { taken } = choose(queue, some => {
      const takes = trials.takes(some, room);
      if (takes > room + SAME) longer = Math.min(longer, takes);
      return takes <= room + SAME;
    });
    const covered = trials.covers(taken);
    for (const one of left) if (!found.has(one) && covered.has(one.item)) found.set(one, room);
    if (longer === Number.POSITIVE_INFINITY) break; // all fits
    n = Math.max(n + 1, Math.ceil((longer - from) / step - SAME));
  }
  return found;
}

function consequence({ grade, ahead, why }: Due): string {
  if (grade === 'safety') return `Not fit to run until it is done. ${why}`;
  return ahead
    ? `It may run past its life during the event. ${why}`
    : `It goes to the event as the record leaves it. ${why}`;
}
