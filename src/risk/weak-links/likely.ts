/** A chance with its band and in words. */
import { type ChanceRange, chanceShort } from '../../life/index.ts';
import type { Likely } from './model.ts';

export const likelyOf = (range: ChanceRange, basis: string): Likely => ({
  chance: range.mean,
  low: range.low,
  high: range.high,
  words: chanceShort(range),
  basis,
});

/** A starting guess that is trusted to a factor each way; a chance never passes 1. */
export const guessed = (chance: number, factor: number, basis: string): Likely =>
  likelyOf({ mean: chance, low: chance / factor, high: Math.min(1, chance * factor) }, basis);

/** 'from 4 to 2 of 1,000': two chances by one denominator, that of the smaller one that still shows. */
export function fromTo(from: number, to: number): string {
  const about = Number(from.toPrecision(2)); // as it is told: 1 of 100, and not 10 of 1,000
  const of = about >= 0.01 ? 100 : about >= 0.001 ? 1000 : 10_000;
  return `from ${figure(from * of)} to ${figure(to * of)} of ${of.toLocaleString('en-GB')}`;
}

/** Two figures: with one, what a small change buys would not show. */
const figure = (x: number): string =>
  x > 0 && x < 0.1 ? 'fewer than 0.1' : Number(x.toPrecision(2)).toLocaleString('en-GB');
