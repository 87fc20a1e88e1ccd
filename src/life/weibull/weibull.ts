/**
 * The Weibull life: how many are left, what goes next.
 *
 *   H(t) = (t/η)^β;  R(t) = e^-H;  F = 1 - R;  h(t) = (β/η)(t/η)^(β-1);  mean η Γ(1 + 1/β);  F(dt | t) = 1 - e^(H(t) - H(t+dt))
 *
 * t age and η scale in one unit (run-hours, laps); β shape [1]: below 1 early failures, 1 chance alone, above 1 wear.
 * Both above 0, finite. Source: Weibull 1951; NIST/SEMATECH e-Handbook 8.1.6.2 (memory).
 */
import { gamma } from '../gamma.ts';

export type Weibull = { readonly shape: number; readonly scale: number };

/** H(t + hours) - H(t): small differences do not drown. */
export function hazardBetween({ shape, scale }: Weibull, age: number, hours: number): number {
  if (age <= 0) return (hours / scale) ** shape;
  return (age / scale) ** shape * Math.expm1(shape * Math.log1p(hours / age));
}

/** Chance that one which has reached this age fails in the hours to come. */
export const chanceBetween = (life: Weibull, age: number, hours: number): number =>
  -Math.expm1(-hazardBetween(life, age, hours));

/** Failures an hour at this age among those left. */
export const hazardRate = ({ shape, scale }: Weibull, age: number): number =>
  (shape / scale) * (age / scale) ** (shape - 1);

/** The age by which this share has failed; share in (0, 1). */
export const ageAtShare = ({ shape, scale }: Weibull, share: number): number =>
  scale * (-Math.log1p(-share)) ** (1 / shape);

export const meanLife = ({ shape, scale }: Weibull): number => scale * gamma(1 + 1 / shape);
