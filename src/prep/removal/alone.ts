/**
 * What each part would cost if it alone were wanted and a part used twice were paid twice: an upper price, found in the
 * order of the prices as shortest ways are (Knuth, A generalization of Dijkstra's algorithm, 1977). Circles do no harm:
 * a part is priced only from parts that are priced already, so it is never reached by way of itself.
 */
import { type Graph, needed, type Way } from './graph.ts';
import { heap } from './heap.ts';

export type Alone = {
  readonly way: (way: Way) => number;
  /** The cheapest way of a node; undefined when it has none or needs none. */
  readonly best: (node: number) => Way | undefined;
  /** Infinity for a part that can only be reached by way of itself. */
  readonly part: (part: number) => number;
};

export const alone = (graph: Graph, nodes: readonly number[] = needed(graph)): Alone => {
  const price = new Map<number, number>();
  const best = new Map<number, Way>();
  const waiting = new Map<number, { readonly node: number; readonly way: Way }[]>();
  const missing = new Map<Way, number>();
  const queue = heap<{ readonly node: number; readonly way: Way | undefined; readonly price: number }>(
    (a, b) => a.price - b.price,
  );
  const way = (w: Way): number => w.reduce((sum, p) => sum + (price.get(p) ?? Number.POSITIVE_INFINITY), 0);
  const offer = (node: number, w: Way | undefined): void =>
    queue.push({ node, way: w, price: (graph.cost[node] ?? 0) + (w ? way(w) : 0) });

  for (const node of nodes) {
    const ways = graph.ways.get(node) ?? [];
    if (ways.length === 0) offer(node, undefined);
    for (const w of ways) {
      const parts = new Set(w);
      missing.set(w, parts.size);
      if (parts.size === 0) offer(node, w);
      for (const p of parts) {
        const list = waiting.get(p);
        if (list) list.push({ node, way: w });
        else waiting.set(p, [{ node, way: w }]);
      }
    }
  }
  for (let next = queue.pop(); next; next = queue.pop()) {
    if (price.has(next.node)) continue;
    price.set(next.node, next.price);
    if (next.way) best.set(next.node, next.way);
    if (next.node >= graph.cost.length) continue; // nothing lies behind a wish
    for (const { node, way: w } of waiting.get(next.node) ?? []) {
      const left = (missing.get(w) ?? 0) - 1;
      missing.set(w, left);
      if (left === 0 && !price.has(node)) offer(node, w);
    }
  }
  return { way, best: node => best.get(node), part: part => price.get(part) ?? Number.POSITIVE_INFINITY };
};
