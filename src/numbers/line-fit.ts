/**
 * A straight line through points by least squares, and what a further point is likely to be.
 *
 *   b = Σ (x - x̄)(y - ȳ) / Σ (x - x̄)²;  a = ȳ - b x̄;  s² = Σ (y - a - b x)² / (n - 2)
 *   y* = a + b x* ± t s √(1 + 1/n + (x* - x̄)² / Σ (x - x̄)²)
 *
 * b slope, a intercept, s residual standard deviation, n points, t two-sided 95 % point of Student's t, n - 2 degrees of freedom.
 * Valid: spread alike everywhere, points independent. Source: line-fit, student-t.
 */
import { student95 } from './student.ts';

export type Point = readonly [x: number, y: number];
export type LineFit = {
  readonly points: number;
  readonly slope: number;
  readonly intercept: number;
  readonly residual: number; // standard deviation about the line
  readonly slopeDeviation: number; // standard deviation of slope and intercept
  readonly interceptDeviation: number;
  readonly middle: number; // x̄
  readonly spread: number; // Σ (x - x̄)²
};
export type Interval = { readonly value: number; readonly low: number; readonly high: number };

/** Needs three points of which not all stand at one x; undefined for fewer. */
export function lineFit(points: readonly Point[]): LineFit | undefined {
  const n = points.length;
  const middle = mean(points.map(([x]) => x));
  const height = mean(points.map(([, y]) => y));
  const spread = sumOf(points.map(([x]) => (x - middle) ** 2));
  if (!(n >= 3 && spread > 0)) return undefined;
  const slope = sumOf(points.map(([x, y]) => (x - middle) * (y - height))) / spread;
  const intercept = height - slope * middle;
  const squares = sumOf(points.map(([x, y]) => (y - height - slope * (x - middle)) ** 2));
  const residual = Math.sqrt(squares / (n - 2));
  return {
    points: n,
    slope,
    intercept,
    residual,
    slopeDeviation: residual / Math.sqrt(spread),
    interceptDeviation: residual * Math.sqrt(1 / n + middle ** 2 / spread),
    middle,
    spread,
  };
}

/** Where one further point at x lies, 19 times of 20. */
export function foretold(fit: LineFit, x: number): Interval {
  const value = fit.intercept + fit.slope * x;
  const far = Math.sqrt(1 + 1 / fit.points + (x - fit.middle) ** 2 / fit.spread);
  const half = student95(fit.points - 2) * fit.residual * far;
  return { value, low: value - half, high: value + half };
}

/** The same from points that say nothing of x: mean ± t s √(1 + 1/n). Undefined for fewer than two. */
export function foretoldMean(values: readonly number[]): Interval | undefined {
  const n = values.length;
  if (n < 2) return undefined;
  const value = mean(values);
  const s = Math.sqrt(sumOf(values.map(y => (y - value) ** 2)) / (n - 1));
  const half = student95(n - 1) * s * Math.sqrt(1 + 1 / n);
  return { value, low: value - half, high: value + half };
}

const sumOf = (values: readonly number[]): number => values.reduce((sum, each) => sum + each, 0);
const mean = (values: readonly number[]): number => sumOf(values) / values.length;
