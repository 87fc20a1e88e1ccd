/**
 * From an order to a schedule. The serial scheme takes the activities as listed and puts each at the earliest time its
 * resources allow; the parallel scheme goes through time and starts what it can. Either is one counted schedule.
 * Source: Kolisch, "Serial and parallel resource-constrained project scheduling methods revisited: theory and
 * computation", European Journal of Operational Research 90 (1996) 320-333 (memory).
 */
import { at, type Packed, type Way } from './pack.ts';
import type { Chance } from './random.ts';

/** Arrays that every schedule of a search is made with; nothing in them outlives a call. */
export type Desk = {
  /** What is free at each tick: word w of tick t stands at w * span + t. */
  readonly free: Int32Array;
  readonly span: number;
  readonly waits: Int32Array;
  readonly ready: Int32Array;
  readonly running: Int32Array;
  readonly now: Int32Array;
  readonly weight: Float64Array;
  readonly count: Int32Array;
  /** Ticks of the profile looked at so far: the measure of work that bounds a search on a huge problem. */
  steps: number;
};

export function desk({ n, words, horizon }: Packed): Desk {
  const span = horizon + 1;
  return {
    free: new Int32Array(words * span),
    span,
    waits: new Int32Array(n),
    ready: new Int32Array(n),
    running: new Int32Array(n),
    now: new Int32Array(words),
    weight: new Float64Array(n),
    count: new Int32Array(horizon + 2),
    steps: 0,
  };
}

/** Writes `start`; `list` must keep to the precedence of `way`. @returns the makespan [tick] */
export function serial(packed: Packed, way: Way, list: Int32Array, start: Int32Array, on: Desk): number {
  const { n, ticks, need, full, words } = packed;
  const { free, span } = on;
  for (let w = 0; w < words; w++) free.fill(at(full, w), w * span, (w + 1) * span);
  let makespan = 0;
  let looked = 0;
  for (let k = 0; k < n; k++) {
    const j = at(list, k);
    const d = at(ticks, j);
    let t = 0;
    for (let q = at(way.beforeFirst, j), end = at(way.beforeFirst, j + 1); q < end; q++) {
      const i = at(way.before, q);
      t = Math.max(t, at(start, i) + at(ticks, i));
    }
    const from = t;
    t = earliest(packed, on, j, t, d);
    looked += t - from + d;
    for (let w = 0; w < words; w++) {
      const takes = at(need, w * n + j);
      if (takes !== 0) for (let q = w * span + t, end = q + d; q < end; q++) free[q] = at(free, q) - takes;
    }
    start[j] = t;
    makespan = Math.max(makespan, t + d);
  }
  on.steps += looked + n;
  return makespan;
}

/** Looks back from the end of the wished span, so that the first tick that is too full skips all starts up to it. */
function earliest({ n, need, guard, words }: Packed, on: Desk, j: number, from: number, d: number): number {
  const { free, span } = on;
  const takes = at(need, j);
  const g = at(guard, 0);
  let t = from;
  let unseen = from;
  for (;;) {
    let k = t + d - 1;
    while (k >= unseen && ((at(free, k) - takes) & g) === g && (words === 1 || fitsRest(k))) k--;
    if (k < unseen) return t;
    unseen = t + d;
    t = k + 1;
  }

  function fitsRest(tick: number): boolean {
    for (let w = 1; w < words; w++) {
      const guards = at(guard, w);
      if (((at(free, w * span + tick) - at(need, w * n + j)) & guards) !== guards) return false;
    }
    return true;
  }
}

/** What looking at one that is ready costs, in ticks of the profile looked at. */
const CHOICE = 8;

/**
 * The parallel scheme. Of what fits now it starts the one with the smallest key or, with `chance`, one drawn by regret:
 * the more its key is below the largest, the likelier, to the power `bias`.
 */
