/**
 * Replacing at an age what has not failed before, when shape and scale are taken as known (Barlow and Hunter 1960, memory).
 *
 *   C(T) = (c_p R(T) + c_f F(T)) / ∫₀ᵀ R;   at the best T:  h(T) ∫₀ᵀ R - F(T) = c_p / (c_f - c_p),  C = (c_f - c_p) h(T)
 *   ∫₀ᵀ R = η/β γ(1/β, (T/η)^β);   never: C = c_f / mean
 *
 * c_p cost of replacing in the garage, c_f of a failure (part, what it takes with it, the lost weekend), same money,
 * c_f > c_p > 0; T age. One best age for a shape above 1; at 1 or below a new part is no better than an old one.
 * The curve is flat at its foot: `from` and `to` are where it costs at most 2 % more. Source: Barlow and Proschan 1965, 3 and 4 (memory).
 */
import { gammaBelow } from '../gamma.ts';
import { rootBetween } from '../root.ts';
import { chanceBetween, hazardRate, meanLife, type Weibull } from '../weibull/index.ts';

export type Costs = { readonly planned: number; readonly failure: number };

export type ByAge =
  | {
      readonly kind: 'age';
      readonly at: number;
      readonly rate: number; // money an hour
      readonly never: number; // money an hour when run until it fails
      readonly saved: number; // share of that
      readonly failBefore: number; // share that fails before that age
      readonly from: number;
      readonly to: number; // infinite where running until it fails costs hardly more
    }
  | { readonly kind: 'no help'; readonly never: number; readonly why: string };

const HARDLY_MORE = 1.02;

export function replaceByAge(life: Weibull, { planned, failure }: Costs): ByAge {
  if (!(planned > 0 && failure > 0))
    throw new Error(`replaceByAge: costs must be above 0, got ${planned} planned and ${failure} for a failure`);
  const never = failure / meanLife(life);
  if (!(life.shape > 1))
    return {
      kind: 'no help',
      never,
      why: 'A shape of 1 or below: a new one is no less likely to fail than an old one.',
    };
  if (!(failure > planned))
    return {
      kind: 'no help',
      never,
      why: 'A failure costs no more than a replacement: there is nothing to gain by coming before it.',
    };
  const wanted = planned / (failure - planned);
  const gain = (age: number): number =>
    hazardRate(life, age) * upTime(life, age) - chanceBetween(life, 0, age) - wanted;
  let far = life.scale;
  while (gain(far) < 0 && far < 1e6 * life.scale) far *= 2;
  if (gain(far) < 0)
    return {
      kind: 'no help',
      never,
      why: 'It wears so little that none lives to the age at which replacing would pay.',
    };
  const at = rootBetween(gain, 0, far);
  const rate = costRate(life, { planned, failure }, at);
  const over = (age: number): number => costRate(life, { planned, failure }, age) - HARDLY_MORE * rate;
  let low = at;
  while (over(low) < 0) low /= 2;
  let high = at;
  while (over(high) < 0 && high < 1e6 * life.scale) high *= 2;
  return {
    kind: 'age',
    at,
    rate,
    never,
    saved: 1 - rate / never,
    failBefore: chanceBetween(life, 0, at),
    from: rootBetween(over, low, at),
    to: over(high) > 0 ? rootBetween(over, at, high) : Number.POSITIVE_INFINITY,
  };
}

/** Money an hour when replaced at an age above 0, or on failure before. */
export const costRate = (life: Weibull, { planned, failure }: Costs, age: number): number =>
  (planned + (failure - planned) * chanceBetween(life, 0, age)) / upTime(life, age);

/** ∫ R from 0 to an age: how long one lasts on average that is replaced then. */
export const upTime = ({ shape, scale }: Weibull, age: number): number =>
  (scale / shape) * gammaBelow(1 / shape, (age / scale) ** shape);
