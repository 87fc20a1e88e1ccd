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
import { chanceBetween, type Weibull } from '../weibull/index.ts';

/** Chance that so many spares are enough, and where 9 of 10 lives that fit have it. */
export type Enough = Omit<Spread, 'middle'> & { readonly mean: number };

export type Exposed = {
  readonly ages: readonly number[]; // of the parts that are on now
  readonly hours: number; // to come, above 0
  readonly most: number; // spares looked at: 0, 1 … most
};

/** One entry for 0, 1, 2 … spares. */
export function enoughSpares(posterior: Posterior, { ages, hours, most }: Exposed): readonly Enough[] {
  if (!(hours > 0 && Number.isFinite(hours))) throw new Error(`enoughSpares: hours must be above 0, got ${hours}`);
  const values: Weighed[][] = Array.from({ length: most + 1 }, () => []);
  for (const { life, weight } of thinned(posterior)) {
    const counts = countsOf(life, ages, hours, most);
    let enough = 0;
    for (let n = 0; n <= most; n++) {
      enough = Math.min(1, enough + (counts[n] as number));
      values[n]?.push({ value: enough, weight });
    }
  }
  return values.map(all => {
    const mean = all.reduce((sum, { value, weight }) => sum + weight * value, 0);
    const { low, high } = spreadOfWeighed(all);
    return { mean, low, high };
  });
}

/** Every second row and column: sums over the lattice fall off exponentially with the step, and half is fine enough. */
function thinned({
  shapes,
  scales,
  weights,
}: Posterior): readonly { readonly life: Weibull; readonly weight: number }[] {
  const kept: { readonly life: Weibull; readonly weight: number }[] = [];
  const top = weights.reduce((most, one) => Math.max(most, one), 0);
  let sum = 0;
  for (let row = 0; row < shapes.length; row += 2)
    for (let column = 0; column < scales.length; column += 2) {
      const weight = weights[row * scales.length + column] as number;
      if (!(weight > 1e-8 * top)) continue;
      sum += weight;
      kept.push({
        life: { shape: Math.exp(shapes[row] as number), scale: Math.exp(scales[column] as number) },
        weight,
      });
    }
  return kept.map(({ life, weight }) => ({ life, weight: weight / sum }));
}

/** Chance of 0, 1 … most failures of all of them together, for one life. */
export function countsOf(life: Weibull, ages: readonly number[], hours: number, most: number): readonly number[] {
  let counts = Float64Array.from({ length: most + 1 }, (_, n) => (n === 0 ? 1 : 0));
  const known = new Map<number, Float64Array>();
  for (const age of ages) {
    const own = known.get(age) ?? ofOne(life, age, hours, most);
    known.set(age, own);
    const sum = new Float64Array(most + 1);
    for (let n = 0; n <= most; n++)
      for (let m = 0; m <= n; m++) sum[n] = (sum[n] as number) + (counts[n - m] as number) * (own[m] as number);
    counts = sum;
  }
  return [...counts];
}

const COARSE = 12;

function ofOne(life: Weibull, age: number, hours: number, most: number): Float64Array {
  const [coarse, fine] = [COARSE, 2 * COARSE].map(steps => reached(life, age, hours, most, steps)) as [
    Float64Array,
    Float64Array,
  ];
  const at = (n: number): number =>
    n === 0 ? 1 : Math.min(1, Math.max(0, (4 * (fine[n] as number) - (coarse[n] as number)) / 3));
  return Float64Array.from({ length: most + 1 }, (_, n) => Math.max(0, at(n) - at(n + 1)));
}

/** Gₙ(T) for n = 1 … most + 1. */
function reached(life: Weibull, age: number, hours: number, most: number, steps: number): Float64Array {
  const step = hours / steps;
  const fails = new Float64Array(steps + 1);
  let now = new Float64Array(steps + 1);
  for (let j = 1; j <= steps; j++) {
    fails[j] = chanceBetween(life, 0, j * step) - chanceBetween(life, 0, (j - 1) * step);
    now[j] = chanceBetween(life, age, j * step);
  }
  const ends = new Float64Array(most + 2);
  for (let n = 1; n <= most + 1; n++) {
    const end = now[steps] as number;
    ends[n] = end;
    if (end < 1e-13) break;
    const next = new Float64Array(steps + 1);
    for (let j = 1; j <= steps; j++) {
      let sum = 0;
      for (let i = 1; i <= j; i++) sum += (fails[i] as number) * ((now[j - i] as number) + (now[j - i + 1] as number));
      next[j] = sum / 2;
    }
    now = next;
  }
  return ends;
}
