/**
 * A unit that is repaired as it breaks, each time only back to what it was, and renewed as a whole at an age.
 *
 *   C(T) = (c_p + c_m (T/η)^β) / T;   T = η (c_p / (c_m (β - 1)))^(1/β)
 *
 * c_p cost of renewing it, c_m of one repair, same money, above 0; β > 1, else renewing by age never pays. Here η and β belong to the growth
 * of the number of failures (trend/power-law.ts), not to a life. Source: Barlow and Hunter 1960 (memory).
 */
import type { Weibull } from '../weibull/index.ts';

export type Renewal = { readonly at: number; readonly rate: number };

export function renewByAge(growth: Weibull, renewing: number, repair: number): Renewal | undefined {
  if (!(renewing > 0 && repair > 0))
    throw new Error(`renewByAge: costs must be above 0, got ${renewing} for renewing and ${repair} for a repair`);
  const { shape, scale } = growth;
  if (!(shape > 1)) return undefined;
  const at = scale * (renewing / (repair * (shape - 1))) ** (1 / shape);
  return { at, rate: (renewing + repair * (at / scale) ** shape) / at };
}
