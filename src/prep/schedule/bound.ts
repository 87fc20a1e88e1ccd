/**
 * What no schedule can be shorter than. Each bound has its reason as a name; the largest is told.
 *  chain      the longest path through what waits for what
 *  resource   all that needs one resource, between the earliest it can begin and the least that follows it
 *  one by one a set of activities of which no two can run at the same time
 *  refuted    a shorter time was tried and does not fit: windows of each activity, narrowed by what must run when,
 *             hold more work than a resource can do (Baptiste, Le Pape, Nuijten, "Satisfiability tests and time-bound
 *             adjustments for cumulative scheduling problems", Annals of Operations Research 92 (1999) 305-333 (memory))
 */
import type { Bound, ScheduleProblem } from './model.ts';
import { at, type Packed } from './pack.ts';

/** Beyond this many activities the slower bounds are not asked: they compare each with each. */
export const MOST_COMPARED = 250;

export function quickBound(problem: ScheduleProblem, packed: Packed): Bound {
  const bounds = [chain(packed), resource(problem, packed)];
  if (packed.n <= MOST_COMPARED) bounds.push(oneByOne(problem, packed));
  return bounds.reduce((best, b) => (b.ticks > best.ticks ? b : best));
}

function chain({ n, forward }: Packed): Bound {
  let ticks = 0;
  for (let i = 0; i < n; i++) ticks = Math.max(ticks, at(forward.head, i) + at(forward.tail, i));
  return { ticks, by: 'chain' };
}

/** For each resource and each pair of head and tail: the activities that have at least both share what is between. */
function resource({ activities, capacity }: ScheduleProblem, packed: Packed): Bound {
  const { n, ticks, forward } = packed;
  let most = 0;
  capacity.forEach((c, r) => {
    const users = Array.from({ length: n }, (_, i) => i)
      .filter(i => (activities[i]?.needs[r] ?? 0) > 0 && at(ticks, i) > 0)
      .map(i => ({
        head: at(forward.head, i),
        after: at(forward.tail, i) - at(ticks, i),
        work: at(ticks, i) * (activities[i]?.needs[r] ?? 0),
      }))
      .sort((a, b) => b.after - a.after);
    const heads = n <= MOST_COMPARED ? [...new Set(users.map(u => u.head))] : [0];
    for (const head of heads) {
      let work = 0;
      for (const u of users) {
        if (u.head < head) continue;
        work += u.work;
        most = Math.max(most, head + Math.ceil(work / c) + u.after);
      }
    }
  });
  return { ticks: most, by: 'resource' };
}

/** From each activity on, takes the longest ones that can run beside none of those taken. */
function oneByOne(problem: ScheduleProblem, packed: Packed): Bound {
  const apart = incompatible(problem, packed);
  const { n, ticks } = packed;
  const long = Array.from({ length: n }, (_, i) => i)
    .filter(i => at(ticks, i) > 0)
    .sort((a, b) => at(ticks, b) - at(ticks, a));
  let most = 0;
  for (const first of long) {
    const taken = [first];
    for (const i of long) if (i !== first && taken.every(j => apart[i * n + j] === 1)) taken.push(i);
    most = Math.max(
      most,
      taken.reduce((sum, i) => sum + at(ticks, i), 0),
    );
  }
  return { ticks: most, by: 'one by one' };
}

/** 1 at i * n + j where i and j can never run at the same time: one waits for the other, or they need too much together. */
function incompatible({ activities, capacity }: ScheduleProblem, { n, forward }: Packed): Uint8Array {
  const apart = new Uint8Array(n * n);
  for (const j of forward.sorted)
    for (let q = at(forward.beforeFirst, j), end = at(forward.beforeFirst, j + 1); q < end; q++) {
      const i = at(forward.before, q);
      apart[i * n + j] = 1;
      for (let h = 0; h < n; h++) if (apart[h * n + i] === 1) mark(h, j);
    }
  for (let i = 0; i < n; i++)
    for (let j = 0; j < i; j++) {
      const much = capacity.some((c, r) => (activities[i]?.needs[r] ?? 0) + (activities[j]?.needs[r] ?? 0) > c);
      if (much || apart[i * n + j] === 1 || apart[j * n + i] === 1) {
        mark(i, j);
        mark(j, i);
      }
    }
  return apart;

  function mark(h: number, j: number): void {
    apart[h * n + j] = 1;
  }
}

