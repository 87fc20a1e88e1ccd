/**
 * A problem laid out for speed: what each activity needs of all resources side by side in a few 32-bit words, and the
 * precedence as it is read forward and backward. A backward schedule is a forward one of the same problem turned round.
 */
import type { ScheduleProblem } from './model.ts';

/** The precedence as seen in one direction. Lists lie one after another: of i from `first[i]` to `first[i + 1]`. */
export type Way = {
  readonly beforeFirst: Int32Array;
  readonly before: Int32Array;
  readonly nextFirst: Int32Array;
  readonly next: Int32Array;
  /** An order in which everything comes after what it waits for. */
  readonly sorted: Int32Array;
  /** Longest path that ends at the start of i [tick]. */
  readonly head: Int32Array;
  /** Longest path from the start of i to the end of all, i included [tick]. */
  readonly tail: Int32Array;
};

export type Packed = {
  readonly n: number;
  readonly ticks: Int32Array;
  /**
   * Words a resource vector takes. Each resource has its bits and a guard bit above them, which is set in what is free
   * and stays set when a need is taken from it, unless that need was too much.
   */
  readonly words: number;
  /** Word w of activity i stands at w * n + i. */
  readonly need: Int32Array;
  readonly full: Int32Array;
  readonly guard: Int32Array;
  /** Share of the resources an activity takes, 0 to 1. */
  readonly load: Float64Array;
  readonly forward: Way;
  readonly backward: Way;
  /** No schedule is longer than this: all one after another. */
  readonly horizon: number;
};

/** @param problem one that `problemsOf` has nothing against */
export function pack(problem: ScheduleProblem): Packed {
  const { before, then, ...packed } = packForward(problem);
  return { ...packed, backward: way(packed.ticks, then, before) };
}

type Lists = readonly (readonly number[])[];
/** Without the way back, which a plan that is made once does not take. */
export function packForward({
  activities,
  capacity,
}: ScheduleProblem): Omit<Packed, 'backward'> & { readonly before: Lists; readonly then: Lists } {
  const n = activities.length;
  const ticks = Int32Array.from(activities, a => a.ticks);
  const seats = seat(capacity);
  const words = Math.max(1, ...seats.map(s => s.word + 1));
  const need = new Int32Array(words * n);
  const full = new Int32Array(words);
  const guard = new Int32Array(words);
  seats.forEach(({ word, shift, bits }, r) => {
    const top = 1 << (shift + bits);
    guard[word] = at(guard, word) | top;
    full[word] = at(full, word) | top | ((capacity[r] ?? 0) << shift);
    activities.forEach((a, i) => {
      need[word * n + i] = at(need, word * n + i) | ((a.needs[r] ?? 0) << shift);
    });
  });
  const load = Float64Array.from(activities, a => {
    const shares = a.needs.map((x, r) => x / Math.max(1, capacity[r] ?? 1));
    return shares.reduce((sum, x) => sum + x, 0) / Math.max(1, capacity.length);
  });
  const before = activities.map(a => [...new Set(a.after)]);
  const then: number[][] = activities.map(() => []);
  before.forEach((list, i) => {
    for (const j of list) then[j]?.push(i);
  });
  return {
    n,
    ticks,
    words,
    need,
    full,
    guard,
    load,
    forward: way(ticks, before, then),
    before,
    then,
    horizon: activities.reduce((sum, a) => sum + a.ticks, 0),
  };
}

/** A place of an array that is known to be in it. */
export const at = (array: Int32Array, i: number): number => array[i] as number;

/** Which bits of which word each resource has: the first word with room. */
function seat(capacity: readonly number[]): readonly { word: number; shift: number; bits: number }[] {
  const used: number[] = [];
  return capacity.map(c => {
    const bits = 32 - Math.clz32(c);
    let word = used.findIndex(u => u + bits + 1 <= 32);
    if (word < 0) word = used.push(0) - 1;
    const shift = used[word] ?? 0;
    used[word] = shift + bits + 1;
    return { word, shift, bits };
  });
}

function way(ticks: Int32Array, before: Lists, then: Lists): Way {
  const n = ticks.length;
  const sorted = sort(before, then);
  const head = new Int32Array(n);
  const tail = new Int32Array(n);
  for (const i of sorted) for (const j of before[i] ?? []) head[i] = Math.max(at(head, i), at(head, j) + at(ticks, j));
  for (const i of sorted.toReversed()) {
    for (const j of then[i] ?? []) tail[i] = Math.max(at(tail, i), at(tail, j));
    tail[i] = at(tail, i) + at(ticks, i);
  }
  return {
    beforeFirst: firsts(before),
    before: Int32Array.from(before.flat()),
    nextFirst: firsts(then),
    next: Int32Array.from(then.flat()),
    sorted,
    head,
    tail,
  };
}

/** Those that wait for nothing that is left, again and again; what goes in a circle is missing at the end. */
export function sort(before: readonly (readonly number[])[], then: readonly (readonly number[])[]): Int32Array {
  const waits = before.map(list => list.length);
  const sorted = waits.flatMap((w, i) => (w === 0 ? [i] : []));
  for (let k = 0; k < sorted.length; k++)
    for (const j of then[sorted[k] ?? -1] ?? []) {
      const left = (waits[j] ?? 0) - 1;
      waits[j] = left;
      if (left === 0) sorted.push(j);
    }
  return Int32Array.from(sorted);
}

function firsts(lists: readonly (readonly number[])[]): Int32Array {
  const first = new Int32Array(lists.length + 1);
  lists.forEach((list, i) => {
    first[i + 1] = at(first, i) + list.length;
  });
  return first;
}
