/**
 * Sum of n waits of mean 1, which is half of chi-square with 2n degrees of freedom: the share below x, and the x for a share.
 *
 *   P(x) = 1 - e^-x (1 + x + x²/2! + ... + x^(n-1)/(n-1)!)
 *
 * n whole, 1 or more; x [1] 0 or more. A finite sum: exact. Source: Abramowitz and Stegun (1964), 26.4.21 (memory).
 */
import { rootBetween } from './root.ts';

export function erlangBelow(x: number, n: number): number {
  if (!(Number.isInteger(n) && n >= 1)) throw new Error(`erlangBelow: n must be a whole number of 1 or more, got ${n}`);
  if (!(x > 0)) return 0;
  let above = 0;
  let ln = -x;
  for (let k = 0; k < n; k++) {
    if (k > 0) ln += Math.log(x / k);
    above += Math.exp(ln);
  }
  return 1 - above;
}

/** x below which the share p lies; p in (0, 1), else throws. */
export function erlangScore(p: number, n: number): number {
  if (!(p > 0 && p < 1)) throw new Error(`erlangScore: p must lie between 0 and 1, got ${p}`);
  let high = n + 1;
  while (erlangBelow(high, n) < p) high *= 2;
  return rootBetween(x => erlangBelow(x, n) - p, 0, high);
}
