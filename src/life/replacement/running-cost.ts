/**
 * What a part costs an hour in the long run, replaced at an age or on failure before, and where 9 lives of 10 have it.
 *
 *   C(T) = E[c_p R(T) + c_f F(T)] / E[∫₀ᵀ R];   never replaced before it fails:  E[c_f] / E[mean life]
 *
 * Source: Barlow and Proschan 1965, 3 and 4 (memory).
 */
import { expected, type Posterior, type Spread, spreadOf } from '../posterior/index.ts';
import { chanceBetween, meanLife } from '../weibull/index.ts';
import { type Costs, costRate, upTime } from './by-age.ts';

/** Money an hour. */
export type RunningCost = Omit<Spread, 'middle'> & { readonly mean: number };

/** @param age at which it is replaced; undefined: when it fails */
export function runningCost(posterior: Posterior, costs: Costs, age?: number): RunningCost {
  if (age === undefined) {
    const { low, high } = spreadOf(posterior, life => costs.failure / meanLife(life));
    return { mean: costs.failure / expected(posterior, meanLife), low, high };
  }
  const { low, high } = spreadOf(posterior, life => costRate(life, costs, age));
  const gone = expected(posterior, life => chanceBetween(life, 0, age));
  const mean =
    (costs.planned + (costs.failure - costs.planned) * gone) / expected(posterior, life => upTime(life, age));
  return { mean, low, high };
}
