/**
 * Quantiles of something that only falls while the scale grows: a chance of failing. For each shape the scale at which it
 * has a value is known exactly, so the share of lives above it needs one sum along the scales; between nodes a cubic of
 * the weights and their slopes is summed, whose error falls with the fourth power of the step.
 */
import { rootBetween } from '../root.ts';
import type { Lattice } from './density.ts';

/**
 * @param ranks shares of lives whose chance lies below; between 0 and 1
 * @param lnGrowth for a shape β, ln of what is divided by η^β to give the hazard H of the chance 1 - e^-H
 * @returns the chance of each rank
 */
export function chanceQuantiles(
  lattice: Lattice,
  ranks: readonly number[],
  lnGrowth: (shape: number) => number,
): readonly number[] {
  const rows = rowsOf(lattice).map(row => ({ ...row, growth: lnGrowth(row.shape) }));
  const below = (lnHazard: number): number => {
    let share = 0;
    for (const { shape, growth, total, upTo } of rows) share += total - upTo((growth - lnHazard) / shape);
    return share;
  };
  return ranks.map(rank => {
    const excess = (lnHazard: number): number => below(lnHazard) - rank;
    let [low, high] = [-10, 1];
    while (excess(low) > 0 && low > -700) low *= 2;
    while (excess(high) < 0 && high < 700) high *= 2;
    if (excess(low) > 0) return 0;
    if (excess(high) < 0) return 1;
    return -Math.expm1(-Math.exp(rootBetween(excess, low, high)));
  });
}

type Row = { readonly shape: number; readonly total: number; readonly upTo: (lnScale: number) => number };

function rowsOf({ shapes, scales, weights }: Lattice): readonly Row[] {
  const columns = scales.length;
  const first = scales[0] as number;
  const step = (scales[1] as number) - first;
  return [...shapes].flatMap((lnShape, n): Row[] => {
    const w = weights.subarray(n * columns, (n + 1) * columns);
    const at = (i: number): number => w[i] ?? 0; // nothing beyond the edges
    const slope = (i: number): number => (8 * (at(i + 1) - at(i - 1)) - at(i + 2) + at(i - 2)) / 12;
    const sums = new Float64Array(columns);
    for (let i = 1; i < columns; i++)
      sums[i] = (sums[i - 1] as number) + (at(i - 1) + at(i)) / 2 + (slope(i - 1) - slope(i)) / 12;
    const total = sums[columns - 1] as number;
    if (total < 1e-14) return [];
    const upTo = (lnScale: number): number => {
      const place = (lnScale - first) / step;
      if (!(place > 0)) return 0;
      if (place >= columns - 1) return total;
      const i = Math.floor(place);
      return (sums[i] as number) + cubic(place - i, at(i), at(i + 1), slope(i), slope(i + 1));
    };
    return [{ shape: Math.exp(lnShape), total, upTo }];
  });
}

/** ∫ from 0 to s of the cubic with these values and slopes at 0 and 1. */
function cubic(s: number, w0: number, w1: number, d0: number, d1: number): number {
  const [s2, s3, s4] = [s * s, s ** 3, s ** 4];
  return w0 * (s4 / 2 - s3 + s) + w1 * (s3 - s4 / 2) + d0 * (s4 / 4 - (2 * s3) / 3 + s2 / 2) + d1 * (s4 / 4 - s3 / 3);
}
