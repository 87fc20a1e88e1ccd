/** The least minutes between postures, over others where that is quicker, and the least to pass through several. */
import { ANY, type Work } from './bare-work.ts';

export type Postures = {
  readonly count: number;
  /** Number of a posture; -1 for any. */
  readonly of: (name: string) => number;
  readonly minutes: (from: number, to: number) => number;
  /** The changes that lead from one to another, the last of them included. */
  readonly path: (from: number, to: number) => readonly number[];
  /** The least minutes to be in each posture of the set at some time and end in `end`, or anywhere for -1. */
  readonly through: (from: number, set: number, end: number) => number;
};

export const posturesOf = (work: Work): Postures => {
  const names = work.postures;
  const number = new Map(names.map((name, i) => [name, i]));
  const n = names.length;
  const minutes = names.map(a => names.map(b => (a === b ? 0 : (work.change[a]?.[b] ?? Number.POSITIVE_INFINITY))));
  const first = names.map(() => names.map((_, b) => b));
  const at = (a: number, b: number): number => minutes[a]?.[b] ?? 0;
  for (let via = 0; via < n; via++)
    for (let a = 0; a < n; a++)
      for (let b = 0; b < n; b++) {
        const over = at(a, via) + at(via, b);
        if (over >= at(a, b)) continue;
        (minutes[a] as number[])[b] = over;
        (first[a] as number[])[b] = first[a]?.[via] ?? via;
      }
  const known = new Map<number, number>();
  const through = (from: number, set: number, end: number): number => {
    const left = set & ~(1 << from);
    if (left === 0) return end < 0 ? 0 : at(from, end);
    const key = (left * n + from) * (n + 1) + end + 1;
    const before = known.get(key);
    if (before !== undefined) return before;
    let best = Number.POSITIVE_INFINITY;
    for (let next = 0; next < n; next++)
      if (left & (1 << next)) best = Math.min(best, at(from, next) + through(next, left, end));
    known.set(key, best);
    return best;
  };
  return {
    count: n,
    of: name => (name === ANY ? -1 : (number.get(name) ?? -1)),
    minutes: at,
    path: (from, to) => {
      const way: number[] = [];
      for (let now = from; now !== to; ) {
        now = first[now]?.[to] ?? to;
        way.push(now);
      }
      return way;
    },
    through,
  };
};
