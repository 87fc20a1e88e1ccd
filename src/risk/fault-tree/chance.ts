/** Exact chances, each in one run over the diagram of the function. */
import type { Solved } from './solve.ts';

/**
 * Chance of every node, by Shannon's decomposition; NaN where it hangs on an event nobody knows the chance of.
 *   P(n) = P(low) + p (P(high) - P(low))
 *   p: chance of what is asked at n, of an event as given, of a module that of its own root [1]
 * Writes into `chances`, by level, those of the modules. Exact but for rounding.
 * Source: Rauzy 1993, Reliability Engineering and System Safety 40 (memory).
 */
export function nodeChances({ functions, moduleLevel }: Solved, chances: Float64Array): Float64Array {
  const { level, high, low, roots } = functions;
  const chance = new Float64Array(level.length);
  chance[1] = 1;
  let module = 0;
  for (let n = 2; n < level.length; n++) {
    const p = chances[level[n] as number] as number;
    chance[n] = p * (chance[high[n] as number] as number) + (1 - p) * (chance[low[n] as number] as number);
    if (n !== roots[module]) continue;
    const own = moduleLevel[module++] as number;
    if (own >= 0) chances[own] = chance[n] as number;
  }
  return chance;
}

/**
 * How much the chance of the top rises with the chance of what is asked at each level (Birnbaum's importance), from the
 * top down: every node passes its share of the slope on to the two below, a module to its root.
 *   dQ/dp = Σ over nodes n asking it: s(n) (P(high) - P(low)),  s(high) += p s(n),  s(low) += (1 - p) s(n)
 */
export function slopes({ functions, asked, moduleLevel }: Solved, chances: Float64Array, chance: Float64Array) {
  const { level, high, low, roots } = functions;
  const share = new Float64Array(level.length);
  const slope = new Float64Array(asked.length);
  let module = roots.length - 1;
  for (let n = level.length - 1; n > 1; n--) {
    if (n === roots[module]) {
      const own = moduleLevel[module--] as number;
      share[n] = own < 0 ? 1 : (slope[own] as number);
    }
    const at = level[n] as number;
    const h = high[n] as number;
    const l = low[n] as number;
    const s = share[n] as number;
    const p = chances[at] as number;
    share[h] = (share[h] as number) + p * s;
    share[l] = (share[l] as number) + (1 - p) * s;
    slope[at] = (slope[at] as number) + s * ((chance[h] as number) - (chance[l] as number));
  }
  return slope;
}
