/**
 * How many spares parts of one kind ask for over the hours to come: each failure takes one, which may fail in its turn.
 *
 *   G₁(t) = F(t | age);  Gₙ₊₁(t) = ∫₀ᵗ Gₙ(t - u) dF(u);  P(n failures) = Gₙ(T) - Gₙ₊₁(T)
 *
 * F the life of a new one, T the hours; the counts of several parts add up, and all of it is averaged over the lives that
 * fit record and guess, which parts of a kind have in common. No hours are lost with changing. Without wear the count is that
 * of Poisson. The integral: steps of T/12 and T/24, and what they say of none (Richardson). Source: renewal theory, Cox 1962 (memory).
 */
import { type Posterior, type Spread, spreadOfWeighed, type Weighed } from '../posterior/index.ts';
import type { Weibull } from '../weibull/index.ts';

/** Chance that so many spares are enough, and where 9 of 10 lives that fit have it. */
export type Enough = Omit<Spread, 'middle'> & { readonly mean: number };

export type Exposed = {
  readonly ages: readonly number[]; // of the parts that are on now
  readonly hours: number; // to come, above 0
  readonly most: number; // spares looked at: 0, 1 … most
};

/** One entry for 0, 1, 2 … spares. */
export function enoughSpares(posterior: Posterior, exposed: Exposed): readonly Enough[] {
  const { hours, most } = exposed;
  if (!(hours > 0 && Number.isFinite(hours))) throw new Error(`enoughSpares: hours must be above 0, got ${hours}`);
  const values: Weighed[][] = Array.from({ length: most + 1 }, () => []);
  for (const { shape, scales } of thinned(posterior)) {
    const counts = countsFor(shape, exposed);
    for (const { scale, weight } of scales) {
      let enough = 0;
      counts(scale).forEach((chance, n) => {
        enough = Math.min(1, enough + chance);
        values[n]?.push({ value: enough, weight });
      });
    }
  }
  return values.map(all => {
    const mean = all.reduce((sum, { value, weight }) => sum + weight * value, 0);
    const { low, high } = spreadOfWeighed(all);
    return { mean, low, high };
  });
}

type Weight = { readonly scale: number; readonly weight: number };

/** Every second row and column: sums over the lattice fall off exponentially with the step, and half is fine enough. */
function thinned({
  shapes,
  scales,
  weights,
}: Posterior): readonly { readonly shape: number; readonly scales: readonly Weight[] }[] {
  const top = weights.reduce((most, one) => Math.max(most, one), 0);
  const rows: { readonly shape: number; readonly scales: Weight[] }[] = [];
  let sum = 0;
  for (let row = 0; row < shapes.length; row += 2) {
    const kept: Weight[] = [];
    for (let column = 0; column < scales.length; column += 2) {
      const weight = weights[row * scales.length + column] as number;
      if (!(weight > 1e-8 * top)) continue;
      sum += weight;
      kept.push({ scale: Math.exp(scales[column] as number), weight });
    }
    if (kept.length > 0) rows.push({ shape: Math.exp(shapes[row] as number), scales: kept });
  }
  return rows.map(({ shape, scales: kept }) => ({
    shape,
    scales: kept.map(({ scale, weight }) => ({ scale, weight: weight / sum })),
  }));
}

/** Chance of 0, 1 … most failures of all of them together, for one life. */
export const countsOf = ({ shape, scale }: Weibull, ages: readonly number[], hours: number, most: number) =>
  countsFor(shape, { ages, hours, most })(scale);

const COARSE = 12;
const FINE = 2 * COARSE;

/** The same for lives of one shape, whatever their scale: H grows from an age by ((t + u)^β - t^β) / η^β, its ln by one difference. */
function countsFor(shape: number, { ages, hours, most }: Exposed): (scale: number) => readonly number[] {
  const grownFrom = (age: number): Float64Array =>
    Float64Array.from({ length: FINE + 1 }, (_, j) => lnGrown(shape, age, (j * hours) / FINE));
  const anew = grownFrom(0);
  const onNow = [...new Set(ages)].map(age => ({
    growth: grownFrom(age),
    parts: ages.filter(one => one === age).length,
  }));
  const own = oneOf(most);
  const [next, now] = [new Float64Array(FINE + 1), new Float64Array(FINE + 1)];
  return scale => {
    const lnRate = shape * Math.log(scale);
    const failsBy = (growth: Float64Array, into: Float64Array): Float64Array => {
      for (let j = 0; j <= FINE; j++) into[j] = -Math.expm1(-Math.exp((growth[j] as number) - lnRate));
      return into;
    };
    failsBy(anew, next);
    let counts: Float64Array = Float64Array.from({ length: most + 1 }, (_, n) => (n === 0 ? 1 : 0));
    for (const { growth, parts } of onNow) {
      const each = own(failsBy(growth, now), next);
      for (let part = 0; part < parts; part++) counts = together(counts, each);
    }
    return [...counts];
  };
}

/** ln of (t + u)^β - t^β, without losing small differences. */
const lnGrown = (shape: number, age: number, hours: number): number =>
  age > 0 ? shape * Math.log(age) + Math.log(Math.expm1(shape * Math.log1p(hours / age))) : shape * Math.log(hours);

/** So many of both together. */
const together = (a: Float64Array, b: Float64Array): Float64Array =>
  a.map((_, n) => {
    let sum = 0;
    for (let m = 0; m <= n; m++) sum += (a[n - m] as number) * (b[m] as number);
    return sum;
  });

/**
 * Chance of 0, 1 … most failures of one, from the chances that the one on now, and a new one, fails by each step. Asked
 * thousands of times, so it works in the same room each time.
 */
function oneOf(most: number): (now: Float64Array, anew: Float64Array) => Float64Array {
  const [coarse, fine] = [2, 1].map(every => reached(most, every)) as [Reached, Reached];
  return (now, anew) => {
    const [few, many] = [coarse(now, anew), fine(now, anew)];
    const at = (n: number): number =>
      n === 0 ? 1 : Math.min(1, Math.max(0, (4 * (many[n] as number) - (few[n] as number)) / 3));
    return Float64Array.from({ length: most + 1 }, (_, n) => Math.max(0, at(n) - at(n + 1)));
  };
}

type Reached = (now: Float64Array, anew: Float64Array) => Float64Array;

/** Gₙ(T) for n = 1 … most + 1; of the steps each `every`-th. */
function reached(most: number, every: number): Reached {
  const steps = FINE / every;
  const [fails, ends] = [new Float64Array(steps + 1), new Float64Array(most + 2)];
  const rooms = [new Float64Array(steps + 1), new Float64Array(steps + 1)] as const;
  return (first, anew) => {
    let [now, next]: readonly [Float64Array, Float64Array] = rooms;
    for (let j = 1; j <= steps; j++) {
      fails[j] = (anew[j * every] as number) - (anew[(j - 1) * every] as number); // in each step, of a new one
      now[j] = first[j * every] as number;
    }
    ends.fill(0);
    for (let n = 1; n <= most + 1; n++) {
      const end = now[steps] as number;
      ends[n] = end;
      if (end < 1e-13) break;
      for (let j = 1; j <= steps; j++) {
        let sum = 0;
        for (let i = 1; i <= j; i++)
          sum += (fails[i] as number) * ((now[j - i] as number) + (now[j - i + 1] as number));
        next[j] = sum / 2;
      }
      [now, next] = [next, now];
    }
    return ends;
  };
}
