/**
 * Squish from solder crushed at two opposite edges of the piston.
 *
 * clearance = thickness of the solder;  tilt = |a - b|
 * Held against the maker's least figure; without one, 0.75 mm (common practice, 125 cm³). The rod stretches and bearings
 * have play, so a reading that may be under the least, within its limits, counts as under. Source: squish-least.
 */
export const LEAST_SQUISH = 0.00075; // m, common practice; the maker's figure wins
/** Limits of a calliper on crushed solder [m]; common practice. */
export const SOLDER_LIMITS = 0.00002;

export type Solder = {
  readonly sides: readonly [number, number]; // [m], left and right or front and back; not a number: not measured
  readonly half?: number; // limits of a reading [m]
  readonly least?: number; // the maker's [m]
};
export type Squish = {
  readonly kind: 'not to run' | 'cannot tell' | 'above the least' | 'not known';
  readonly tightest: number; // [m], not a number unless both are known
  readonly tilt: number; // first side wider than the second [m]
  readonly least: number; // what it was held against [m]
};

/** Whether the tightest side keeps its distance. A side that was not measured is never taken as good. */
export function squishVerdict({ sides: [one, other], half = SOLDER_LIMITS, least = LEAST_SQUISH }: Solder): Squish {
  const tightest = Math.min(one, other);
  const held = { tightest, tilt: one - other, least };
  if ([one, other].some(side => side + half < least)) return { kind: 'not to run', ...held };
  if (!(Number.isFinite(tightest) && Number.isFinite(half) && Number.isFinite(least)))
    return { kind: 'not known', ...held };
  // A micrometre of rounding decides nothing.
  return {
    kind: tightest < least - 1e-9 ? 'not to run' : tightest - half < least - 1e-9 ? 'cannot tell' : 'above the least',
    ...held,
  };
}
