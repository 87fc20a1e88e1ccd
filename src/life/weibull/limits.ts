/**
 * How far the most likely life can be trusted, two ways that the names keep apart.
 *
 *   Wald, on the log:          x e^(± z se);  F(t): Φ_sev((ln t - μ)/σ ± z se) with Φ_sev(z) = 1 - e^-e^z
 *   likelihood ratio:          { x : 2 (L_max - L_profile(x)) <= z² }
 *
 * x shape or scale, se its standard error on the log, z = 1.96 for 19 of 20; μ = ln η, σ = 1/β. Likelihood limits are to
 * be preferred below some 20 failures. Source: Meeker and Escobar 1998, 8.3 and 8.4 (memory); figures in checks/rows/life.json.
 */
import { normalScore } from '../../numbers/index.ts';
import type { Life } from '../life.ts';
import { rootBetween } from '../root.ts';
import { type Evidence, evidenceOf } from './evidence.ts';
import { lambdaFor, type WeibullFit } from './fit.ts';
import { slopesAt } from './likelihood.ts';

/** An end that the record does not bound is infinite, or 0. */
export type Limits = { readonly low: number; readonly high: number };
export type FitLimits = { readonly shape: Limits; readonly scale: Limits };

export const CONFIDENCE = 0.95;

export function waldLimits(fit: WeibullFit, confidence = CONFIDENCE): FitLimits {
  const around = (value: number, variance: number): Limits => {
    const wide = Math.exp(scoreFor(confidence) * Math.sqrt(variance));
    return { low: value / wide, high: value * wide };
  };
  return { shape: around(fit.shape, fit.covariance.shape), scale: around(fit.scale, fit.covariance.scale) };
}

/** Share failed by an age, with Wald limits on the scale of smallest extreme values. */
export function waldShare(fit: WeibullFit, age: number, confidence = CONFIDENCE): Limits & { readonly share: number } {
  const z = fit.shape * Math.log(age / fit.scale);
  // dz = -β dμ - z dτ, with τ = ln 1/β
  const { scale, both, shape } = fit.covariance;
  const error = Math.sqrt(fit.shape ** 2 * scale + 2 * fit.shape * z * both + z * z * shape);
  const share = (at: number): number => -Math.expm1(-Math.exp(at));
  const wide = scoreFor(confidence) * error;
  return { share: share(z), low: share(z - wide), high: share(z + wide) };
}

/** Likelihood-ratio limits of the fit of these lives. */
export function likelihoodLimits(lives: readonly Life[], fit: WeibullFit, confidence = CONFIDENCE): FitLimits {
  const of = evidenceOf(lives);
  const drop = scoreFor(confidence) ** 2 / 2;
  const byShape = (ln: number): number => {
    const shape = Math.exp(ln);
    return slopesAt(of, shape, lambdaFor(of, shape)).value - fit.logLikelihood + drop;
  };
  const byScale = (ln: number): number => bestFor(of, ln - of.top) - fit.logLikelihood + drop;
  return {
    shape: edges(byShape, Math.log(fit.shape), Math.sqrt(fit.covariance.shape)),
    scale: edges(byScale, Math.log(fit.scale), Math.sqrt(fit.covariance.scale)),
  };
}

/** The best the record can say for a scale [ln of it over the largest age]; along it λ = -β times that, and one top remains. */
function bestFor(of: Evidence, scale: number): number {
  const slope = (ln: number): number => {
    const shape = Math.exp(ln);
    const { b, l } = slopesAt(of, shape, -shape * scale);
    return b - scale * l;
  };
  let [low, high] = [-1, 1];
  while (!(slope(low) > 0) && low > -40) low -= 1;
  while (!(slope(high) < 0) && high < 7) high += 0.5;
  if (!(slope(low) > 0 && slope(high) < 0)) return Number.NEGATIVE_INFINITY;
  const shape = Math.exp(rootBetween(slope, low, high));
  return slopesAt(of, shape, -shape * scale).value;
}

/** Where a curve that is above zero at its top comes down to it on either side; walked outward by its own width. */
function edges(above: (ln: number) => number, top: number, error: number): Limits {
  const edge = (way: 1 | -1): number => {
    let inside = top;
    for (let step = Math.max(error, 1e-6); Math.abs(inside - top) < FAR; step *= 1.5) {
      const next = inside + way * step;
      if (!(above(next) > 0)) return Math.exp(rootBetween(above, inside, next));
      inside = next;
    }
    return way > 0 ? Number.POSITIVE_INFINITY : 0;
  };
  return { low: edge(-1), high: edge(1) };
}
/** e^60 times the value: no end of it that anybody could use. */
const FAR = 60;

function scoreFor(confidence: number): number {
  if (!(confidence > 0 && confidence < 1))
    throw new Error(`limits: confidence must lie between 0 and 1, got ${confidence}`);
  return normalScore((1 + confidence) / 2);
}
