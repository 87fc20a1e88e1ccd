import { normalBelow, normalScore } from './normal.ts';

export type Limits = { readonly min?: number; readonly max?: number };

/**
 * The chance that the true value lies inside its limits, given a reading.
 *   p = Φ((TU - y) / u) - Φ((TL - y) / u)
 * y reading [SI]; u standard uncertainty [SI], 0 or more; TL, TU limits [SI], one may be missing. Valid for a nearly
 * normal reading and little known of the piece beforehand. Not a number in, not a number out.
 * Source: jcgm-106, 7.2 to 7.4.
 */
export function chanceInside(reading: number, u: number, limits: Limits): number {
  if (!(u >= 0) || Number.isNaN(reading)) return Number.NaN;
  const below = (edge: number): number => (u === 0 ? Number(reading <= edge) : normalBelow((edge - reading) / u));
  const upper = limits.max === undefined ? 1 : below(limits.max);
  const lower = limits.min === undefined ? 0 : u === 0 ? Number(reading < limits.min) : below(limits.min);
  return Math.max(0, upper - lower);
}

/**
 * The furthest reading that still proves the limit kept.  A = T ∓ z u, with z = Φ⁻¹(p).
 * T limit [SI]; u standard uncertainty [SI]; p wanted chance for one side, in [0.5, 1). The rule's limit is exact: guard
 * once, with the reading's uncertainty alone. Source: jcgm-106, 8.3 guarded acceptance.
 */
export function acceptance(limits: Limits, u: number, chance: number): Limits {
  const z = scoreFor(chance);
  return {
    ...(limits.min === undefined ? {} : { min: limits.min + z * u }),
    ...(limits.max === undefined ? {} : { max: limits.max - z * u }),
  };
}

/** One-sided score for a wanted chance; throws outside [0.5, 1). */
export function scoreFor(chance: number): number {
  if (!(chance >= 0.5 && chance < 1)) throw new Error(`scoreFor: chance must be from 0.5 to below 1, got ${chance}`);
  return normalScore(chance);
}
