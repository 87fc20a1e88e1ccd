/** A fault tree solved: exact chance of its top, minimal cut sets counted and listed, what each event means for it. */
import { nodeChances, slopes } from './chance.ts';
import { byOrder, countsOf } from './counts.ts';
import { involvedIn } from './fussell-vesely.ts';
import { type Importance, importanceOf } from './importance.ts';
import { listed } from './listing.ts';
import type { FaultTree } from './model.ts';
import { networkOf } from './network.ts';
import { TooLarge } from './nodes.ts';
import { type Solved, solve } from './solve.ts';

export type CutSets = {
  readonly count: bigint;
  /** How many of order 1, 2, 3 … up to the highest there is. A top that always happens has one set, of order 0. */
  readonly byOrder: readonly bigint[];
  /** Sets of event names, smallest order first, made one by one as they are asked for. */
  readonly list: (most?: { readonly order?: number; readonly sets?: number }) => Iterable<readonly string[]>;
};

export type Analysis = {
  readonly kind: 'analysis';
  /** Chance of the top, exact [1]; undefined where it hangs on an event whose chance nobody knows. */
  readonly top: number | undefined;
  readonly cutSets: CutSets;
  /** Events that bring the top about alone: all of them, in the order of the tree. */
  readonly singlePoints: readonly string[];
  /** Undefined where a chance it hangs on is not known, or where the top cannot happen. Throws for an unknown event. */
  readonly importance: (event: string) => Importance | undefined;
  /** The top with other chances for some events, in one run over the finished diagram: cheap. Throws outside 0…1. */
  readonly topWith: (chances: ReadonlyMap<string, number>) => number | undefined;
};

/** The diagrams outgrew what a phone can hold: nothing is known of this tree, and no part of it is said to be all. */
export type NotSolved = { readonly kind: 'too large'; readonly nodes: number };

/** @param nodes the most that a diagram may have; four million take about a third of a gigabyte */
export function analyse(tree: FaultTree, nodes = MOST_NODES): Analysis | NotSolved {
  const network = networkOf(tree);
  try {
    return typeof network.top === 'boolean'
      ? constant(tree, network.top)
      : analysis(tree, solve(network, network.top, nodes), nodes);
  } catch (error) {
    if (error instanceof TooLarge) return { kind: 'too large', nodes };
    throw error;
  }
}
const MOST_NODES = 1 << 22;

function analysis(tree: FaultTree, solved: Solved, nodes: number): Analysis {
  const names = [...tree.events.keys()];
  const numbers = new Map(names.map((name, n) => [name, n]));
  const given = new Float64Array(solved.asked.length);
  [...tree.events.values()].forEach((chance, n) => {
    const level = solved.eventLevel[n] as number;
    if (level >= 0) given[level] = typeof chance === 'number' ? chance : Number.NaN;
  });
  const chance = nodeChances(solved, given);
  const q = chance.at(-1) ?? Number.NaN;
  const counts = countsOf(solved);
  const orders = byOrder(solved, counts);
  const list: CutSets['list'] = ({ order = Number.POSITIVE_INFINITY, sets = Number.POSITIVE_INFINITY } = {}) => ({
    *[Symbol.iterator]() {
      let left = sets;
      if (left < 1) return;
      for (const set of listed(solved, counts, order)) {
        yield set.map(n => names[n] ?? '');
        if (--left < 1) return;
      }
    },
  });
  const numberOf = (event: string, asker: string): number => {
    const n = numbers.get(event);
    if (n === undefined) throw new Error(`${asker}: event must be one of the tree, got "${event}"`);
    return n;
  };
  const topWith: Analysis['topWith'] = others => {
    const chances = given.slice();
    for (const [event, p] of others) {
      const level = solved.eventLevel[numberOf(event, 'topWith')] as number;
      if (!(p >= 0 && p <= 1)) throw new Error(`topWith: chance of ${event} must lie in 0…1, got ${p}`);
      if (level >= 0) chances[level] = p;
    }
    return known(nodeChances(solved, chances).at(-1));
  };
  const slope = once(() => slopes(solved, given, chance));
  const involved = once(() => involvedIn(solved, given, nodes));
  const importance: Analysis['importance'] = event => {
    const n = numberOf(event, 'importance');
    const level = solved.eventLevel[n] as number;
    const p = tree.events.get(event);
    return importanceOf({
      p: typeof p === 'number' ? p : Number.NaN,
      q,
      slope: level < 0 ? 0 : (slope()[level] as number),
      involved: involved()(n),
      without: () => topWith(new Map([[event, 0]])) ?? Number.NaN,
    });
  };
  const singlePoints = [...list({ order: 1 })].map(([event]) => event ?? '');
  const count = orders.reduce((sum, sets) => sum + sets, 0n);
  return {
    kind: 'analysis',
    top: known(q),
    cutSets: { count, byOrder: orders, list },
    singlePoints,
    importance,
    topWith,
  };
}

/** The givens alone decide the top. */
function constant(tree: FaultTree, always: boolean): Analysis {
  const q = always ? 1 : 0;
  return {
    kind: 'analysis',
    top: q,
    cutSets: { count: BigInt(q), byOrder: [], list: ({ sets = 1 } = {}) => (always && sets >= 1 ? [[]] : []) },
    singlePoints: [],
    importance: event => {
      const p = tree.events.get(event);
      return importanceOf({ p: typeof p === 'number' ? p : 0, q, slope: 0, involved: 0, without: () => q });
    },
    topWith: () => q,
  };
}

const known = (chance: number | undefined): number | undefined => (Number.isNaN(chance) ? undefined : chance);

function once<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => (made ??= make());
}
