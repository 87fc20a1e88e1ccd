/**
 * The search over plain schedules. Two groups: one packed forward, one packed backward. A child is made from parents of
 * one group and packed in the other direction, so it costs one schedule and is justified at once (alternating groups:
 * Debels, Vanhoucke, Operations Research 55 (2007) 457-469 (memory)). Ours: both groups begin with the parallel scheme;
 * each in turn is a father, to a mother who is the shorter of two drawn, but is first turned round as it stands; an
 * order that was packed before is shaken until it is new; a child takes the place of the heaviest of its group, unless
 * its like is there; groups that find nothing more are drawn anew but for a few.
 */
import { quickBound, refuted } from './bound.ts';
import { desk, parallel, serial, turn } from './decode.ts';
import type { Bound, Effort, ScheduleProblem } from './model.ts';
import { at, pack, type Way } from './pack.ts';
import { chanceFrom } from './random.ts';
import { keepSpan, type Parent, placing, shift } from './recombine.ts';

export type Found = {
  readonly start: readonly number[];
  readonly makespan: number;
  readonly bound: Bound;
  readonly schedules: number;
};

/** `weight` tells apart those as long as each other: the less ends late, the less stands in the way of a shorter one. */
type One = Parent & { readonly weight: number; turnedOnce: boolean };
type Group = { readonly way: Way; readonly other: Way; all: One[] };

/** First orders are drawn by regret to this power: the higher, the nearer to the rule of the longest tail. */
const BIAS = 3;
/** Share of the children that are shaken, and of a group that outlives its renewal; by trial. */
const SHAKEN = 0.2;
const KEPT = 0.05;
/** Profile ticks a search looks at before it stops, some seconds; only problems of thousands of activities get there. */
const MOST_STEPS = 1e9;

