/**
 * A chance as a mechanic hears it: how many of so many weekends like this one, both sides of it, and from where it is known.
 *
 * One denominator: 100; 1,000 below 1 %, 10,000 below 0.1 %. One figure is enough. Never "1 in so many", never a ratio of
 * risks, never a word in place of the number. Natural frequencies: Gigerenzer and Hoffrage 1995, Psychological Review
 * 102:684 (memory); the rest common practice. A low number permits nothing: fitness is judged elsewhere.
 */
import type { Chance } from './chance.ts';
import type { Posterior } from './posterior.ts';

export type ChanceWords = {
  readonly of: 100 | 1000 | 10_000;
  readonly short: string; // '3 in 100, between 1 and 10'
  readonly long: string;
  readonly basis: string;
};

/** @param times what is counted: 'weekends like this one' */
export function chanceWords(chance: Chance, from: Posterior, times = 'weekends like this one'): ChanceWords {
  const { of, mean, wide } = told(chance);
  const rest = of - Math.max(1, Math.min(of - 1, countOf(chance.mean, of)));
  return {
    of,
    short: chanceShort(chance),
    long:
      `Of ${shown(of)} ${times} with a part this old, about ${mean} would see it fail, about ${shown(rest)} would not; ` +
      `the number could lie ${wide} of ${shown(of)}.`,
    basis: basisWords(from),
  };
}

/** What is said of a chance, from a posterior or made of several. */
export type ChanceRange = Pick<Chance, 'mean' | 'low' | 'high'>;

/** '3 in 100, between 1 and 10' */
export function chanceShort(range: ChanceRange): string {
  const { of, mean, wide } = told(range);
  return `${mean} in ${shown(of)}, ${wide}`;
}

function told(range: ChanceRange): { readonly of: 100 | 1000 | 10_000; readonly mean: string; readonly wide: string } {
  const about = oneFigure(range.mean); // 0.996 in 100 is told as 1 in 100, and not as 10 in 1,000
  const of = about >= 0.01 ? 100 : about >= 0.001 ? 1000 : 10_000;
  const [mean, low, high] = [range.mean, range.low, range.high].map(p => many(p, of)) as [string, string, string];
  return {
    of,
    mean,
    wide: low !== high ? `between ${low} and ${high}` : /^\d/.test(low) ? `close to ${low}` : `mostly ${low}`,
  };
}

/** '7 on record, 2 of them failed', and how much of the number is the guess. */
export function basisWords({ basis, units, failures, prior }: Posterior): string {
  const record = `${shown(units)} on record, ${failures === 0 ? 'none' : shown(failures)} of them failed`;
  if (basis === 'starting guess') return `Only our starting guess: nothing on record yet. Guess: ${prior.source}.`;
  if (basis === 'mostly starting guess') return `Mostly our starting guess: ${record}. Guess: ${prior.source}.`;
  return `From your own record: ${record}; starting guess: ${prior.source}.`;
}

const oneFigure = (x: number): number => Number(x.toPrecision(1));
const shown = (n: number): string => n.toLocaleString('en-GB');

/** One figure of the smaller side: 4 of 100 is told as finely as 96. */
const countOf = (p: number, of: number): number => (p <= 0.5 ? oneFigure(p * of) : of - oneFigure((1 - p) * of));

function many(p: number, of: number): string {
  const count = countOf(p, of);
  if (count < 1) return p > 0 ? 'fewer than 1' : '0';
  // Never said to be certain.
  return count > of - 1 && p < 1 ? `more than ${shown(of - 1)}` : shown(count);
}

/**
 * Nothing has failed in n events: the share per event that 19 of 20 times would have shown itself by now.
 *
 *   p = 1 - 0.05^(1/n), about 3/n
 *
 * n events [1], 1 or more, else throws. Source: Hanley and Lippman-Hand 1983, JAMA 249:1743 (memory).
 */
export function atMostAfter(cleanEvents: number): number {
  if (!(cleanEvents >= 1)) throw new Error(`atMostAfter: cleanEvents must be 1 or more, got ${cleanEvents}`);
  return -Math.expm1(Math.log(0.05) / cleanEvents);
}
