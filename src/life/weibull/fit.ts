/**
 * The most likely Weibull life of a record, by maximum likelihood.
 *
 *   λ(β) = ln(r / Σ e^βx);  β Σ x e^βx / Σ e^βx - β Σ failed x / r = 1
 *
 * x = ln(age / largest) over all, r failures, β shape [1], η scale = largest · e^(-λ/β). The second line has one root when
 * anything failed before the largest age; it is bracketed and met by Halley's steps. Finds between two looks have no such
 * line: there the slope of the profile is, which falls through zero once. Covariance: inverse observed information in
 * (ln η, ln 1/β). With few failures the most likely shape is too steep on average: of 6 stopped at the second failure
 * half the fits lie above 5.5 where 2 is true; the posterior (../posterior) is for that.
 * Source: Lawless 2003, 5.2 (memory); figures of R 4.2.2 with survival 3.5-3 in checks/rows/life.json.
 */
import type { Life } from '../life.ts';
import { rootBetween } from '../root.ts';
import { type Evidence, evidenceOf } from './evidence.ts';
import { scaleOf, slopesAt } from './likelihood.ts';
import type { Weibull } from './weibull.ts';

/** Of (ln scale, ln 1/shape): variances and what they share [1]. */
export type Covariance = { readonly scale: number; readonly both: number; readonly shape: number };

export type WeibullFit = Weibull & {
  readonly kind: 'fit';
  readonly covariance: Covariance;
  readonly logLikelihood: number; // density in the unit of the ages
  readonly units: number;
  readonly failures: number; // seen or found
};
export type NoFit = {
  readonly kind: 'no fit';
  readonly reason: 'no record' | 'no failure' | 'tied' | 'flat' | 'not seen from new';
  readonly say: string;
};

/** Shapes looked among where a closed line is wanting; a part outside has no age worth speaking of, or only one. */
const FLATTEST = 0.001;
const STEEPEST = 5000;

/** Throws on an age that cannot be; a record that has no most likely life is told why. */
export const weibullFit = (lives: readonly Life[]): WeibullFit | NoFit => fitOf(evidenceOf(lives));

export function fitOf(of: Evidence): WeibullFit | NoFit {
  const failures = of.failed + of.found.length;
  const none = (reason: NoFit['reason'], say: string): NoFit => ({ kind: 'no fit', reason, say });
  if (of.units === 0) return none('no record', 'No life is on record.');
  if (failures === 0)
    return none(
      'no failure',
      `None of ${of.units} failed. That says how long they last at least, once a shape is assumed; not how they fail.`,
    );
  if (of.late.length > 0)
    return none(
      'not seen from new',
      'Of some the first hours were not watched, and the likelihood may have no single top. Weigh the record with a starting guess instead.',
    );
  const tied = none(
    'tied',
    'No failure came before the largest age on record: ever steeper shapes fit ever better, and none is the most likely.',
  );
  if (of.found.length === 0) return of.ofFailed === 0 ? tied : closed(of);
  const slope = (lnShape: number): number => slopeAlong(of, Math.exp(lnShape));
  const [low, high] = [Math.log(FLATTEST), Math.log(STEEPEST)];
  if (!(slope(high) < 0)) return tied;
  if (!(slope(low) > 0))
    return none('flat', 'Ever flatter shapes fit ever better: what failed, failed before all that lasted, at no age.');
  const shape = Math.exp(rootBetween(slope, low, high));
  const lambda = lambdaFor(of, shape);
  return fitFrom(of, shape, lambda, slopesAt(of, shape, lambda));
}

/** The best λ for a shape. Closed without finds; else where the slope by λ, which only falls, is zero. */
export function lambdaFor(of: Evidence, shape: number): number {
  let sum = 0;
  for (let n = 0; n < of.ages.length; n++) sum += Math.exp(shape * (of.ages[n] as number));
  if (of.found.length === 0) return Math.log(of.failed / sum);
  const slope = (lambda: number): number => slopesAt(of, shape, lambda).l;
  let [low, high] = [-1, 1];
  while (!(slope(low) > 0) && low > -1e6) low *= 2;
  while (!(slope(high) < 0) && high < 1e6) high *= 2;
  return slope(low) > 0 && slope(high) < 0 ? rootBetween(slope, low, high) : slope(low) > 0 ? high : low;
}

