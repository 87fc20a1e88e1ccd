/**
 * How many minimal cut sets there are of each order (number of events), read off their diagram without listing one.
 *   c(n, k) = c(low, k) + Σj c(asked, j) c(high, k - j)
 *   c(asked, j): 1 for j = 1 where an event is asked, the counts of its root where a module is
 */
import type { Solved } from './solve.ts';

/** Counts of every node: of node n and order k at `from[n] + k`, for k up to `most[n]`. Exact up to 2^53. */
export type Counts = { readonly from: Int32Array; readonly most: Int32Array; readonly count: Float64Array };

export function countsOf(solved: Solved): Counts {
  const { from, most, total } = room(solved);
  const count = new Float64Array(total);
  count[from[1] as number] = 1;
  each(solved, (n, high, low, module) => {
    const own = from[n] as number;
    const h = from[high] as number;
    const l = from[low] as number;
    const mostHigh = most[high] as number;
    const mostLow = most[low] as number;
    for (let k = 0; k <= mostLow; k++) count[own + k] = count[l + k] as number;
    if (module < 0) {
      for (let k = 0; k <= mostHigh; k++)
        count[own + 1 + k] = (count[own + 1 + k] as number) + (count[h + k] as number);
      return;
    }
    const m = from[module] as number;
    for (let j = 0; j <= (most[module] as number); j++) {
      const of = count[m + j] as number;
      if (of === 0) continue;
      for (let k = 0; k <= mostHigh; k++) {
        const sets = count[h + k] as number;
        if (sets !== 0) count[own + j + k] = (count[own + j + k] as number) + of * sets;
      }
    }
  });
  return { from, most, count };
}

/** By order from 1 up; the sum is the number of all. Past 2^53 counted again in whole numbers of any length. */
export function byOrder(solved: Solved, { from, most, count }: Counts): readonly bigint[] {
  const root = solved.cutSets.level.length - 1;
  const start = from[root] as number;
  const orders = [...count.subarray(start + 1, start + 1 + (most[root] as number))];
  const all = orders.reduce((sum, sets) => sum + sets, 0);
  return all <= Number.MAX_SAFE_INTEGER ? orders.map(BigInt) : longCounts(solved);
}

function longCounts(solved: Solved): readonly bigint[] {
  const counts: bigint[][] = [[], [1n]];
  each(solved, (n, high, low, module) => {
    const own = [...(counts[low] ?? [])];
    (module < 0 ? [0n, 1n] : (counts[module] ?? [])).forEach((of, j) => {
      (counts[high] ?? []).forEach((sets, k) => {
        own[j + k] = (own[j + k] ?? 0n) + of * sets;
      });
    });
    counts[n] = Array.from(own, sets => sets ?? 0n);
  });
  return counts.at(-1)?.slice(1) ?? [];
}

/** Every node upwards, with the two below it and the root of the module it asks, -1 where it asks an event. */
function each({ cutSets, asked }: Solved, at: (n: number, high: number, low: number, module: number) => void): void {
  const { level, high, low, roots } = cutSets;
  for (let n = 2; n < level.length; n++) {
    const what = asked[level[n] as number] as number;
    at(n, high[n] as number, low[n] as number, what < 0 ? (roots[-1 - what] as number) : -1);
  }
}

/** The highest order of each node, and where its counts stand. A node of nothing has none. */
function room(solved: Solved) {
  const size = solved.cutSets.level.length;
  const [from, most] = [new Int32Array(size), new Int32Array(size)];
  most[0] = -1;
  from[1] = 0;
  let total = 1;
  each(solved, (n, high, low, module) => {
    const over = module < 0 ? 1 : (most[module] as number);
    most[n] = Math.max(most[low] as number, over + (most[high] as number));
    from[n] = total;
    total += (most[n] as number) + 1;
  });
  return { from, most, total };
}

/** Whether node n has sets of this order. */
export const has = ({ from, most, count }: Counts, n: number, order: number): boolean =>
  order >= 0 && order <= (most[n] as number) && (count[(from[n] as number) + order] as number) !== 0;
