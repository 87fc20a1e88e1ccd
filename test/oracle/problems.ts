/** Small invented problems from a seed, and the data in which the models of this folder read them. */
import { type Random, seeded } from '../../bench/random.ts';
import type { RemovalAsk } from '../../src/prep/removal/index.ts';
import type { Activity, AtTheKart, Schedule, ScheduleProblem } from '../../src/prep/schedule/index.ts';

const count = (n: number): readonly number[] => Array.from({ length: n }, (_, k) => k);
const between = ({ below }: Random, low: number, high: number): number => low + below(high - low + 1);
const some = (random: Random, of: number, most: number): readonly number[] => [
  ...new Set(count(random.below(most + 1)).map(() => random.below(of))),
];

/** 12 to 18 activities on 2 or 3 resources. */
export function plainProblem(seed: number): ScheduleProblem {
  const random = seeded(seed);
  const capacity = count(between(random, 2, 3)).map(() => between(random, 3, 8));
  const activities = count(between(random, 12, 18)).map(n => ({
    id: `${n}`,
    ticks: between(random, 1, 9),
    needs: capacity.map(most => (random.below(3) > 0 ? random.below(most + 1) : 0)),
    after: n === 0 ? [] : some(random, n, 2),
  }));
  return { id: `plain ${seed}`, capacity, activities };
}

const CHANGE = [
  [0, 3, 4],
  [3, 0, 5],
  [4, 5, 0],
];

/** 8 to 10 rows for two people with one tool, three postures and second looks; every other one in three windows. */
export function kartProblem(seed: number): ScheduleProblem {
  const random = seeded(seed);
  const activities = count(between(random, 8, 10)).map((n): Activity => {
    const after = n === 0 ? [] : some(random, n, 2);
    const postures = random.pick([[], [], [0], [1], [2], [0, 1]]);
    const first = random.below(2) === 0 ? after[0] : undefined;
    return {
      id: `row ${n}`,
      ticks: between(random, 1, 9),
      needs: [random.below(3) === 0 ? 1 : 0],
      after,
      crew: random.below(7) === 0 ? 2 : 1,
      ...(postures.length > 0 && { postures }),
      ...(first !== undefined && { looksAt: first }),
    };
  });
  const kart: AtTheKart = {
    people: 2,
    change: CHANGE,
    posture: random.below(4) - 1,
    unknown: [3, 3, 4],
    ...(seed % 2 === 0 && { windows: [15, 10, 40] }),
  };
  return { id: `kart ${seed}`, capacity: [1], activities, order: activities.map((_, n) => n), kart };
}

/** 20 parts and 6 wishes; parts may be reached from both sides, so ways run in circles. */
export function removalProblem(seed: number): RemovalAsk {
  const random = seeded(seed);
  const access = (n: number, ways: number) =>
    count(ways).map(() => [...new Set([random.below(n), random.below(n)])].map(p => `p${p}`));
  return {
    parts: count(20).map(n => ({
      id: `p${n}`,
      access:
        n < 4 ? [] : access(random.below(4) === 0 ? 20 : n, between(random, 1, 3)).filter(w => !w.includes(`p${n}`)),
      minutes: between(random, 2, 20),
    })),
    wishes: count(6).map(k => ({ id: `w${k}`, ways: access(20, between(random, 1, 3)) })),
  };
}

/** @param ours a schedule that keeps every rule: the solver looks for none that is longer */
export function scheduleData({ capacity, activities, kart }: ScheduleProblem, ours: Schedule) {
  const late = ours.kart !== undefined && ours.kart.tooSoon.length > 0;
  const plain = {
    horizon: late ? 2 * activities.reduce((sum, a) => sum + a.ticks, 100) : ours.makespan,
    n: activities.length,
    ticks: activities.map(a => a.ticks),
    resources: capacity.length,
    capacity,
    needs: capacity.map((_, r) => activities.map(a => a.needs[r] ?? 0)),
    after: activities.flatMap((a, n) => a.after.map(first => [first + 1, n + 1])),
  };
  if (kart === undefined) return plain;
  const nowhere = kart.change.length;
  const places = count(nowhere + 1);
  return {
    ...plain,
    people: kart.people,
    crew: activities.map(a => a.crew ?? 1),
    looksAt: activities.map(a => (a.looksAt ?? -1) + 1),
    postures: places.length,
    stands: activities.map(a => ({ set: (a.postures ?? places).map(p => p + 1) })),
    // Nobody turns a kart into a posture that nobody knows: that takes longer than any plan.
    change: places.map(a =>
      places.map(b => (a === b ? 0 : b === nowhere ? 2 * plain.horizon : (kart.change[a]?.[b] ?? kart.unknown[b]))),
    ),
    first: (kart.posture < 0 ? nowhere : kart.posture) + 1,
    // Each block but the first begins for the sake of a row that cannot be done in the posture before.
    blocks: 1 + activities.filter(a => a.postures !== undefined).length,
    windowEnds: (kart.windows ?? []).slice(0, -1).map((_, k, all) => all.slice(0, k + 1).reduce((x, y) => x + y, 0)),
  };
}

export function removalData({ parts, wishes }: RemovalAsk) {
  const place = new Map(parts.map(({ id }, n) => [id, n + 1]));
  const access = [...parts.map(part => part.access), ...wishes.map(wish => wish.ways)];
  const ways = access.flatMap((list, n) => list.map(way => ({ owner: n + 1, asks: way.map(id => place.get(id)) })));
  return {
    parts: parts.length,
    nodes: access.length,
    minutes: parts.map(({ minutes }) => minutes),
    ways: ways.length,
    owner: ways.map(({ owner }) => owner),
    asks: ways.map(({ asks }) => ({ set: asks })),
    shut: access.map(list => list.length > 0),
  };
}
