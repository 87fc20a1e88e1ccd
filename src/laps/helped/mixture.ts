/**
 * Student's t around several centres at once, each with a weight: what is known of an effect when the spread of runs is not.
 *
 *   P(x) = Σ w_k T_ν((x - m_k) / s_k),  Σ w_k = 1
 *
 * T_ν share below a score of Student's t with ν degrees of freedom; m_k, s_k centre and standard error [s] if the k-th spread
 * of runs were true; w_k how likely it is. Limits by halving, which always ends. Source: total probability; student-t.
 */
import { studentBelow } from '../../numbers/index.ts';

export type Part = { readonly weight: number; readonly centre: number; readonly error: number };

export const belowOf = (parts: readonly Part[], freedom: number, x: number): number =>
  parts.reduce((sum, { weight, centre, error }) => sum + weight * studentBelow((x - centre) / error, freedom), 0);

export const centreOf = (parts: readonly Part[]): number =>
  parts.reduce((sum, { weight, centre }) => sum + weight * centre, 0);

/** Where a share p lies below, p in (0, 1). */
export function scoreOf(parts: readonly Part[], freedom: number, p: number): number {
  const from = centreOf(parts);
  const error = Math.max(...parts.map(part => part.error));
  let reach = error;
  while (belowOf(parts, freedom, from - reach) > p || belowOf(parts, freedom, from + reach) < p) reach *= 2;
  let [low, high] = [from - reach, from + reach];
  for (let turn = 0; turn < 60 && high - low > 1e-12 * reach; turn++) {
    const middle = (low + high) / 2;
    if (belowOf(parts, freedom, middle) < p) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
