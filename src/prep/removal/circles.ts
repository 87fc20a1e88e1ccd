/**
 * A part may not be reached by way of itself. A closed set in which some parts only open each other is no answer: all the
 * ways from outside into such a circle become one more thing to choose, a gate that costs nothing, and every way that
 * stays inside the circle then needs the gate too. Asked again, the answer that was none is gone and no other is.
 */
import { type Graph, needed, type Way, waysOf } from './graph.ts';

/** Can any choice of ways reach a part by way of itself? */
export const runsInCircles = (graph: Graph): boolean => {
  const nodes = needed(graph);
  const place = new Map(nodes.map((n, i) => [n, i]));
  const after = (p: number, i: number): boolean => (place.get(p) ?? 0) >= i;
  return nodes.some((n, i) => waysOf(graph, n).some(way => way.some(p => after(p, i))));
};

/** The order in which the parts of a closed set can come off, and the way by which each node of it is opened. */
export type Opened = { readonly order: readonly number[]; readonly way: ReadonlyMap<number, Way> };

/** What opens, starting from nothing. Of several open ways the first named is taken. */
export const opened = (graph: Graph, off: ReadonlySet<number>): Opened => {
  const isPart = (n: number): boolean => n < graph.cost.length;
  const way = new Map<number, Way>();
  const order: number[] = [];
  const done = new Set<number>();
  const missing = new Map<Way, number>();
  const waiting = new Map<number, { readonly node: number; readonly way: Way }[]>();
  const ready: number[] = [];
  for (const node of [...off].filter(isPart).concat([...graph.open])) {
    const ways = waysOf(graph, node);
    if (ways.length === 0) ready.push(node);
    for (const w of ways) {
      if (!w.every(p => off.has(p))) continue;
      const parts = new Set(w);
      missing.set(w, parts.size);
      if (parts.size === 0) ready.push(node);
      for (const p of parts) {
        const list = waiting.get(p);
        if (list) list.push({ node, way: w });
        else waiting.set(p, [{ node, way: w }]);
      }
    }
  }
  const firstOpen = (node: number): Way => waysOf(graph, node).find(w => w.every(p => done.has(p))) ?? [];
  for (let at = 0; at < ready.length; at++) {
    const node = ready[at] as number;
    if (done.has(node)) continue;
    if (isPart(node)) way.set(node, firstOpen(node)); // before it counts as open itself
    done.add(node);
    if (!isPart(node)) continue;
    order.push(node);
    for (const { node: user, way: w } of waiting.get(node) ?? []) {
      const left = (missing.get(w) ?? 0) - 1;
      missing.set(w, left);
      if (left === 0) ready.push(user);
    }
  }
  for (const wish of graph.open) if (done.has(wish) && !isPart(wish)) way.set(wish, firstOpen(wish));
  return { order, way };
};

/**
 * The same question with a gate before the parts of `circle`, which in some closed set open only each other. Each can be
 * reached by some choice, so some way comes from outside.
 */
export const withGate = (graph: Graph, circle: ReadonlySet<number>): Graph => {
  const gate = graph.cost.length;
  const shift = (n: number): number => (n >= gate ? n + 1 : n); // wishes are numbered after the parts
  const ways = new Map([...graph.ways].map(([n, list]) => [shift(n), list]));
  const inside = (way: Way): boolean => way.some(p => circle.has(p));
  const outside: Way[] = [];
  for (const part of circle) {
    const all = waysOf(graph, part);
    outside.push(...all.filter(way => !inside(way)).map(way => [...way]));
    ways.set(
      part,
      all.map(way => (inside(way) ? [...way, gate] : way)),
    );
  }
  ways.set(gate, outside);
  return { cost: [...graph.cost, 0], open: new Set([...graph.open].map(shift)), ways };
};
