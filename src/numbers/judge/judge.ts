/** A reading held against its limits and its target: how sure it is, and how far which way. */
import type { Measure } from '../../quantity/index.ts';
import { combine, type Link } from '../chain.ts';
import { chanceInside, type Limits } from '../conformance.ts';
import { typedAs } from './readings.ts';
import { type Judgement, wordsOf } from './words.ts';

/** What the reading was taken with. */
export type Gauge = {
  readonly resolution: number; // q, the finest step [SI]
  readonly scaleError?: number; // a, limits ± of the scale [SI]
  readonly ends?: 1 | 2; // how many times a step is read in one reading: both ends of a tape
};

export type Asked = {
  readonly readings: readonly Measure[]; // one or more, of one thing, in one unit
  /** Not known: the step is that of the digits typed, and the answer says so. */
  readonly gauge?: Gauge;
  readonly min?: Measure;
  readonly max?: Measure;
  readonly target?: { readonly si: number };
  /** Chance wanted of being inside, in [0.5, 1). */
  readonly confidence?: number;
};

export const CONFIDENCE = 0.95;

/** Two texts of one quantity may differ in the last bit once in SI: no reading is that fine. */
const LAST_BIT = 1e-12;

/**
 * Mean, spread and standard uncertainty of a reading, and what they say of limits and target.
 *   y = Σ x / n;  s² = Σ (x - y)² / (n - 1);  u² = e q²/12 + a²/3 + s²/n;  p = t((TU - y)/u) - t((TL - y)/u)
 * x reading, q resolution, a limits ± of the scale, TL and TU limits [all SI]; n readings, e ends read [1]; t Student's
 * distribution of ν degrees of freedom, n - 1 of the spread and none wanting of the instrument, put together after Welch
 * and Satterthwaite; normal for a single reading. Valid for independent readings and a nearly normal sum.
 * Throws when there is no reading, or a confidence outside [0.5, 1).
 * Source: jcgm-100, 4.2.3, 4.3.7, 5.1.2, F.2.2.1, G.3.2 and G.4.1; jcgm-106, 7.2 to 7.4.
 */
export function judge(asked: Asked): Judgement {
  const { readings, gauge, min, max, target, confidence = CONFIDENCE } = asked;
  const [first] = readings;
  if (first === undefined) throw new Error('judge: readings must hold at least one, got none');
  if (!(confidence >= 0.5 && confidence < 1))
    throw new Error(`judge: confidence must be from 0.5 to below 1, got ${confidence}`);
  const typed = typedAs(readings);
  const n = readings.length;
  const mean = readings.reduce((total, { si }) => total + si, 0) / n;
  const spread =
    n < 2 ? undefined : Math.sqrt(readings.reduce((total, { si }) => total + (si - mean) ** 2, 0) / (n - 1));
  const resolution = gauge?.resolution ?? typed.step;
  const { u, freedom } = combine([...gaugeLinks({ ...gauge, resolution }), ...spreadLinks(spread, n)]);
  const limits: Limits = { ...(min && { min: min.si }), ...(max && { max: max.si }) };
  const limited = min !== undefined || max !== undefined;
  const inside = Number.isFinite(mean) && atLeast(mean, limits.min) && atLeast(limits.max, mean);
  const chance = limited ? chanceInside(mean, u, limits, freedom) : null;
  return wordsOf({
    n,
    mean,
    ...(spread === undefined ? {} : { spread }),
    u,
    freedom,
    resolution,
    known: gauge !== undefined,
    typed,
    unit: first.unit,
    dimension: first.dimension,
    state: !limited ? 'no limit' : !inside ? 'outside' : (chance ?? 0) >= confidence ? 'inside' : 'unproven',
    chance,
    confidence,
    ...(min && { min }),
    ...(max && { max }),
    ...(target && { target: target.si }),
  });
}

/** What an instrument brings into a reading: half a step either way for each end read, and its scale. */
export function gaugeLinks({ resolution, scaleError = 0, ends = 1 }: Gauge): readonly Link[] {
  const step: Link = { times: 1, size: 0, half: resolution / 2 };
  return [...Array.from({ length: ends }, () => step), { times: 1, size: 0, half: scaleError }];
}

/** What the mean of several readings brings. */
const spreadLinks = (spread: number | undefined, n: number): readonly Link[] =>
  spread === undefined ? [] : [{ times: 1, size: 0, standard: spread / Math.sqrt(n), freedom: n - 1 }];

const atLeast = (a: number | undefined, b: number | undefined): boolean =>
  a === undefined || b === undefined || a >= b - LAST_BIT * Math.max(Math.abs(a), Math.abs(b));
