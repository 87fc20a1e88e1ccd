/**
 * A lower bound: every part's price, its own minutes and the cheapest way to it, is shared evenly among all that may use
 * it, and each open node pays its cheapest way in shares. No choice of ways costs less, because a part that comes off is
 * used at most by all who may use it (a feasible solution of the dual of the AND/OR linear programme).
 */
import { type Graph, needed, type Way } from './graph.ts';

export const sharedBound = (graph: Graph): number => {
  const nodes = needed(graph);
  const users = new Map<number, number>();
  for (const n of nodes)
    for (const p of new Set((graph.ways.get(n) ?? []).flat())) users.set(p, (users.get(p) ?? 0) + 1);
  const share = new Map<number, number>(); // a part of a circle that is not reached yet counts nothing
  const cheapest = (node: number): number => {
    const ways = graph.ways.get(node) ?? [];
    return ways.length === 0 ? 0 : Math.min(...ways.map(sumOf));
  };
  const sumOf = (way: Way): number => way.reduce((sum, p) => sum + (share.get(p) ?? 0), 0);
  let bound = 0;
  for (const n of nodes) {
    const need = cheapest(n);
    if (graph.open.has(n)) bound += need; // paid already, or a wish: only its way is to be paid
    if (n < graph.cost.length)
      share.set(n, (graph.open.has(n) ? 0 : (graph.cost[n] ?? 0) + need) / (users.get(n) ?? 1));
  }
  return bound;
};
