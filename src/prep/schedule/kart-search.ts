/**
 * The search over plans at the kart: orders, each gone through greedily or patiently, recombined in two cuts and shaken.
 * A plan for fewer people is one for more, so the best of those is among the plans: another pair of hands never makes
 * it longer, but where two people did work of which the third must now take every second look. Of plans as long as each other it takes the one with fewer changes of posture, then the one nearest to the
 * order a person would like.
 */
import { type Bench, crewOf, type Made, made } from './at-the-kart.ts';
import { kartBound } from './kart-bound.ts';
import type { Activity, AtTheKart, Bound, Effort, ScheduleProblem } from './model.ts';
import { at, pack } from './pack.ts';
import { chanceFrom } from './random.ts';
import { placing, shift } from './recombine.ts';

export type KartFound = { readonly plan: Made; readonly bound: Bound; readonly schedules: number };

type One = {
  readonly list: Int32Array;
  readonly patient: boolean;
  readonly plan: Made;
  readonly score: readonly number[];
};

/** Orders kept: greedy ones and patient ones, half of each, for either kind finds plans that the other cannot. */
const KEPT = 24;
/** Share of the orders that have no parents, so that those kept do not grow alike. */
const FRESH = 0.1;
/** Rows times rows times plans a search makes at most, some seconds; only problems of thousands of rows get there. */
const MOST_WORK = 5e7;

/** @param effort the schedules for each number of people from 1 to those of the kart */
export function* kartSearch(
  problem: ScheduleProblem,
  kart: AtTheKart,
  effort: Effort,
): Generator<KartFound, KartFound> {
  const { activities } = problem;
  const plain = withPeople(problem, kart.people);
  const packed = pack(plain);
  const { n, forward } = packed;
  const bench: Bench = { packed, activities, kart };
  const chance = chanceFrom(effort.seed);
  const order = placing(packed);
  const rank = ranks(problem.order ?? [...forward.sorted]);
  const most = Math.max(1, Math.min(effort.schedules, Math.floor(MOST_WORK / (n * n + 1))));
  const bound = kartBound(plain, kart);
  const kept: One[] = [];
  let own = 0;
  let before = 0;

  const wished = ordered(i => at(rank, i));
  let best = one(wished, false);
  join(best);
  if (!ended()) join(one(wished, true));
  yield found();
  if (kart.people > 1 && activities.every(a => crewOf(a) < kart.people)) {
    const search = kartSearch(problem, { ...kart, people: kart.people - 1 }, effort);
    let step = search.next();
    for (; !step.done; step = search.next()) yield { ...found(), schedules: own + step.value.schedules };
    before = step.value.schedules;
    const { plan } = step.value;
    const list = ordered(i => at(plan.start, i));
    const more = withAnother(plan, activities, kart.people);
    join(more === undefined ? one(list, true) : scored(list, true, more));
  }
  for (let k = 2; k < KEPT && !ended(); k++) join(one(drawn(), k % 2 === 1));
  while (!ended()) {
    join(chance.next() < FRESH ? one(drawn(), chance.next() < 0.5) : child());
    if (own % 16 === 0) yield found();
  }
  return found();

  function ended(): boolean {
    return own >= most || (best.plan.makespan <= bound.ticks && best.plan.tooSoon.length === 0);
  }

  function found(): KartFound {
    return { plan: best.plan, bound, schedules: own + before };
  }

  /** All activities by key, smallest first, each after what it waits for. */
  function ordered(key: (i: number) => number): Int32Array {
    const list = new Int32Array(n);
    order.into(list, forward);
    for (const i of Array.from({ length: n }, (_, j) => j).sort((a, b) => key(a) - key(b) || at(rank, a) - at(rank, b)))
      order.place(i);
    return list;
  }

  /** By wish or by longest tail, more or less blurred. */
  function drawn(): Int32Array {
    const blur = chance.next() * 0.5;
    const byTail = chance.next() < 0.5;
    const longest = Math.max(1, ...(n > 0 ? [at(forward.tail, at(forward.sorted, 0))] : []));
    const keys = Array.from({ length: n }, (_, i) => {
      const place = byTail ? -at(forward.tail, i) / longest : at(rank, i) / n;
      return place + blur * chance.next();
    });
    return ordered(i => keys[i] ?? 0);
  }

  function child(): One {
    const [mother, father] = [better(), better()];
    const [a, b] = [chance.below(n + 1), chance.below(n + 1)];
    const [from, to] = a < b ? [a, b] : [b, a];
    const list = new Int32Array(n);
    order.into(list, forward);
    for (let k = 0; k < from; k++) order.place(at(mother.list, k));
    for (let k = 0; k < n && order.placed() < to; k++) order.place(at(father.list, k));
    for (let k = 0; k < n; k++) order.place(at(mother.list, k));
    if (mother === father || chance.next() < 0.3) shift(forward, list, 1 + chance.below(3), chance);
    return one(list, chance.next() < 0.1 ? !mother.patient : mother.patient);
  }

  function better(): One {
    const [a, b] = [kept[chance.below(kept.length)] as One, kept[chance.below(kept.length)] as One];
    return isBetter(b.score, a.score) ? b : a;
  }

  function one(list: Int32Array, patient: boolean): One {
    own++;
    return scored(list, patient, made(bench, list, patient));
  }

  function scored(list: Int32Array, patient: boolean, plan: Made): One {
    const done = ordered(i => at(plan.start, i));
    const moved = done.reduce((sum, i, k) => sum + Math.abs(at(rank, i) - k), 0);
    return { list, patient, plan, score: [plan.tooSoon.length, plan.makespan, plan.changes.length, moved] };
  }

  function join(fresh: One): void {
    if (kept.length < KEPT) kept.push(fresh);
    else {
      const takesPlaceOf = (other: One, k: number, w: number): boolean =>
        other.patient === fresh.patient && k !== w && (w < 0 || isBetter((kept[w] as One).score, other.score));
      const worst = kept.reduce((w, other, k) => (takesPlaceOf(other, k, w) ? k : w), -1);
      const twin = kept.some(other => other.score.every((x, k) => x === fresh.score[k]) && sameStarts(other, fresh));
      if (!twin && worst >= 0 && !isBetter((kept[worst] as One).score, fresh.score)) kept[worst] = fresh;
    }
    if (isBetter(fresh.score, best.score)) best = fresh;
  }
}

