/**
 * What needs no search. Over and over, until nothing changes:
 *  R1 a part that every way of an open node needs, however it is reached, comes off
 *  R2 a way that needs all that another way of the same node needs is no choice
 *  R3 a way whose own parts, useful for nothing else, cost as much as the cheapest other way whole is no choice
 * On karts this leaves a handful of choices; they are what makes the problem hard (least set cover is inside it).
 */

import { alone } from './alone.ts';
import { type Graph, needed, type Way } from './graph.ts';

/** Of the parts that a part cannot do without, so many are remembered: fewer only means that less is settled here. */
const REMEMBERED = 64;

export type Reduced = { readonly off: readonly number[]; readonly rest: Graph };

/** With `must`, by R1 alone: then what comes off does so in every closed set, not only in some cheapest one. */
export const reduce = (graph: Graph, by: 'cost' | 'must' = 'cost'): Reduced => {
  const off = new Set<number>();
  const open = new Set(graph.open);
  const ways = new Map(graph.ways);
  const rest: Graph = { cost: graph.cost, open, ways };
  const take = (part: number): void => {
    off.add(part);
    open.add(part);
  };

  for (let changed = true; changed; ) {
    changed = false;
    settle();
    if (open.size === 0) break;
    const nodes = needed(rest);
    const must = cannotDoWithout(rest, nodes);
    for (const n of by === 'cost' ? nodes : []) {
      const now = ways.get(n);
      if (now === undefined || now.length < 2) continue;
      const kept = withoutWider(now, must);
      if (kept.length < now.length) {
        ways.set(n, kept);
        changed = true;
      }
    }
    for (const n of [...open])
      for (const p of common(ways.get(n) ?? [], must))
        if (!off.has(p)) {
          take(p);
          changed = true;
        }
    if (!changed && by === 'cost') changed = dropDear(rest, ways, nodes, must);
  }
  return { off: [...off], rest };

  /** Takes off what an only way needs, closes what is reached, and takes what is off out of every way. */
  function settle(): void {
    const wide: number[] = [];
    const stack = [...open];
    for (let n = stack.pop(); n !== undefined; n = stack.pop()) {
      const list = ways.get(n) ?? [];
      if (list.length > 1) {
        wide.push(n);
        continue;
      }
      for (const p of list[0] ?? [])
        if (!off.has(p)) {
          take(p);
          stack.push(p);
        }
      close(n);
    }
    const reached = (way: Way): boolean => way.every(p => off.has(p));
    for (const n of wide) if (ways.get(n)?.some(reached)) close(n);
    if (open.size > 0)
      for (const n of needed(rest)) {
        const list = ways.get(n);
        if (list?.some(reached)) ways.delete(n);
        else if (list?.some(way => way.some(p => off.has(p))))
          ways.set(
            n,
            list.map(way => way.filter(p => !off.has(p))),
          );
      }
  }

  function close(node: number): void {
    ways.delete(node);
    open.delete(node);
  }
};

/**
 * For every node what must come off for it whichever way is taken, a part itself included. Not all of it where ways go in
 * circles, or are long. `nodes` come each after what they need.
 */
export const cannotDoWithout = (graph: Graph, nodes: readonly number[]): ReadonlyMap<number, ReadonlySet<number>> => {
  const must = new Map<number, ReadonlySet<number>>();
  for (const n of nodes) {
    const own = new Set(n < graph.cost.length ? [n] : []);
    for (const p of common(graph.ways.get(n) ?? [], must)) {
      if (own.size >= REMEMBERED) break;
      own.add(p);
    }
    must.set(n, own);
  }
  return must;
};

type Must = ReadonlyMap<number, ReadonlySet<number>>;

const wholeWay = (way: Way, must: Must): ReadonlySet<number> => {
  const all = new Set<number>(way);
  for (const p of way) for (const q of must.get(p) ?? []) all.add(q);
  return all;
};

const common = (ways: readonly Way[], must: Must): readonly number[] => {
  const [first, ...others] = ways.map(way => wholeWay(way, must));
  return first ? [...first].filter(p => others.every(whole => whole.has(p))) : [];
};

const withoutWider = (ways: readonly Way[], must: Must): readonly Way[] => {
  const whole = ways.map(way => wholeWay(way, must));
  const dropped = new Set<number>();
  ways.forEach((way, a) => {
    if (dropped.has(a)) return;
    ways.forEach((_, b) => {
      if (a !== b && !dropped.has(b) && way.every(p => whole[b]?.has(p))) dropped.add(b);
    });
  });
  return ways.filter((_, k) => !dropped.has(k));
};

/** R3. Changes `ways`; true when something was dropped. */
const dropDear = (graph: Graph, ways: Map<number, readonly Way[]>, nodes: readonly number[], must: Must): boolean => {
  const price = alone(graph, nodes);
  const users = new Map<number, { readonly node: number; readonly way: Way }[]>();
  for (const node of nodes)
    for (const way of ways.get(node) ?? [])
      for (const p of way) {
        const list = users.get(p);
        if (list) list.push({ node, way });
        else users.set(p, [{ node, way }]);
      }
  const place = new Map(nodes.map((n, i) => [n, i]));
  /** Minutes of the parts of this way that are of use for nothing but it. */
  const own = (way: Way): number => {
    const only = new Set<number>();
    const outsideLast = [...wholeWay(way, must)].sort((a, b) => (place.get(b) ?? 0) - (place.get(a) ?? 0));
    let sum = 0;
    for (const p of outsideLast) {
      if (graph.open.has(p) || !(users.get(p) ?? []).every(u => u.way === way || only.has(u.node))) continue;
      only.add(p);
      sum += graph.cost[p] ?? 0;
    }
    return sum;
  };
  let dropped = false;
  for (const n of nodes) {
    const now = ways.get(n) ?? [];
    if (now.length < 2) continue;
    const [cheapest, ...others] = [...now].sort((a, b) => price.way(a) - price.way(b));
    if (!cheapest) continue;
    const kept = others.filter(way => own(way) < price.way(cheapest));
    if (kept.length === others.length) continue;
    ways.set(n, [cheapest, ...kept]);
    dropped = true;
  }
  return dropped;
};
