/**
 * Compression read over the hours on a piston and ring, and the rule of one tenth.
 *
 * fall = 1 - p_last/p_best;  p = p0 + k t by least squares;  k ± t95 s/√Σ(t - t̄)²
 * p gauge pressure on one and the same gauge, engine hot, throttle open [Pa]; t running since piston and ring were new [s];
 * s scatter about the line, n - 2 degrees of freedom. A fall of 10 % against the best asks for the top end to be opened
 * (common practice; the maker's figure wins). Two gauges differ by more than that, so they are never mixed.
 * Source: compression-tenth, line-fit, student-t (checks/rows/engine.json).
 */
import { lineFit } from '../line-fit.ts';
import { student95 } from '../student.ts';

export const FALL_LIMIT = 0.1;
/** Limits of a reading over the reading, when none are given; common practice. */
const GAUGE_LIMITS = 0.02;

export type Compression = {
  readonly ran: number; // since piston and ring were new [s]
  readonly pressure: number; // gauge [Pa]
  readonly half?: number; // limits [Pa]
  readonly gauge: string; // which one
  readonly hot?: boolean; // not said: not known, and left out
  readonly open?: boolean; // throttle held open
};
export type Line = { readonly rate: number; readonly half: number; readonly start: number }; // [Pa/s], 95 % limits, [Pa]
export type CompressionTrend =
  | {
      readonly kind: 'not known';
      readonly why: 'no reading' | 'one reading' | 'last not hot and open' | 'not a reading';
    }
  | {
      readonly kind: 'due' | 'cannot tell' | 'not due';
      readonly used: number;
      readonly leftOut: number; // other gauge, cold, throttle not open, or not said
      readonly best: Compression;
      readonly last: Compression;
      readonly fall: number; // of the last below the best [1]
      readonly half: number; // its limits [1]
      readonly line?: Line; // from three readings at different hours
      /** Running hours at which the line has fallen by a tenth [s]; endless where it does not fall. */
      readonly until?: number;
    };

/** The readings of one piston and ring, in any order. What may have fallen a tenth, within its limits, is never `not due`. */
export function compressionTrend(readings: readonly Compression[]): CompressionTrend {
  if (readings.some(({ ran, pressure, half = 0 }) => !(ran >= 0 && pressure > 0 && half >= 0 && half < pressure)))
    return { kind: 'not known', why: 'not a reading' };
  const last = readings.toSorted((a, b) => a.ran - b.ran).at(-1);
  if (last === undefined) return { kind: 'not known', why: 'no reading' };
  if (!(last.hot && last.open)) return { kind: 'not known', why: 'last not hot and open' };
  const used = readings.filter(each => each.hot && each.open && sameGauge(each, last));
  if (used.length < 2) return { kind: 'not known', why: 'one reading' };
  const best = used.reduce((a, b) => (b.pressure > a.pressure ? b : a));
  const fall = 1 - last.pressure / best.pressure;
  const half =
    best === last
      ? 0
      : (last.pressure / best.pressure) * Math.hypot(limits(last) / last.pressure, limits(best) / best.pressure);
  const line = lineThrough(used);
  const found = { used: used.length, leftOut: readings.length - used.length, best, last, fall, half };
  const until =
    line &&
    (line.rate < 0
      ? Math.max(0, ((1 - FALL_LIMIT) * best.pressure - line.start) / line.rate)
      : Number.POSITIVE_INFINITY);
  return {
    kind: fall >= FALL_LIMIT - 1e-9 ? 'due' : fall + half >= FALL_LIMIT ? 'cannot tell' : 'not due',
    ...found,
    ...(line && { line }),
    ...(until !== undefined && { until }),
  };
}

const limits = ({ half, pressure }: Compression): number => half ?? GAUGE_LIMITS * pressure;
const sameGauge = (a: Compression, b: Compression): boolean =>
  a.gauge.trim().toLowerCase() === b.gauge.trim().toLowerCase();

function lineThrough(readings: readonly Compression[]): Line | undefined {
  const byAge = readings.toSorted((a, b) => a.ran - b.ran || a.pressure - b.pressure); // sums do not hang on who wrote first
  const fit = lineFit(byAge.map(({ ran, pressure }) => [ran, pressure]));
  if (fit === undefined) return undefined;
  const half = student95(fit.points - 2) * fit.slopeDeviation;
  return { rate: fit.slope, start: fit.intercept, half };
}
