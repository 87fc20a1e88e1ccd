/**
 * New orders from old ones. Every one keeps to the precedence: what an activity waits for is placed before it, wherever
 * it stood. All that is written goes into `list`.
 */
import { at, type Packed, type Way } from './pack.ts';
import type { Chance } from './random.ts';

/** An order in the making. */
export type Placing = {
  /** Begins anew, into `list`. */
  readonly into: (list: Int32Array, way: Way) => void;
  /** Places an activity, and before it what it waits for; nothing when it is placed already. */
  readonly place: (activity: number) => void;
  readonly placed: () => number;
};

export function placing({ n }: Packed): Placing {
  const done = new Int32Array(n);
  const stack = new Int32Array(n);
  const next = new Int32Array(n);
  let round = 0;
  let count = 0;
  let list: Int32Array = new Int32Array(n);
  let way: Way | undefined;
  return {
    into(target, of) {
      list = target;
      way = of;
      round++;
      count = 0;
    },
    placed: () => count,
    place(activity) {
      if (way === undefined || done[activity] === round) return;
      let depth = 0;
      stack[0] = activity;
      next[0] = at(way.beforeFirst, activity);
      while (depth >= 0) {
        const i = at(stack, depth);
        let q = at(next, depth);
        const end = at(way.beforeFirst, i + 1);
        while (q < end && done[at(way.before, q)] === round) q++;
        next[depth] = q + 1;
        if (q < end) {
          const waitsFor = at(way.before, q);
          stack[++depth] = waitsFor;
          next[depth] = at(way.beforeFirst, waitsFor);
        } else {
          done[i] = round;
          list[count++] = i;
          depth--;
        }
      }
    },
  };
}

/** A schedule as a parent: its times, and its order for the other direction (last to end first). */
export type Parent = { readonly start: Int32Array; readonly makespan: number; readonly turned: Int32Array };

/** The span kept holds about so many activities, and never more than a share of all; by trial. */
const FEWEST = 6;
const MOST = 36;
const LARGEST_SHARE = 0.75;

/**
 * One span of the father's schedule stays together; the mother's order comes before and after it (peak crossover: Valls,
 * Ballestín, Quintanilla, European Journal of Operational Research 185 (2008) 495-508; cut in time: Debels, Vanhoucke,
 * Operations Research 55 (2007) 457-469 (both memory)). Ours: the span is not where he uses the resources most, which is
 * often where everyone does, but where he is furthest ahead of her; by trial that is worth more than any size or share.
 */
export function keepSpan(
  packed: Packed,
  on: { readonly placing: Placing; readonly chance: Chance; readonly use: Float64Array },
  mother: Parent,
  father: Parent,
): void {
  const { n, ticks } = packed;
  const { place } = on.placing;
  const length = Math.max(1, Math.floor(father.makespan * share()));
  const from = furthestAhead();
  const to = from + length;
  const inSpan = (i: number): boolean => at(father.start, i) < to && at(father.start, i) + at(ticks, i) > from;
  for (let k = 0; k < n; k++) {
    const i = at(mother.turned, k);
    if (at(mother.start, i) + at(ticks, i) <= to) break;
    if (!inSpan(i)) place(i);
  }
  for (let k = 0; k < n; k++) {
    const i = at(father.turned, k);
    if (inSpan(i)) place(i);
  }
  for (let k = 0; k < n; k++) place(at(mother.turned, k));

  function share(): number {
    const most = Math.min(LARGEST_SHARE, MOST / n);
    const least = Math.min(most, FEWEST / n);
    return least + (most - least) * on.chance.next();
  }

  /** Start of the span of this length in which the father uses the resources more than the mother by most. */
  function furthestAhead(): number {
    const { use } = on;
    use.fill(0, 0, Math.max(mother.makespan, father.makespan) + 1);
    for (let i = 0; i < n; i++) {
      const [d, load] = [at(ticks, i), packed.load[i] as number];
      change(at(father.start, i), load);
      change(at(father.start, i) + d, -load);
      change(at(mother.start, i), -load);
      change(at(mother.start, i) + d, load);
    }
    for (let t = 1; t <= father.makespan; t++) change(t, use[t - 1] as number);
    let sum = 0;
    for (let t = 0; t < length; t++) sum += use[t] as number;
    let best = 0;
    let most = sum;
    for (let t = 1; t + length <= father.makespan; t++) {
      sum += (use[t + length - 1] as number) - (use[t - 1] as number);
      if (sum > most) {
        most = sum;
        best = t;
      }
    }
    return best;
  }

  function change(tick: number, by: number): void {
    on.use[tick] = (on.use[tick] as number) + by;
  }
}

/** Moves activities, each drawn with the place it goes to between the last it waits for and the first that waits for it. */
export function shift(way: Way, list: Int32Array, times: number, chance: Chance): void {
  const n = list.length;
  for (let k = 0; k < times; k++) {
    const from = chance.below(n);
    const i = at(list, from);
    let low = from;
    while (low > 0 && !isIn(way.before, way.beforeFirst, i, at(list, low - 1))) low--;
    let high = from;
    while (high < n - 1 && !isIn(way.next, way.nextFirst, i, at(list, high + 1))) high++;
    const to = low + chance.below(high - low + 1);
    if (to < from) list.copyWithin(to + 1, to, from);
    else list.copyWithin(from, from + 1, to + 1);
    list[to] = i;
  }
}

function isIn(flat: Int32Array, first: Int32Array, i: number, wanted: number): boolean {
  for (let q = at(first, i), end = at(first, i + 1); q < end; q++) if (flat[q] === wanted) return true;
  return false;
}