/** Raises the bound, a tick at a time, as long as a time below `makespan` can be refuted. */
export function refuted(problem: ScheduleProblem, packed: Packed, from: Bound, makespan: number): Bound {
  if (packed.n > MOST_COMPARED) return from;
  let bound = from;
  while (bound.ticks < makespan && isRefuted(problem, packed, bound.ticks))
    bound = { ticks: bound.ticks + 1, by: 'refuted' };
  return bound;
}

/** Can it be shown that the work does not fit into `limit` ticks? */
function isRefuted(problem: ScheduleProblem, packed: Packed, limit: number): boolean {
  const { n, ticks, forward } = packed;
  const early = Int32Array.from(forward.head); // earliest start
  const late = Int32Array.from(forward.tail, t => limit - t); // latest start
  const users = problem.capacity.map((_, r) =>
    Array.from({ length: n }, (_, i) => i).filter(i => (problem.activities[i]?.needs[r] ?? 0) > 0 && at(ticks, i) > 0),
  );
  for (let changed = true; changed; ) {
    changed = false;
    for (let i = 0; i < n; i++) if (at(early, i) > at(late, i)) return true;
    for (const [r, c] of problem.capacity.entries()) {
      const narrowed = narrow(r, c);
      if (narrowed === 'refuted') return true;
      changed = narrowed === 'narrowed' || changed;
    }
    if (changed) spread();
  }
  return problem.capacity.some((c, r) => overfull(r, c));

  function need(i: number, r: number): number {
    return problem.activities[i]?.needs[r] ?? 0;
  }

  /** What must run at a tick whatever happens leaves no room there: those that do not fit beside it start later, or end before. */
  function narrow(r: number, c: number): 'refuted' | 'narrowed' | 'same' {
    const must = new Int32Array(limit + 1);
    const list = users[r] ?? [];
    for (const i of list)
      for (let t = at(late, i); t < at(early, i) + at(ticks, i); t++) must[t] = at(must, t) + need(i, r);
    for (let t = 0; t < limit; t++) if (at(must, t) > c) return 'refuted';
    let found: 'narrowed' | 'same' = 'same';
    for (const i of list) {
      const [e, l, d, x] = [at(early, i), at(late, i), at(ticks, i), need(i, r)];
      const others = (t: number): number => at(must, t) - (t >= l && t < e + d ? x : 0);
      let first = e;
      for (let t = first; t < first + d && first <= l; t++) if (others(t) + x > c) first = t + 1;
      let last = l;
      for (let t = last + d - 1; t >= last && last >= first; t--)
        if (others(t) + x > c) {
          last = t - d;
          t = last + d;
        }
      if (first > last) return 'refuted';
      if (first !== e || last !== l) found = 'narrowed';
      early[i] = first;
      late[i] = last;
    }
    return found;
  }

  /** What waits starts after what it waits for, and the other way round. */
  function spread(): void {
    for (const j of forward.sorted)
      for (let q = at(forward.beforeFirst, j), end = at(forward.beforeFirst, j + 1); q < end; q++) {
        const i = at(forward.before, q);
        early[j] = Math.max(at(early, j), at(early, i) + at(ticks, i));
      }
    for (const i of forward.sorted.toReversed())
      for (let q = at(forward.nextFirst, i), end = at(forward.nextFirst, i + 1); q < end; q++)
        late[i] = Math.min(at(late, i), at(late, at(forward.next, q)) - at(ticks, i));
  }

  /** Is there a span of time in which more work must be done than the resource can, pushed left or right as far as it goes? */
  function overfull(r: number, c: number): boolean {
    const list = users[r] ?? [];
    const begins = [...new Set(list.flatMap(i => [at(early, i), at(late, i)]))];
    const ends = [...new Set(list.flatMap(i => [at(late, i) + at(ticks, i), at(early, i) + at(ticks, i)]))];
    for (const a of begins)
      for (const b of ends) {
        if (b <= a) continue;
        let work = 0;
        for (const i of list) {
          const d = at(ticks, i);
          const left = Math.min(d, b - a, at(early, i) + d - a, b - at(late, i));
          if (left > 0) work += left * need(i, r);
        }
        if (work > c * (b - a)) return true;
      }
    return false;
  }
}
