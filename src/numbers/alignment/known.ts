/** Uncertainty of what is worked out from several readings: each reading's limits through its own slope. */
import { combine } from '../chain.ts';
import type { Uncertain } from '../subject.ts';

/** Limits ± of a length read with a tape or rule, where none were given [m]. Common practice. */
export const READ_WITHIN = 0.0005;

/**
 * Standard uncertainty of f(readings).  u² = Σ (∂f/∂x a)²/3.
 * Slopes by central difference over a micrometre; readings independent, limits small beside their sizes. Source: jcgm-100.
 */
export function spreadOf(readings: readonly Uncertain[], f: (sizes: readonly number[]) => number): number {
  const sizes = readings.map(reading => reading.si);
  const STEP = 1e-6;
  const moved = (n: number, by: number): number => f(sizes.map((size, m) => (m === n ? size + by : size)));
  return combine(
    readings.map(({ si, half = READ_WITHIN }, n) => ({
      times: (moved(n, STEP) - moved(n, -STEP)) / (2 * STEP),
      size: si,
      half,
    })),
  ).u;
}
