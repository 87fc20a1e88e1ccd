/**
 * What must come off so that everything asked for can be reached, in the fewest minutes: the least closed set of an
 * AND/OR graph, in which a part that several need is paid once (Koc, Sabuncuoglu and Erel, IIE Transactions 41, 2009, give
 * the formulation; even one target is hard in general: Goldwasser and Motwani, WADS 1997). Exact unless `effort` ends first.
 */
import { alone } from './alone.ts';
import { type Opened, opened, runsInCircles, withGate } from './circles.ts';
import type { Graph, Way } from './graph.ts';
import { reduce } from './reduce.ts';
import { type Effort, SAME, search } from './search.ts';

/** Ways in: one of the lists must be wholly off. No list at all: it is open as it is. */
export type Access = readonly (readonly string[])[];

export type RemovalAsk = {
  readonly parts: readonly {
    readonly id: string;
    readonly access: Access;
    /** To take it off, put it back and make it good, together; 0 or more. What lies off already costs nothing more. */
    readonly minutes: number;
  }[];
  readonly wishes: readonly { readonly id: string; readonly ways: Access }[];
  /** Off already: they must go back, so they must be reached. */
  readonly lyingOff?: readonly string[];
  /** Nodes of graphs to look at before the best set so far is given; some 50,000 a second. */
  readonly effort?: number;
};

export type Removal =
  | {
      readonly kind: 'found';
      /** All that is off at some time, in an order in which it can come off. */
      readonly off: readonly string[];
      readonly minutes: number;
      /** No set costs less. */
      readonly bound: number;
      readonly proven: boolean;
      /** Of a part that stays on, and of a wish that needs nothing off, nothing. */
      readonly wayOf: (kind: 'part' | 'wish', id: string) => readonly string[];
    }
  /** These can be reached only by way of themselves, if at all. */
  | { readonly kind: 'no way'; readonly parts: readonly string[]; readonly wishes: readonly string[] };

const EFFORT = 30_000;
const GATES = 100;

/** @throws Error when a way names a part that is not there, a name is given twice, or minutes are negative. */
export const leastRemoval = (ask: RemovalAsk): Removal => {
  const { graph, numberOf } = asGraph(ask);
  const price = runsInCircles(graph) ? alone(graph) : undefined;
  if (price) {
    const stuck = (n: number | undefined): boolean =>
      n !== undefined && (graph.ways.get(n)?.length ?? 0) > 0 && price.best(n) === undefined;
    const parts = (ask.lyingOff ?? []).filter(id => stuck(numberOf.get(id)));
    const wishes = ask.wishes.flatMap((wish, k) => (stuck(ask.parts.length + k) ? [wish.id] : []));
    if (parts.length > 0 || wishes.length > 0) return { kind: 'no way', parts, wishes };
  }
  const nameOf = (n: number): string => ask.parts[n]?.id ?? '';
  const wishOf = new Map(ask.wishes.map((wish, k) => [wish.id, ask.parts.length + k]));
  const { order, way, bound } = searchOpened(price ? reachable(graph, price.part) : graph, {
    left: ask.effort ?? EFFORT,
  });
  const minutes = order.reduce((sum, n) => sum + (graph.cost[n] ?? 0), 0);
  return {
    kind: 'found',
    off: order.map(nameOf),
    minutes,
    bound: Math.min(bound, minutes),
    proven: bound >= minutes - SAME,
    wayOf: (kind, id) => {
      const n = kind === 'part' ? numberOf.get(id) : wishOf.get(id);
      return (n === undefined ? [] : (way.get(n) ?? [])).map(nameOf);
    },
  };
};

/** The parts that come off whichever ways are taken, as far as that is seen without searching. Throws as above. */
export const sureToComeOff = (ask: Omit<RemovalAsk, 'effort'>): ReadonlySet<string> => {
  const { off } = reduce(asGraph(ask).graph, 'must');
  return new Set(off.map(n => ask.parts[n]?.id ?? ''));
};

/** Leaves out the ways that no choice can open; a part that is left without any stands in no way that is kept. */
const reachable = (graph: Graph, price: (part: number) => number): Graph => ({
  ...graph,
  ways: new Map(
    [...graph.ways].map(([n, ways]) => [
      n,
      ways.filter(way => way.every(p => price(p) < Number.POSITIVE_INFINITY && p !== n)),
    ]),
  ),
});

/** Searches until the set found opens from nothing, with a gate for each circle that did not. */
const searchOpened = (graph: Graph, effort: Effort): Opened & { readonly bound: number } => {
  let asked = graph;
  let bound = 0;
  for (let gates = 0; gates < GATES && (gates === 0 || effort.left > 0); gates++) {
    const found = search(asked, effort);
    if (!found.off) break;
    bound = Math.max(bound, found.bound);
    const off = new Set(found.off);
    const open = opened(asked, off);
    if (open.order.length === off.size) return { ...(gates === 0 ? open : opened(graph, off)), bound };
    const reached = new Set(open.order);
    asked = withGate(asked, new Set(found.off.filter(p => !reached.has(p))));
  }
  // Too many circles, or too little effort for one more: each by its cheapest way, which no circle enters.
  const price = alone(graph);
  const off = new Set<number>();
  const stack = [...graph.open];
  for (let n = stack.pop(); n !== undefined; n = stack.pop())
    for (const p of price.best(n) ?? [])
      if (!off.has(p)) {
        off.add(p);
        stack.push(p);
      }
  return { ...opened(graph, off), bound };
};

export const asGraph = (ask: RemovalAsk): { readonly graph: Graph; readonly numberOf: ReadonlyMap<string, number> } => {
  const numberOf = new Map(ask.parts.map((part, n) => [part.id, n]));
  if (numberOf.size < ask.parts.length)
    throw new Error('leastRemoval: parts must have names of their own, got one twice');
  const number = (id: string): number => {
    const n = numberOf.get(id);
    if (n === undefined) throw new Error(`leastRemoval: ways must name parts that are there, got "${id}"`);
    return n;
  };
  const ways = new Map<number, readonly Way[]>();
  const add = (n: number, access: Access): void => {
    const list = access.map(way => [...new Set(way)].map(number));
    if (list.length > 0) ways.set(n, list);
  };
  const beside = new Set(ask.lyingOff);
  const cost = ask.parts.map((part, n) => {
    if (!(part.minutes >= 0))
      throw new Error(`leastRemoval: minutes must be 0 or more, got ${part.minutes} for "${part.id}"`);
    add(n, part.access);
    return beside.has(part.id) ? 0 : part.minutes;
  });
  // What lies off is one more wish, with one way: all of it.
  const wishes: readonly Access[] = [...ask.wishes.map(wish => wish.ways), beside.size > 0 ? [[...beside]] : []];
  for (const [k, access] of wishes.entries()) add(ask.parts.length + k, access);
  return { graph: { cost, open: new Set(wishes.map((_, k) => ask.parts.length + k)), ways }, numberOf };
};
