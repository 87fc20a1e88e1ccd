/**
 * What a plan for some of what is due would take, worked out once for each such set: choosing in a short time, and finding
 * with how much time something enters, ask for the same sets again and again. The last time has no end as long as a set is
 * tried, so what it takes does not depend on how long that time is.
 */
import type { State } from '../book/index.ts';
import type { ItemId, Kart } from '../kart/index.ts';
import { type Hands, quickestTakes, waysOf } from './draft.ts';
import type { Due } from './model.ts';
import { leastSpan } from './timetable.ts';
import { type Work, workFor } from './work.ts';

export type Trials = {
  /** Minutes of a plan for these; or fewer, where that is surely more than the room there is. */
  readonly takes: (some: ReadonlySet<Due>, room: number) => number;
  /** What is due and in a plan for these, asked for or not: closing up may ask for more. */
  readonly covers: (some: ReadonlySet<Due>) => ReadonlySet<ItemId>;
};

type Trial = { readonly least: number; span?: number; readonly covers: ReadonlySet<ItemId> };

export function trialsOf(kart: Kart, state: State, due: readonly Due[], hands: Hands): Trials {
  const known = new Map<string, Trial>();
  const isDue = new Set(due.map(({ item }) => item));

  const begun = (some: ReadonlySet<Due>): { readonly trial: Trial; readonly work?: Work } => {
    const key = keyOf(due, some);
    const before = known.get(key);
    if (before) return { trial: before };
    const work = workOf(some);
    const covers = new Set(work.jobs.flatMap(({ item }) => (item && isDue.has(item.id) ? [item.id] : [])));
    const trial: Trial = { least: leastSpan(kart, work, waysOf(state, hands, hands.people)), covers };
    known.set(key, trial);
    return { trial, work };
  };
  const workOf = (some: ReadonlySet<Due>): Work =>
    workFor(
      kart,
      state,
      due.filter(one => some.has(one)),
    );

  return {
    takes(some, room) {
      const { trial, work } = begun(some);
      if (trial.span === undefined && trial.least > room + SAME) return trial.least;
      trial.span ??= quickestTakes(kart, state, work ?? workOf(some), hands);
      return trial.span;
    },
    covers: some => begun(some).trial.covers,
  };
}

/** Ticks are half minutes; sums of minutes that were learnt are not. */
export const SAME = 1e-9;

/** One bit for each that is due, fifteen in a letter. */
function keyOf(due: readonly Due[], some: ReadonlySet<Due>): string {
  const letters: number[] = [];
  due.forEach((one, n) => {
    const k = Math.floor(n / 15);
    letters[k] = (letters[k] ?? 0) | (some.has(one) ? 1 << (n % 15) : 0);
  });
  return String.fromCharCode(...letters);
}
