import { normalBelow, normalScore } from './normal.ts';
import { studentBelow, studentScore } from './student.ts';

export type Limits = { readonly min?: number; readonly max?: number };

/**
 * The chance that the true value lies inside its limits, given a reading.
 *   p = F((TU - y) / u) - F((TL - y) / u);  F = Φ, or Student's t of ν degrees of freedom where u is known from few readings
 * y reading [SI]; u standard uncertainty [SI], 0 or more; TL, TU limits [SI], one may be missing; ν degrees of freedom of
 * u, 1 or more, taken down to a whole number. Valid for a nearly normal reading and little known of the piece beforehand.
 * Not a number in, not a number out. Source: jcgm-106, 7.2 to 7.4; jcgm-100, G.3.2 and G.4.1.
 */
export function chanceInside(reading: number, u: number, limits: Limits, freedom = Number.POSITIVE_INFINITY): number {
  if (!(u >= 0) || Number.isNaN(reading)) return Number.NaN;
  const below = (edge: number): number =>
    u === 0 ? Number(reading <= edge) : scoreBelow((edge - reading) / u, freedom);
  const upper = limits.max === undefined ? 1 : below(limits.max);
  const lower = limits.min === undefined ? 0 : u === 0 ? Number(reading < limits.min) : below(limits.min);
  return Math.max(0, upper - lower);
}

/**
 * The furthest reading that still proves the limit kept.  A = T ∓ z u, with z = F⁻¹(p), F as for the chance.
 * T limit [SI]; u standard uncertainty [SI]; p wanted chance for one side, in [0.5, 1). The rule's limit is exact: guard
 * once, with the reading's uncertainty alone. Source: jcgm-106, 8.3 guarded acceptance; jcgm-100, G.3.2 and G.4.1.
 */
export function acceptance(limits: Limits, u: number, chance: number, freedom = Number.POSITIVE_INFINITY): Limits {
  const z = scoreFor(chance, freedom);
  return {
    ...(limits.min === undefined ? {} : { min: limits.min + z * u }),
    ...(limits.max === undefined ? {} : { max: limits.max - z * u }),
  };
}

/** One-sided score for a wanted chance; throws outside [0.5, 1). */
export function scoreFor(chance: number, freedom = Number.POSITIVE_INFINITY): number {
  if (!(chance >= 0.5 && chance < 1)) throw new Error(`scoreFor: chance must be from 0.5 to below 1, got ${chance}`);
  const whole = wholeFreedom(freedom);
  return whole === undefined ? normalScore(chance) : studentScore(chance, whole);
}

/** The share of the distribution below a score: normal, or wider where few readings stand behind it. */
function scoreBelow(score: number, freedom: number): number {
  const whole = wholeFreedom(freedom);
  return whole === undefined ? normalBelow(score) : studentBelow(score, whole);
}

/** From here on Student's t and the normal distribution differ by less than 1e-4 of a score. */
const MANY = 10_000;

/** Down to a whole number, as is usual for an effective one; a sum of floats that should be whole counts as whole. */
function wholeFreedom(freedom: number): number | undefined {
  if (!(freedom >= 1 - 1e-9)) throw new Error(`chance: freedom must be 1 or more, got ${freedom}`);
  return freedom >= MANY ? undefined : Math.floor(freedom * (1 + 1e-9) + 1e-9);
}
