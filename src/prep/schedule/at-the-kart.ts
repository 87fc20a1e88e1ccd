/**
 * From an order to a plan at the kart: going through time with the posture it stands in, the people who are free and the
 * window it is. Whoever works, works in the same posture; it changes when nobody works and none of what is left fits it.
 */
import type { Activity, AtTheKart, PostureChange } from './model.ts';
import { at, type Packed } from './pack.ts';

export type Made = {
  readonly start: Int32Array;
  /** One bit a person. */
  readonly who: Int32Array;
  readonly changes: readonly PostureChange[];
  readonly tooSoon: readonly number[];
  readonly makespan: number;
};

export type Bench = {
  readonly packed: Omit<Packed, 'backward'>;
  readonly activities: readonly Activity[];
  readonly kart: AtTheKart;
};

/**
 * @param list all activities, in the order in which they are wished
 * @param patient true: nothing starts before what is listed before it. Else whatever can start does, in the order listed.
 */
export function made({ packed, activities, kart }: Bench, list: Int32Array, patient: boolean): Made {
  const { n, ticks, words, need, full, guard, forward } = packed;
  const everyone = (1 << kart.people) - 1;
  const windows = kart.windows ?? [];
  const free = Int32Array.from(full);
  const start = new Int32Array(n);
  const who = new Int32Array(n);
  const waits = Int32Array.from({ length: n }, (_, i) => at(forward.beforeFirst, i + 1) - at(forward.beforeFirst, i));
  const rank = new Int32Array(n);
  list.forEach((j, k) => {
    rank[j] = k;
  });
  const done: number[] = [];
  const changes: PostureChange[] = [];
  const tooSoon: number[] = [];
  /** Not begun, and waits for nothing any more; as listed. */
  const ready = [...list].filter(j => waits[j] === 0);
  let left = n;
  let running: number[] = [];
  let hands = everyone;
  let posture = kart.posture;
  let window = 0;
  let now = 0;
  let windowEnd = windows.length > 1 ? (windows[0] ?? 0) : Number.POSITIVE_INFINITY;

  while (left > 0) {
    if (startAll()) continue;
    if (running.length > 0) endNext();
    else if (!turnKart()) giveWay();
  }
  const makespan = start.reduce((end, s, i) => Math.max(end, s + at(ticks, i)), 0);
  return { start, who, changes, tooSoon, makespan };

  /** Starts what can start now; tells whether anything did. */
  function startAll(): boolean {
    const before = left;
    let seen = 0; // places of the list that were looked at
    for (let k = 0; k < ready.length; ) {
      const j = ready[k] as number;
      if (patient && someWaits(seen, at(rank, j))) break;
      seen = at(rank, j) + 1;
      const people = canRun(j) && now + at(ticks, j) <= windowEnd && suits(j, posture) ? handsFor(j) : -1;
      if (people >= 0) {
        ready.splice(k, 1);
        begin(j, people);
        k = placeFor(j); // what became ready before it has its turn next time
      } else if (patient && isApart(j)) break;
      else k++;
    }
    return left < before;
  }

  /** Does anything of these places of the list wait for what is being done? */
  function someWaits(from: number, to: number): boolean {
    if (running.length === 0) return false;
    for (let k = from; k < to; k++) if (waits[at(list, k)] !== 0) return true;
    return false;
  }

  /** Where it stands, or would, among what is ready. */
  function placeFor(j: number): number {
    let low = 0;
    let high = ready.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (at(rank, ready[middle] as number) < at(rank, j)) low = middle + 1;
      else high = middle;
    }
    return low;
  }

  function begin(j: number, people: number): void {
    left--;
    start[j] = now;
    who[j] = people;
    hands &= ~people;
    for (let w = 0; w < words; w++) free[w] = at(free, w) - at(need, w * n + j);
    running.push(j);
    if (ticks[j] === 0) endAt(now);
  }

  function endNext(): void {
    now = running.reduce((first, j) => Math.min(first, at(start, j) + at(ticks, j)), Number.POSITIVE_INFINITY);
    endAt(now);
  }

  function endAt(time: number): void {
    const ended = running.filter(j => at(start, j) + at(ticks, j) <= time);
    running = running.filter(j => at(start, j) + at(ticks, j) > time);
    for (const j of ended) {
      done.push(j);
      hands |= at(who, j);
      for (let w = 0; w < words; w++) free[w] = at(free, w) + at(need, w * n + j);
      for (let q = at(forward.nextFirst, j), end = at(forward.nextFirst, j + 1); q < end; q++) {
        const next = at(forward.next, q);
        waits[next] = at(waits, next) - 1;
        if (waits[next] === 0) ready.splice(placeFor(next), 0, next);
      }
    }
  }

  /** Nobody works: brings the kart into a posture that the first of the list that can be done then wants. */
  function turnKart(): boolean {
    for (const j of ready) {
      if (!canRun(j) || !isApart(j)) continue;
      if (!suits(j, posture)) {
        const to = nearest(j);
        const takes = changeTicks(to);
        if (now + takes + at(ticks, j) <= windowEnd) {
          turn(to);
          return true;
        }
      }
      if (patient) return false;
    }
    return false;
  }

  function turn(to: number): void {
    const takes = changeTicks(to);
    if (now + takes > windowEnd) return;
    changes.push({ at: now, ticks: takes, to });
    now += takes;
    posture = to;
  }

  /** Nothing can be done in this window, or nothing but second looks straight after the first. */
  function giveWay(): void {
    const open = ready.filter(canRun);
    const first = open.find(isApart);
    if (first !== undefined && windowEnd < Number.POSITIVE_INFINITY) {
      if (!suits(first, posture)) turn(nearest(first)); // so that the next window begins with work
      now = windowEnd;
      window++;
      windowEnd = window < windows.length - 1 ? now + (windows[window] ?? 0) : Number.POSITIVE_INFINITY;
      return;
    }
    const look = open.find(j => !isApart(j));
    if (look === undefined) throw new Error('made: list must keep to the precedence, got one that does not');
    tooSoon.push(look);
  }

  function canRun(j: number): boolean {
    for (let w = 0; w < words; w++) {
      const guards = at(guard, w);
      if (((at(free, w) - at(need, w * n + j)) & guards) !== guards) return false;
    }
    return true;
  }

  /** Who could do it besides those who did what it looks at; everyone when there are not enough of them. */
  function others(j: number): number {
    const first = activities[j]?.looksAt;
    const rest = first === undefined ? everyone : everyone & ~at(who, first);
    return countOf(rest) >= crewOf(activities[j]) ? rest : everyone;
  }

  /** A second look by one who did the first waits for another row in between. */
  function isApart(j: number): boolean {
    const first = activities[j]?.looksAt;
    if (first === undefined || (others(j) & at(who, first)) === 0 || tooSoon.includes(j)) return true;
    const since = at(start, first) + at(ticks, first);
    for (let k = done.length - 1; k >= 0; k--) {
      const other = done[k] as number; // the last to end first
      if (other !== first && at(start, other) >= since) return true;
      if (at(start, other) + at(ticks, other) < since) return false;
    }
    return false;
  }

  /** Bits of the people who do it, -1 when they are not free or must not yet. */
  function handsFor(j: number): number {
    if (!isApart(j)) return -1;
    let open = hands & others(j);
    let taken = 0;
    for (let k = crewOf(activities[j]); k > 0; k--) {
      if (open === 0) return -1;
      const one = open & -open;
      taken |= one;
      open &= ~one;
    }
    return taken;
  }

  function suits(j: number, kartIn: number): boolean {
    const wanted = activities[j]?.postures;
    return wanted === undefined || wanted.includes(kartIn);
  }

  function nearest(j: number): number {
    const wanted = activities[j]?.postures ?? [];
    return wanted.reduce((best, p) => (changeTicks(p) < changeTicks(best) ? p : best), wanted[0] ?? posture);
  }

  function changeTicks(to: number): number {
    return (posture < 0 ? kart.unknown[to] : kart.change[posture]?.[to]) ?? 0;
  }
}

export const crewOf = (activity: Activity | undefined): number => activity?.crew ?? 1;

const countOf = (bits: number): number => (bits === 0 ? 0 : 1 + countOf(bits & (bits - 1)));
