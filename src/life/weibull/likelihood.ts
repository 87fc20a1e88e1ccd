/**
 * The log-likelihood of a record of lives, in the two parameters in which it has one top (Burridge 1981, memory).
 *
 *   L(β, λ) = Σ failed [ln β + βx + λ - ln t] - Σ H(x) + Σ found [ln(1 - e^-(H(x) - H(a))) - H(a)] + Σ late H(from);  H(x) = e^(λ + βx)
 *
 * x = ln(age / largest) [1], t age, a the last good look; β shape [1]; λ = -β ln(η / largest) [1], η scale.
 * Density in t, as usual in survival analysis. With parts whose first hours nobody saw the one top is not certain.
 * Source: Meeker and Escobar 1998, 7 and 8 (memory); the figures in checks/rows/life.json.
 */

import type { Evidence } from './evidence.ts';
import type { Weibull } from './weibull.ts';

/** Value, first and second derivatives by β and λ. */
export type Slopes = {
  readonly value: number;
  readonly b: number;
  readonly l: number;
  readonly bb: number;
  readonly bl: number;
  readonly ll: number;
};

export function slopesAt(of: Evidence, shape: number, lambda: number): Slopes {
  const { failed, top, ages, ofFailed, found, late } = of;
  let [h0, h1, h2] = [0, 0, 0];
  for (let n = 0; n < ages.length; n++) {
    const x = ages[n] as number;
    const h = Math.exp(lambda + shape * x);
    h0 += h;
    h1 += h * x;
    h2 += h * x * x;
  }
  for (const x of late) {
    const h = Math.exp(lambda + shape * x);
    h0 -= h;
    h1 -= h * x;
    h2 -= h * x * x;
  }
  let value = failed * (Math.log(shape) + lambda - top) + (shape - 1) * ofFailed - h0;
  let [b, l] = [failed / shape + ofFailed - h1, failed - h0];
  let [bb, bl, ll] = [-failed / shape ** 2 - h2, -h1, -h0];
  for (const { fine, at } of found) {
    // Shares of the hazard between the looks, so that nothing is lost where that is very small.
    const end = Math.exp(lambda + shape * at);
    const start = Math.exp(lambda + shape * fine);
    const q = Math.exp(shape * (fine - at));
    // One never looked at before: nothing is known of it below, and 0 times -Infinity must not be asked.
    const low = q === 0 ? 0 : fine;
    const [d0, r1, r2] = [end * (1 - q), (at - low * q) / (1 - q), (at * at - low * low * q) / (1 - q)];
    const g = d0 > 700 ? 0 : d0 > 0 ? d0 / Math.expm1(d0) : 1;
    const bend = d0 > 700 ? 0 : -g * (g + d0);
    value += (d0 > 1e-5 ? Math.log(-Math.expm1(-d0)) : lambda + shape * at + Math.log1p(-q) - d0 / 2) - start;
    b += g * r1 - low * start;
    l += g - start;
    bb += bend * r1 * r1 + g * r2 - low * low * start;
    bl += bend * r1 + g * r1 - low * start;
    ll += bend + g - start;
  }
  return { value, b, l, bb, bl, ll };
}

/** λ of a Weibull life, and back. */
export const lambdaOf = ({ top }: Evidence, { shape, scale }: Weibull): number => -shape * (Math.log(scale) - top);
export const scaleOf = ({ top }: Evidence, shape: number, lambda: number): number => Math.exp(top - lambda / shape);

/** Log-likelihood of the record for one Weibull life, density in the unit of the ages. */
export const logLikelihood = (of: Evidence, life: Weibull): number =>
  slopesAt(of, life.shape, lambdaOf(of, life)).value;