/** Yields now and then, always with the best so far; returns it when a bound proves it, or the schedules are made. */
export function* search(problem: ScheduleProblem, { schedules, seed }: Effort): Generator<Found, Found> {
  const packed = pack(problem);
  const { n, ticks } = packed;
  const on = desk(packed);
  const chance = chanceFrom(seed);
  const tools = { placing: placing(packed), chance, use: new Float64Array(packed.horizon + 2) };
  const forward: Group = { way: packed.forward, other: packed.backward, all: [] };
  const backward: Group = { way: packed.backward, other: packed.forward, all: [] };
  const packedBefore = new Set<number>();
  const size = groupSize(n, schedules);
  const patience = size * Math.max(15, n / 4);
  let bound = quickBound(problem, packed);
  let best: Pick<One, 'start' | 'makespan'> = { start: new Int32Array(n), makespan: Number.POSITIVE_INFINITY };
  let made = 0;
  let improved = 0; // how many had been made when the best was found, or the groups were renewed
  const ended = (): boolean => made > 0 && (made >= schedules || best.makespan <= bound.ticks || on.steps > MOST_STEPS);
  const found = (): Found => ({ start: [...best.start], makespan: best.makespan, bound, schedules: made });

  const firsts = [forward, backward].map(group => ({ group, drawn: [] as One[], key: ruleOf(group) }));
  for (let k = 0; k < 4 * size && !ended(); k++) {
    const { group, drawn, key } = firsts[k % 2] ?? { group: forward, drawn: [], key: ruleOf(forward) };
    const start = new Int32Array(n);
    const draw = k < 2 ? undefined : { chance, bias: BIAS };
    drawn.push(keep(group, start, parallel(packed, group.way, key, start, on, draw)));
    if (k % 16 === 0) yield found();
  }
  for (const { group, drawn } of firsts) {
    const children = opposite(group);
    for (const one of sorted(drawn).slice(0, size)) if (!ended()) children.all.push(packedFrom(children, one.turned));
  }
  if (made < schedules) bound = refuted(problem, packed, bound, best.makespan);

  for (let children = forward; !ended(); children = opposite(children)) {
    const parents = opposite(children).all;
    for (const father of [...parents]) if (!ended()) join(children.all, child(parents, children, father));
    if (made - improved > patience) renew();
    yield found();
  }
  return found();

  /** A group that finds nothing more keeps its few lightest; new ones are drawn beside them. */
  function renew(): void {
    improved = made;
    for (const { group, key } of firsts) {
      group.all = sorted(group.all).slice(0, Math.ceil(KEPT * size));
      while (group.all.length < size && !ended()) {
        const start = new Int32Array(n);
        group.all.push(keep(group, start, parallel(packed, group.way, key, start, on, { chance, bias: 1 })));
      }
    }
  }

  function opposite(group: Group): Group {
    return group === forward ? backward : forward;
  }

  /** Smaller goes first: what leaves the least time after it. */
  function ruleOf({ way }: Group): Float64Array {
    return Float64Array.from(way.tail, (tail, i) => at(ticks, i) - tail);
  }

  function child(parents: readonly One[], children: Group, father: One): One {
    const list = new Int32Array(n);
    if (!father.turnedOnce) {
      father.turnedOnce = true;
      list.set(father.turned);
    } else {
      const mother = shorter(parents);
      tools.placing.into(list, children.way);
      if (mother !== father) {
        keepSpan(packed, tools, mother, father);
        if (chance.next() < SHAKEN) shift(children.way, list, 1, chance);
      } else list.set(mother.turned);
    }
    for (let tries = 1; tries <= 20 && wasPacked(children, list); tries++) shift(children.way, list, tries, chance);
    return packedFrom(children, list);
  }

  /** The shorter of two drawn at random. */
  function shorter(from: readonly One[]): One {
    const a = from[chance.below(from.length)] as One;
    const b = from[chance.below(from.length)] as One;
    return a.weight <= b.weight ? a : b;
  }

  /** Told from a sum of the order; a rare false yes costs one needless shake. */
  function wasPacked(group: Group, list: Int32Array): boolean {
    let sum = group === forward ? 1 : 2;
    for (let k = 0; k < n; k++) {
      sum = Math.imul(sum ^ at(list, k), 0x01000193);
      sum ^= sum >>> 15;
    }
    if (packedBefore.has(sum)) return true;
    packedBefore.add(sum);
    return false;
  }

  function packedFrom(group: Group, list: Int32Array): One {
    const start = new Int32Array(n);
    return keep(group, start, serial(packed, group.way, list, start, on));
  }

  function keep(group: Group, start: Int32Array, makespan: number): One {
    made++;
    const turned = new Int32Array(n);
    turn(packed, group.other, start, makespan, turned, on);
    if (makespan < best.makespan) {
      improved = made;
      best = { start: group === forward ? start : start.map((s, i) => makespan - s - at(ticks, i)), makespan };
    }
    let late = 0;
    for (let i = 0; i < n; i++) late += ((at(start, i) + at(ticks, i)) / Math.max(1, makespan)) ** 2;
    return { start, makespan, turned, weight: makespan + late / n, turnedOnce: false };
  }

  function join(group: One[], one: One): void {
    let heaviest = -1;
    for (let k = 0; k < group.length; k++) {
      const other = group[k] as One;
      if (other.weight === one.weight && same(other.turned, one.turned)) return;
      if (other.weight > (group[heaviest]?.weight ?? -1)) heaviest = k;
    }
    if (group.length < size) group.push(one);
    else if (one.weight <= (group[heaviest]?.weight ?? 0)) group[heaviest] = one;
  }
}

/** Few live long when there is time for few, or little to tell them apart; by trial. */
const groupSize = (n: number, schedules: number): number =>
  Math.max(4, Math.round(Math.min(20, 0.4 * n) * (schedules / 1000) ** 0.85));

const sorted = (all: readonly One[]): One[] => all.toSorted((a, b) => a.weight - b.weight);

const same = (a: Int32Array, b: Int32Array): boolean => {
  for (let i = 0; i < a.length; i++) if (a[i] !== b[i]) return false;
  return true;
};
