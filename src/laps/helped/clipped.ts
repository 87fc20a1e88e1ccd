/**
 * Lap times with what a driver's bad lap adds cut back, so that the rest of the method may take them as they are.
 *
 *   r = y - fit;  s = 1.4826 median |r| √(n / (n - p));  ψ(r) = r cut at ± 1.345 s;  y* = fit + K ψ(r) / m,  K = 1 + p (1 - m) / (n m)
 *
 * n laps, p free columns, m share of laps that were not cut. A lap more than 6 s slower than the fit is dropped: it was no
 * lap driven on the limit. Found by turns until nothing moves. 1.345 keeps 95 % of what normal laps say.
 * Source: Huber 1964 and Huber 1981, 7.6, pseudo-values and the correction K (memory).
 */
import { middleOf } from '../middle.ts';
import { type Columns, solveMixed, sumsOf } from './mixed.ts';

export type Clipped = {
  readonly values: readonly number[]; // s, y*
  readonly spread: number; // s of a lap
  readonly cut: number; // how many laps were cut back
  /** Index of laps too slow to count; `values` leaves them in, and who asked leaves them out and asks again. */
  readonly slow: readonly number[];
};

const CUT = 1.345;
const SLOW = 6;
const TO_DEVIATION = 1.4826;
/** Closer together than times are written, s: laps all alike are not laps without chance. */
export const LEAST_SPREAD = 0.001;
const TURNS = 200;
/** The spread is left alone after so many, so that turns which go to and fro come to an end. */
const SETTLED = 60;

/** @param ratios spreads of the held columns over that of a lap, given the lap's */
export function clipped(
  values: readonly number[],
  columns: Columns,
  ratios: (lapSpread: number) => readonly number[],
): Clipped | undefined {
  const [laps, free] = [values.length, columns.free.length];
  const widen = TO_DEVIATION * Math.sqrt(laps / Math.max(laps - free, 1));
  const spreadOf = (rest: readonly number[]): number => Math.max(widen * middleOf(rest.map(Math.abs)), LEAST_SPREAD);
  let spread = Number.NaN;
  let fit: readonly number[] | undefined;
  for (let turn = 0; turn < TURNS; turn++) {
    const near: readonly number[] | undefined = fit?.map(
      (at, n) => at + cutAt((values[n] as number) - at, CUT * spread),
    );
    const next = fitted(near ?? values, columns, ratios(Number.isNaN(spread) ? 1 : spread));
    if (next === undefined) return undefined;
    const rest = values.map((value, n) => value - (next[n] as number));
    const now = turn < SETTLED ? spreadOf(rest) : spread;
    const moved = fit
      ? Math.max(...next.map((at, n) => Math.abs(at - (fit?.[n] as number))))
      : Number.POSITIVE_INFINITY;
    const still = moved < 1e-10 && Math.abs(now - spread) < 1e-10;
    [fit, spread] = [next, now];
    if (still) break;
  }
  const at = fit as readonly number[];
  const rest = values.map((value, n) => value - (at[n] as number));
  const kept = rest.filter(each => Math.abs(each) <= CUT * spread).length / laps;
  const factor = (1 + (free * (1 - kept)) / (laps * kept)) / kept;
  return {
    values: rest.map((each, n) => (at[n] as number) + factor * cutAt(each, CUT * spread)),
    spread,
    cut: Math.round((1 - kept) * laps),
    slow: rest.flatMap((each, n) => (each > SLOW * spread ? [n] : [])),
  };
}

const cutAt = (value: number, most: number): number => Math.min(most, Math.max(-most, value));

function fitted(values: readonly number[], columns: Columns, ratios: readonly number[]): readonly number[] | undefined {
  // Around the first, so that sums of squares keep their digits.
  const from = values[0] ?? 0;
  const solved = solveMixed(
    sumsOf(
      columns,
      values.map(value => value - from),
    ),
    ratios,
  );
  if (solved === undefined) return undefined;
  const sizes = [...solved.free, ...solved.held];
  const all = [...columns.free, ...columns.held];
  return values.map(
    (_, n) => from + all.reduce((sum, column, k) => sum + (sizes[k] as number) * (column[n] as number), 0),
  );
}
