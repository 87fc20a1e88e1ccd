/**
 * The chance that this very part fails over the hours to come, having reached its age.
 *
 *   F = E[1 - e^-(H(t + dt) - H(t))]  over the lives that fit record and guess, this part's own t hours in the record
 *
 * t age, dt hours to come, in one unit. The same as 1 - E[R(t + dt)] / E[R(t)] with the part left out of the record. The band holds the
 * chance of 9 lives of 10 that fit.
 */
import { chanceBetween } from '../weibull/index.ts';
import { expected, lastingOf, type Posterior } from './posterior.ts';
import { chanceQuantiles } from './quantile.ts';

export type Chance = {
  readonly kind: 'chance';
  readonly mean: number; // the one to say
  readonly low: number; // 5 of 100 lives lie below
  readonly middle: number;
  readonly high: number; // 5 of 100 lie above
};

export type Ahead = { readonly age: number; readonly hours: number };

/** For a part whose age is in the record the posterior was made from. Age 0 or more, hours above 0; else throws. */
export function chanceOver(posterior: Posterior, { age, hours }: Ahead): Chance {
  mustBeAhead('chanceOver', age, hours);
  // ln of (t + dt)^β - t^β for a shape; the hazard is that over η^β.
  const lnGrowth = (shape: number): number =>
    age > 0 ? shape * Math.log(age) + Math.log(Math.expm1(shape * Math.log1p(hours / age))) : shape * Math.log(hours);
  const [low = 0, middle = 0, high = 1] = chanceQuantiles(posterior, [0.05, 0.5, 0.95], lnGrowth);
  return { kind: 'chance', mean: expected(posterior, life => chanceBetween(life, age, hours)), low, middle, high };
}

/**
 * The same for a part that is not in the record (a new one), or for this one, in the record `from` hours old, at an age it
 * has yet to reach: its outliving the age counts as seen.
 */
export function chanceIfReached(
  posterior: Posterior,
  { age, hours, from = 0 }: Ahead & { readonly from?: number },
): number {
  mustBeAhead('chanceIfReached', age, hours);
  const lasting = lastingOf(posterior);
  return 1 - lasting(age + hours, from) / lasting(age, from);
}

function mustBeAhead(who: string, age: number, hours: number): void {
  if (!(age >= 0 && Number.isFinite(age))) throw new Error(`${who}: age must be 0 or more, got ${age}`);
  if (!(hours > 0 && Number.isFinite(hours))) throw new Error(`${who}: hours must be above 0, got ${hours}`);
}