const sameStarts = (a: One, b: One): boolean => a.plan.start.every((s, i) => s === b.plan.start[i]);

/** The first figure in which they differ is less. */
const isBetter = (a: readonly number[], b: readonly number[]): boolean => {
  const k = a.findIndex((x, q) => x !== b[q]);
  return k >= 0 && (a[k] ?? 0) < (b[k] ?? 0);
};

const ranks = (order: readonly number[]): Int32Array => {
  const rank = new Int32Array(order.length);
  order.forEach((i, k) => {
    rank[i] = k;
  });
  return rank;
};

/** People as one more resource. */
export const withPeople = (problem: ScheduleProblem, people: number): ScheduleProblem => ({
  capacity: [...problem.capacity, people],
  activities: problem.activities.map(a => ({ ...a, needs: [...a.needs, crewOf(a)] })),
});

/**
 * The same plan with one person more: where one was alone, the other takes the second looks. Undefined where two did both
 * the work and its second look, which is now the third's, who may be wanted twice at once.
 */
function withAnother(plan: Made, activities: readonly Activity[], people: number): Made | undefined {
  const looks = activities.map(a => a.looksAt);
  if (people === 2)
    return { ...plan, tooSoon: [], who: plan.who.map((w, i) => (looks[i] === undefined || w === 0 ? w : 2)) };
  return looks.some((first, i) => first !== undefined && (at(plan.who, first) & at(plan.who, i)) !== 0)
    ? undefined
    : plan;
}
