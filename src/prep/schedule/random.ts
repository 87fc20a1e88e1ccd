/**
 * Chances from a seed, the same on every machine: a 32-bit counter through a mixing function. Not for secrets.
 * Source: the finaliser of Appleby's MurmurHash3, public domain; the constants as printed there (memory).
 */
export type Chance = {
  /** At least 0, less than 1. */
  readonly next: () => number;
  /** A whole number from 0 to `n` - 1. */
  readonly below: (n: number) => number;
};

export function chanceFrom(seed: number): Chance {
  let state = Math.imul(seed | 0, 0x9e3779b1) >>> 0;
  const next = (): number => {
    state = (state + 0x9e3779b9) >>> 0;
    let h = state;
    h = Math.imul(h ^ (h >>> 16), 0x85ebca6b);
    h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35);
    return ((h ^ (h >>> 16)) >>> 0) / 2 ** 32;
  };
  return { next, below: n => Math.floor(next() * n) };
}