export function parallel(
  packed: Packed,
  way: Way,
  key: Float64Array,
  start: Int32Array,
  on: Desk,
  draw?: { readonly chance: Chance; readonly bias: number },
): number {
  const { n, ticks, need, full, guard, words } = packed;
  const { waits, ready, running, now, weight } = on;
  now.set(full);
  let many = 0;
  let busy = 0;
  let makespan = 0;
  for (let i = 0; i < n; i++) {
    waits[i] = at(way.beforeFirst, i + 1) - at(way.beforeFirst, i);
    if (waits[i] === 0) ready[many++] = i;
  }
  for (let t = 0, done = 0; done < n; ) {
    on.steps += busy + 1;
    for (let pick = choose(); pick >= 0; pick = choose()) {
      const j = at(ready, pick);
      ready[pick] = at(ready, --many);
      start[j] = t;
      done++;
      makespan = Math.max(makespan, t + at(ticks, j));
      if (ticks[j] === 0) release(j);
      else {
        for (let w = 0; w < words; w++) now[w] = at(now, w) - at(need, w * n + j);
        running[busy++] = j;
      }
    }
    if (done === n) break;
    t = Number.MAX_SAFE_INTEGER;
    for (let q = 0; q < busy; q++) t = Math.min(t, endOf(at(running, q)));
    for (let q = 0; q < busy; ) {
      const j = at(running, q);
      if (endOf(j) > t) q++;
      else {
        for (let w = 0; w < words; w++) now[w] = at(now, w) + at(need, w * n + j);
        running[q] = at(running, --busy);
        release(j);
      }
    }
  }
  return makespan;

  function endOf(j: number): number {
    return at(start, j) + at(ticks, j);
  }

  function release(j: number): void {
    for (let q = at(way.nextFirst, j), end = at(way.nextFirst, j + 1); q < end; q++) {
      const next = at(way.next, q);
      waits[next] = at(waits, next) - 1;
      if (waits[next] === 0) ready[many++] = next;
    }
  }

  function fits(j: number): boolean {
    for (let w = 0; w < words; w++) {
      const guards = at(guard, w);
      if (((at(now, w) - at(need, w * n + j)) & guards) !== guards) return false;
    }
    return true;
  }

  /** Place in `ready` of what starts now; -1 when nothing can. */
  function choose(): number {
    let smallest = -1;
    let largest = Number.NEGATIVE_INFINITY;
    on.steps += CHOICE * many;
    for (let q = 0; q < many; q++) {
      const j = at(ready, q);
      const k = key[j] as number;
      weight[q] = fits(j) ? 1 : 0;
      if (weight[q] === 0) continue;
      if (smallest < 0 || k < (key[at(ready, smallest)] as number)) smallest = q;
      if (k > largest) largest = k;
    }
    if (smallest < 0 || draw === undefined) return smallest;
    let sum = 0;
    for (let q = 0; q < many; q++)
      if (weight[q] !== 0) {
        weight[q] = (largest - (key[at(ready, q)] as number) + 1) ** draw.bias;
        sum += weight[q] as number;
      }
    let left = draw.chance.next() * sum;
    let pick = smallest;
    for (let q = 0; q < many && left >= 0; q++)
      if (weight[q] !== 0) {
        pick = q;
        left -= weight[q] as number;
      }
    return pick;
  }
}

/**
 * The same schedule seen from its end: the order, last to end first, in which the other direction packs it again. Such a
 * second packing never makes it longer (justification: Valls, Ballestín, Quintanilla, European Journal of Operational
 * Research 165 (2005) 375-386 (memory)).
 */
export function turn(
  packed: Packed,
  other: Way,
  start: Int32Array,
  makespan: number,
  list: Int32Array,
  on: Desk,
): void {
  const { n, ticks } = packed;
  const { count } = on;
  count.fill(0, 0, makespan + 2);
  for (let i = 0; i < n; i++) {
    const after = makespan - at(start, i) - at(ticks, i) + 1;
    count[after] = at(count, after) + 1;
  }
  for (let t = 0; t <= makespan; t++) count[t + 1] = at(count, t + 1) + at(count, t);
  for (let k = 0; k < n; k++) {
    const i = at(other.sorted, k);
    const after = makespan - at(start, i) - at(ticks, i);
    const place = at(count, after);
    count[after] = place + 1;
    list[place] = i;
  }
}
