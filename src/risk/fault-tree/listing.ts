/**
 * Minimal cut sets one after the other, smallest order first, each made when it is asked for. The counts say beforehand
 * where there is nothing to find, so the wait for the next set does not grow with how many there are.
 */
import { type Counts, has } from './counts.ts';
import { ONE } from './nodes.ts';
import type { Solved } from './solve.ts';

/** Sets as numbers of events in ascending order, of orders up to `most`. */
export function* listed(solved: Solved, counts: Counts, most: number): Generator<readonly number[]> {
  const root = solved.cutSets.level.length - 1;
  const highest = Math.min(most, counts.most[root] as number);
  for (let order = 1; order <= highest; order++)
    for (const set of sets(solved, counts, root, order)) yield set.sort((a, b) => a - b);
}

function* sets(solved: Solved, counts: Counts, from: number, order: number): Generator<number[]> {
  const { level, high, low, roots } = solved.cutSets;
  for (let n = from; has(counts, n, order); n = low[n] as number) {
    if (n === ONE) {
      yield [];
      return;
    }
    const [asked, above] = [solved.asked[level[n] as number] as number, high[n] as number];
    if (asked >= 0) {
      if (has(counts, above, order - 1))
        for (const rest of sets(solved, counts, above, order - 1)) yield [asked, ...rest];
      continue;
    }
    const module = roots[-1 - asked] as number;
    for (let own = 1; own <= order; own++) {
      if (!has(counts, module, own) || !has(counts, above, order - own)) continue;
      for (const first of sets(solved, counts, module, own))
        for (const rest of sets(solved, counts, above, order - own)) yield [...first, ...rest];
    }
  }
}
