/**
 * How often something happens over one event, from a guess and from the record of so many events: guess and record weighed together.
 *
 *   λ ~ Gamma(a, a/p);  after k times in n events: Gamma(a + k, a/p + n), mean (a + k)/(a/p + n)
 *   p: the guess, its mean [1 an event]; a: how sure it is, as so many times it would have been seen [1]; k, n [1]
 *
 * Valid where p is small, so that twice in one event need not be thought of; no rate is told above 1. The band holds nine of ten.
 * Source: the gamma as the conjugate of a Poisson count, Gelman et al., Bayesian Data Analysis, 3rd edition 2013, section 2.6 (memory).
 */
import { gamma, gammaBelow } from './gamma.ts';
import { rootBetween } from './root.ts';

export type Rate = {
  readonly mean: number;
  readonly low: number; // 5 % lie below
  readonly high: number; // 5 % lie above
  readonly ownShare: number; // of what is known, how much is the record; 0 to 1
};

/** Throws unless guess and sureness are above 0, and times and events 0 or more. */
export function rateOver(
  guess: { readonly mean: number; readonly sureAs: number },
  record: { readonly times: number; readonly events: number },
): Rate {
  for (const [name, value] of Object.entries(guess))
    if (!(value > 0 && value < Number.POSITIVE_INFINITY))
      throw new Error(`rateOver: ${name} must be above 0, got ${value}`);
  for (const [name, value] of Object.entries(record))
    if (!(value >= 0 && value < Number.POSITIVE_INFINITY))
      throw new Error(`rateOver: ${name} must be 0 or more, got ${value}`);
  const shape = guess.sureAs + record.times;
  const guessed = guess.sureAs / guess.mean;
  const events = guessed + record.events;
  const at = (share: number): number => Math.min(1, gammaScore(share, shape) / events);
  return {
    mean: Math.min(1, shape / events),
    low: at(0.05),
    high: at(0.95),
    ownShare: record.events / events,
  };
}

/** x below which the share p of a gamma of that shape and of scale 1 lies. */
function gammaScore(p: number, shape: number): number {
  const whole = gamma(shape);
  let high = shape + 1;
  while (gammaBelow(shape, high) / whole < p) high *= 2;
  return rootBetween(x => gammaBelow(shape, x) / whole - p, 0, high);
}
