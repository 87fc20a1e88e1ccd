/**
 * The cheapest closed set by branch and bound: reduce, split into pieces, and in each piece take or leave one way of one
 * open node, the way that looks cheapest first. Circles are not looked at here (see circles.ts).
 */
import { alone } from './alone.ts';
import { type Graph, pieces, type Way, waysOf } from './graph.ts';
import { reduce } from './reduce.ts';
import { sharedBound } from './share.ts';

export type Found = {
  /** The parts of the best set found; undefined when none under the limit was. */
  readonly off: readonly number[] | undefined;
  readonly minutes: number;
  /** No closed set costs less; at least the limit when it is proven that none is under it. */
  readonly bound: number;
};

/** How much is left to look at, in nodes of the graphs that are reduced; a search that runs out keeps its best. */
export type Effort = { left: number };

/** Sums of minutes that differ by less are the same: the last bits of a double decide nothing. */
export const SAME = 1e-9;

/** Looks for a closed set under `limit`. Every open node must have a way in. */
export const search = (graph: Graph, effort: Effort, limit = Number.POSITIVE_INFINITY): Found => {
  effort.left -= graph.ways.size + graph.open.size;
  const { off, rest } = reduce(graph);
  const parts = pieces(rest).filter(piece => piece.open.size > 0);
  const bounds = parts.map(sharedBound);
  let bound = priceOf(graph, off) + bounds.reduce((sum, b) => sum + b, 0);
  const all = [...off];
  for (const [k, piece] of parts.entries()) {
    if (bound >= limit - SAME) return nothing(bound);
    const under = bounds[k] ?? 0;
    const found = branch(piece, under, effort, limit - bound + under);
    bound += found.bound - under;
    if (!found.off) return nothing(bound);
    all.push(...found.off);
  }
  const minutes = priceOf(graph, all);
  return minutes < limit - SAME ? { off: all, minutes, bound: Math.min(bound, minutes) } : nothing(bound);
};

const nothing = (bound: number): Found => ({ off: undefined, minutes: Number.POSITIVE_INFINITY, bound });

/** A piece in which only choices are left; `bound` is known of it. */
const branch = (piece: Graph, bound: number, effort: Effort, limit: number): Found => {
  if (bound >= limit - SAME) return nothing(bound);
  if (effort.left <= 0) return cheapestEach(piece, bound, limit);
  const { node, ways } = widest(piece);
  const [way, ...others] = ways;
  const only = (kept: readonly Way[]): Graph => ({ ...piece, ways: new Map(piece.ways).set(node, kept) });
  const taken = search(only(way ? [way] : []), effort, limit);
  if (others.length === 0) return taken;
  const left = search(only(others), effort, Math.min(limit, taken.minutes));
  const best = left.off ? left : taken;
  return { ...best, bound: Math.min(best.minutes, Math.max(bound, Math.min(taken.bound, left.bound))) };
};

/** The open node whose second way is dearest beside its first, ways in the order of their prices. */
const widest = (piece: Graph): { readonly node: number; readonly ways: readonly Way[] } => {
  const price = alone(piece);
  let best: { readonly node: number; readonly ways: readonly Way[] } = { node: -1, ways: [] };
  let most = -1;
  for (const node of piece.open) {
    const ways = [...waysOf(piece, node)].sort((a, b) => price.way(a) - price.way(b));
    const apart = ways[0] && ways[1] ? price.way(ways[1]) - price.way(ways[0]) : 0;
    if (apart > most) {
      most = apart;
      best = { node, ways };
    }
  }
  return best;
};

/** When the effort is spent: open nodes one by one, each by its cheapest way unless what is off already opens it. */
const cheapestEach = (piece: Graph, bound: number, limit: number): Found => {
  const off = new Set<number>();
  const price = alone(piece);
  const stack = [...piece.open];
  for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
    const ways = waysOf(piece, node);
    if (ways.length === 0 || ways.some(way => way.every(p => off.has(p)))) continue;
    for (const p of price.best(node) ?? [])
      if (!off.has(p)) {
        off.add(p);
        stack.push(p);
      }
  }
  const minutes = priceOf(piece, off);
  return minutes < limit - SAME ? { off: [...off], minutes, bound } : nothing(bound);
};

const priceOf = (graph: Graph, parts: Iterable<number>): number => {
  let sum = 0;
  for (const p of parts) sum += graph.cost[p] ?? 0;
  return sum;
};
