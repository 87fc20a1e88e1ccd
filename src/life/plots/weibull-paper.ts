/**
 * What is drawn on Weibull paper: the own failures as points, the posterior as a line with its band. On this paper every
 * Weibull life is a straight line, x = ln age, y = ln(-ln(1 - F)). The line is the mean of all lives that fit, so it may
 * bend; it is never drawn through the points by eye.
 */
import type { Life } from '../life.ts';
import { chanceOver, type Posterior } from '../posterior/index.ts';
import { type Ranked, rankedFailures } from './ranks.ts';

export type PaperPoint = { readonly x: number; readonly y: number };
export type Tick = { readonly at: number; readonly text: string };
export type WeibullPaper = {
  readonly points: readonly (PaperPoint & Ranked)[]; // own record
  /** Share failed by each age: mean and where 9 lives of 10 lie. */
  readonly line: readonly (PaperPoint & {
    readonly age: number;
    readonly share: number;
    readonly low: number; // y
    readonly high: number;
  })[];
  readonly across: readonly Tick[]; // ages
  readonly up: readonly Tick[]; // shares failed
};

const SHARES = [0.001, 0.01, 0.05, 0.1, 0.2, 0.5, 0.632, 0.9, 0.99];

/** y of a share failed; share in (0, 1). */
export const heightOf = (share: number): number => Math.log(-Math.log1p(-share));

/** @param ages from and to which it is drawn, both above 0 */
export function weibullPaper(
  lives: readonly Life[],
  posterior: Posterior,
  ages: { readonly from: number; readonly to: number },
  steps = 24,
): WeibullPaper {
  if (!(ages.from > 0 && ages.to > ages.from))
    throw new Error(`weibullPaper: ages must go up from above 0, got ${ages.from} to ${ages.to}`);
  const line = Array.from({ length: steps + 1 }, (_, n) => {
    const age = ages.from * (ages.to / ages.from) ** (n / steps);
    const { mean, low, high } = chanceOver(posterior, { age: 0, hours: age });
    return { age, share: mean, x: Math.log(age), y: heightOf(mean), low: heightOf(low), high: heightOf(high) };
  });
  return {
    points: rankedFailures(lives).map(one => ({ ...one, x: Math.log(one.age), y: heightOf(one.share) })),
    line,
    across: roundAges(ages.from, ages.to).map(age => ({ at: Math.log(age), text: String(age) })),
    up: SHARES.map(share => ({ at: heightOf(share), text: `${Number((share * 100).toPrecision(3))} %` })),
  };
}

/** 1, 2 and 5 of each power of ten between the ends. */
function roundAges(from: number, to: number): readonly number[] {
  const first = Math.floor(Math.log10(from));
  const last = Math.ceil(Math.log10(to));
  return Array.from({ length: last - first + 1 }, (_, n) => first + n)
    .flatMap(power => [1, 2, 5].map(digit => Number((digit * 10 ** power).toPrecision(1))))
    .filter(age => age >= from && age <= to);
}
