/** Where 9 lives of 10 that fit have something that is worked out of a life: an age, a cost, a chance. */
import type { Weibull } from '../weibull/index.ts';
import type { Lattice } from './density.ts';

export type Spread = { readonly low: number; readonly middle: number; readonly high: number };

/** 5, 50 and 95 % points over the lives of the lattice: good to the two figures that are shown. */
export function spreadOf({ shapes, scales, weights }: Lattice, of: (life: Weibull) => number): Spread {
  const columns = scales.length;
  const all: Weighed[] = [];
  for (let n = 0; n < weights.length; n++) {
    const weight = weights[n] as number;
    if (!(weight > NOTHING)) continue;
    const life = {
      shape: Math.exp(shapes[Math.floor(n / columns)] as number),
      scale: Math.exp(scales[n % columns] as number),
    };
    all.push({ value: of(life), weight });
  }
  return spreadOfWeighed(all);
}
const NOTHING = 1e-12;

export type Weighed = { readonly value: number; readonly weight: number };

/** The same of values with weights that add up to 1; each value stands for the middle of its weight. */
export function spreadOfWeighed(all: readonly Weighed[]): Spread {
  const sorted = all.toSorted((a, b) => a.value - b.value);
  const at = (rank: number): number => {
    let [below, before] = [0, sorted[0]];
    for (const one of sorted) {
      const [from, to] = [below - (before?.weight ?? 0) / 2, below + one.weight / 2];
      if (to >= rank && before) {
        const part = to > from ? Math.min(1, Math.max(0, (rank - from) / (to - from))) : 1;
        return one.value === before.value ? one.value : before.value + part * (one.value - before.value);
      }
      below += one.weight;
      before = one;
    }
    return sorted.at(-1)?.value ?? Number.NaN;
  };
  return { low: at(0.05), middle: at(0.5), high: at(0.95) };
}
