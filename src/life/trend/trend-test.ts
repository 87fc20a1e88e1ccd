/**
 * Does it fail more often, less often, or just by chance? Two tests of "by chance", and how well the power law fits.
 *
 *   Laplace:  U = (Σ t / m - T/2) / (T √(1/(12 m)));  about normal
 *   MIL-HDBK-189:  X = 2 Σ ln(T/t), chi-square with 2m degrees of freedom;  small where failures come late
 *   Cramér and von Mises:  C = 1/(12m) + Σ ((t_i/T)^β̄ - (2i - 1)/(2m))²
 *
 * t ages of failure, T end of the watch, m failures counted (all; all but the last where that ended the watch), β̄ unbiased.
 * Source: Cox and Lewis 1966; MIL-HDBK-189 (memory); e-Handbook of NIST/SEMATECH 8.2.3.4 (memory).
 */
import { normalBelow } from '../../numbers/index.ts';
import { erlangBelow } from '../erlang.ts';
import { type EndedBy, logSum, mustBeWatched, powerLaw, type Watched } from './power-law.ts';

export type Trend = {
  readonly laplace: number; // above 0: more often with age
  readonly chiSquare: number;
  readonly freedom: number;
  /** Chance of a trend this strong, either way, where there is none (MIL-HDBK-189). */
  readonly byLuck: number;
  readonly misfit?: number; // C of the power law
  readonly verdict: 'more often' | 'less often' | 'no trend to be seen';
};

/** Below this the trend is called one: 1 of 20 by luck. */
const LEVEL = 0.05;

/** Undefined where fewer than two failures are counted. */
export function trendOf(unit: Watched, by: EndedBy = 'time'): Trend | undefined {
  mustBeWatched('trendOf', unit);
  const { failures, until } = unit;
  const counted = by === 'failure' ? failures.slice(0, -1) : failures;
  const m = counted.length;
  if (m < 2) return undefined;
  const laplace = (counted.reduce((sum, t) => sum + t, 0) / m - until / 2) / (until * Math.sqrt(1 / (12 * m)));
  const half = logSum({ failures: counted, until });
  const below = erlangBelow(half, m);
  const byLuck = 2 * Math.min(below, 1 - below);
  const misfit = misfitOf(unit, counted, by);
  return {
    laplace,
    chiSquare: 2 * half,
    freedom: 2 * m,
    byLuck,
    ...(misfit !== undefined && { misfit }),
    verdict: byLuck >= LEVEL ? 'no trend to be seen' : below < 0.5 ? 'more often' : 'less often',
  };
}

/** Chance of a trend this strong by luck, by Laplace's test. */
export const laplaceByLuck = (u: number): number => 2 * normalBelow(-Math.abs(u));

function misfitOf(unit: Watched, counted: readonly number[], by: EndedBy): number | undefined {
  const fit = powerLaw(unit, by);
  if (fit.kind === 'no trend' || fit.unbiased === undefined) return undefined;
  const { shape } = fit.unbiased;
  const m = counted.length;
  return counted.reduce((sum, t, i) => sum + ((t / unit.until) ** shape - (2 * i + 1) / (2 * m)) ** 2, 1 / (12 * m));
}
