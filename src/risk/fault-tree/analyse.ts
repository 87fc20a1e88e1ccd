/** A fault tree solved: exact chance of its top, minimal cut sets counted and listed, what each event means for it. */
import { nodeChances } from './chance.ts';
import { byOrder, countsOf } from './counts.ts';
import { type Importance, importanceOf, importancesIn } from './importance.ts';
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
  /**
   * Undefined where a chance it hangs on is not known, where the top cannot happen, or where its own diagrams outgrow the
   * limit. Throws for an unknown event.
   */
  readonly importance: (event: string) => Importance | undefined;
  /** The top with other chances for some events, in one run over the finished diagram: cheap. Throws outside 0…1, and for what is given. */
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
  const levelOf = (event: string): number => solved.eventLevel[numbers.get(event) ?? -1] ?? -1;
  const chances = new Float64Array(solved.asked.length);
  for (const event of names) if (levelOf(event) >= 0) chances[levelOf(event)] = chanceIn(tree, event);
  const chance = nodeChances(solved, chances);
  const importances = importancesIn(solved, { chances, chance, limit: nodes });
  const cutSets = cutSetsOf(solved, names);
  return {
    kind: 'analysis',
    top: known(chance.at(-1)),
    cutSets,
    singlePoints: [...cutSets.list({ order: 1 })].map(([event]) => event ?? ''),
    importance: event => importances(numbers.get(event) ?? -1, chanceIn(tree, event)),
    topWith: others => {
      const changed = chances.slice();
      for (const [event, p] of checked(tree, others)) if (levelOf(event) >= 0) changed[levelOf(event)] = p;
      return known(nodeChances(solved, changed).at(-1));
    },
  };
}

function cutSetsOf(solved: Solved, names: readonly string[]): CutSets {
  const counts = countsOf(solved);
  const orders = byOrder(solved, counts);
  return {
    count: orders.reduce((sum, sets) => sum + sets, 0n),
    byOrder: orders,
    list: ({ order = Number.POSITIVE_INFINITY, sets = Number.POSITIVE_INFINITY } = {}) => ({
      *[Symbol.iterator]() {
        let left = sets;
        if (left < 1) return;
        for (const set of listed(solved, counts, order)) {
          yield set.map(n => names[n] ?? '');
          if (--left < 1) return;
        }
      },
    }),
  };
}

/** The givens alone decide the top: it always happens, or never. */
function constant(tree: FaultTree, always: boolean): Analysis {
  const q = always ? 1 : 0;
  return {
    kind: 'analysis',
    top: q,
    cutSets: { count: BigInt(q), byOrder: [], list: ({ sets = 1 } = {}) => (always && sets >= 1 ? [[]] : []) },
    singlePoints: [],
    importance: event => {
      const p = chanceIn(tree, event);
      if (!always || Number.isNaN(p)) return undefined;
      return importanceOf({ p, q, slope: 0, involved: 0, ifPerfect: q });
    },
    topWith: others => {
      checked(tree, others);
      return q;
    },
  };
}

/** NaN where nobody knows it, or where it is given. */
function chanceIn(tree: FaultTree, event: string): number {
  if (!tree.events.has(event)) throw new Error(`importance: event must be one of the tree, got "${event}"`);
  const is = tree.events.get(event);
  return typeof is === 'number' ? is : Number.NaN;
}

function checked(tree: FaultTree, chances: ReadonlyMap<string, number>): ReadonlyMap<string, number> {
  for (const [event, p] of chances) {
    if (!tree.events.has(event)) throw new Error(`topWith: event must be one of the tree, got "${event}"`);
    if (typeof tree.events.get(event) === 'boolean')
      throw new Error(
        `topWith: event must have a chance, got "${event}", which is given: analyse the tree without that`,
      );
    if (!(p >= 0 && p <= 1)) throw new Error(`topWith: chance of ${event} must lie in 0…1, got ${p}`);
  }
  return chances;
}

const known = (chance: number | undefined): number | undefined => (Number.isNaN(chance) ? undefined : chance);