const slopeAlong = (of: Evidence, shape: number): number => slopesAt(of, shape, lambdaFor(of, shape)).b;

type Moments = { readonly s0: number; readonly s1: number; readonly s2: number; readonly s3: number };

/** A record of failures and fine ones alone, some failure before the largest age. */
function closed(of: Evidence): WeibullFit {
  const { shape, moments } = solve(of.ages, of.ofFailed / of.failed, start(of));
  const lambda = Math.log(of.failed / moments.s0);
  const weight = of.failed / moments.s0;
  const [h1, h2] = [weight * moments.s1, weight * moments.s2];
  return fitFrom(of, shape, lambda, {
    value: of.failed * (Math.log(shape) + lambda - of.top - 1) + (shape - 1) * of.ofFailed,
    bb: -of.failed / shape ** 2 - h2,
    bl: -h1,
    ll: -of.failed,
  });
}

/** Of a long record every so manyth life tells the shape to a few per cent, for next to nothing. */
function start({ ages, ofFailed, failed }: Evidence): number {
  const rough = Math.max(0.2, Math.min(20, -failed / ofFailed));
  const stride = Math.floor(ages.length / 150);
  if (stride < 3) return rough;
  const some = new Float64Array(Math.floor(ages.length / stride));
  // The largest (0) among them, else they might have no root.
  for (let n = 1; n < some.length; n++) some[n] = ages[n * stride] as number;
  return solve(some, ofFailed / failed, rough).shape;
}

function solve(ages: Float64Array, middle: number, from: number): { shape: number; moments: Moments } {
  let [low, high] = [0, Number.POSITIVE_INFINITY];
  let shape = from;
  for (let turn = 0; ; turn++) {
    const { s0, s1, s2, s3 } = momentsAt(ages, shape);
    const [mean, second] = [s1 / s0, s2 / s0];
    const spread = second - mean * mean;
    const f = shape * (mean - middle) - 1;
    const slope = mean - middle + shape * spread;
    const bend = 2 * spread + shape * (s3 / s0 - 3 * mean * second + 2 * mean ** 3);
    if (f < 0) low = shape;
    else high = shape;
    const step = (-2 * f * slope) / (2 * slope * slope - f * bend);
    // Within this the next error is the cube of it, and the sums are carried along instead of being summed anew.
    if (Math.abs(step) <= 2e-5 * shape || high - low <= 1e-15 * shape || turn > 2000) {
      const moments = { s0: s0 + step * (s1 + (step / 2) * s2), s1: s1 + step * s2, s2: s2 + step * s3, s3 };
      return { shape: shape + step, moments };
    }
    const next = shape + step;
    shape = next > low && next < high ? next : Number.isFinite(high) ? (low + high) / 2 : 2 * shape;
  }
}

function momentsAt(ages: Float64Array, shape: number): Moments {
  let [s0, s1, s2, s3] = [0, 0, 0, 0];
  for (let n = 0; n < ages.length; n++) {
    const x = ages[n] as number;
    const w0 = Math.exp(shape * x);
    const w1 = w0 * x;
    const w2 = w1 * x;
    s0 += w0;
    s1 += w1;
    s2 += w2;
    s3 += w2 * x;
  }
  return { s0, s1, s2, s3 };
}

/** From (β, λ), where the slopes are zero, to (ln η, ln 1/β). */
function fitFrom(
  of: Evidence,
  shape: number,
  lambda: number,
  at: { readonly value: number; readonly bb: number; readonly bl: number; readonly ll: number },
): WeibullFit {
  const mm = -(shape ** 2) * at.ll;
  const ms = -(shape ** 2 * at.bl + shape * lambda * at.ll);
  const ss = -(shape ** 2 * at.bb + 2 * shape * lambda * at.bl + lambda ** 2 * at.ll);
  const size = mm * ss - ms * ms;
  return {
    kind: 'fit',
    shape,
    scale: scaleOf(of, shape, lambda),
    covariance: { scale: ss / size, both: -ms / size, shape: mm / size },
    logLikelihood: at.value,
    units: of.units,
    failures: of.failed + of.found.length,
  };
}
