/**
 * How failures of a repaired unit come with its age: more often, or less (Crow 1974; MIL-HDBK-189, memory).
 *
 *   intensity λβt^(β-1), expected failures λt^β;   one unit: β = n / Σ ln(T/t), λ = n/T^β
 *   several: n/β - n Σ T^β ln T / Σ T^β + Σ ln t = 0, λ = n / Σ T^β
 *
 * t age of the unit at each failure, T age to which it was watched, n failures. β below 1 less often, above 1 more often.
 * For engine or brake system between overhauls, repaired only back to what it was; the gaps between failures of such a
 * unit are no lives and must not go into a Weibull fit. Watched to a failure, that one fixes T and is not counted in the sums.
 */
import { erlangScore } from '../erlang.ts';
import { rootBetween } from '../root.ts';

export type Watched = {
  readonly failures: readonly number[]; // ages, rising; several at one age may be
  readonly until: number; // age up to which it was watched
};

export type PowerLaw = {
  readonly kind: 'power law';
  readonly failures: number;
  readonly shape: number; // β, most likely
  readonly rate: number; // λ [failures / age^β]
  /** Of one unit: with its bias taken out, none for so few that nothing is left. */
  readonly unbiased?: { readonly shape: number; readonly rate: number };
  readonly intensity: number; // failures an hour at the longest age watched
};
export type NoTrend = { readonly kind: 'no trend'; readonly why: string };

export type EndedBy = 'time' | 'failure';

/** One unit. `by` failure: it was watched up to its last failure. Throws on ages out of order or beyond `until`. */
export function powerLaw(unit: Watched, by: EndedBy = 'time'): PowerLaw | NoTrend {
  mustBeWatched('powerLaw', unit);
  const { failures, until } = unit;
  const n = failures.length;
  const sum = logSum(unit);
  if (n === 0 || !(sum > 0))
    return { kind: 'no trend', why: 'No failure before the end of the watch: no trend to see.' };
  const shape = n / sum;
  const left = by === 'failure' ? n - 2 : n - 1;
  return {
    kind: 'power law',
    failures: n,
    shape,
    rate: n / until ** shape,
    ...(left > 0 && { unbiased: { shape: left / sum, rate: n / until ** (left / sum) } }),
    intensity: (n * shape) / until,
  };
}

/** Several units of one kind, each watched from new to its own age; pooled only where they live alike. */
export function powerLawOf(units: readonly Watched[]): PowerLaw | NoTrend {
  for (const unit of units) mustBeWatched('powerLawOf', unit);
  const longest = units.reduce((most, { until }) => Math.max(most, until), 0);
  const n = units.reduce((sum, { failures }) => sum + failures.length, 0);
  const logs = units.flatMap(({ failures }) => failures.map(age => Math.log(age / longest)));
  const sum = logs.reduce((a, b) => a + b, 0);
  if (n === 0 || !(sum < 0))
    return { kind: 'no trend', why: 'No failure before the end of the watch: no trend to see.' };
  const slope = (shape: number): number => {
    let [s0, s1] = [0, 0];
    for (const { until } of units) {
      const x = Math.log(until / longest);
      s0 += Math.exp(shape * x);
      s1 += Math.exp(shape * x) * x;
    }
    return n / shape - (n * s1) / s0 + sum;
  };
  let high = 1;
  while (slope(high) > 0 && high < 1e6) high *= 2;
  const shape = rootBetween(slope, 1e-6, high);
  const rate = n / units.reduce((all, { until }) => all + until ** shape, 0);
  return { kind: 'power law', failures: n, shape, rate, intensity: rate * shape * longest ** (shape - 1) };
}

/** Limits of β of one unit: 2nβ/β̂ is chi-square with 2n (2n - 2 when ended by a failure) degrees of freedom. Exact. */
export function shapeLimits(unit: Watched, by: EndedBy, confidence: number): { low: number; high: number } | undefined {
  const n = unit.failures.length;
  const waits = by === 'failure' ? n - 1 : n;
  const sum = logSum(unit);
  if (waits < 1 || !(sum > 0)) return undefined;
  const at = (p: number): number => erlangScore(p, waits) / sum;
  return { low: at((1 - confidence) / 2), high: at((1 + confidence) / 2) };
}

export const logSum = ({ failures, until }: Watched): number =>
  failures.reduce((sum, age) => sum + Math.log(until / age), 0);

export function mustBeWatched(who: string, { failures, until }: Watched): void {
  if (!(until > 0 && Number.isFinite(until))) throw new Error(`${who}: until must be above 0, got ${until}`);
  failures.forEach((age, n) => {
    if (!(age > 0 && age <= until))
      throw new Error(`${who}: failures[${n}] must lie between 0 and the end of the watch, ${until}, got ${age}`);
    const before = failures[n - 1] ?? 0;
    if (age < before)
      throw new Error(`${who}: failures[${n}] must be ${before} or more, as the one before, got ${age}`);
  });
}
