/** Mulberry32: a small seeded generator, so that every run of the bench weighs the same book. Not for secrets. */
export type Random = { readonly below: (n: number) => number; readonly pick: <T>(of: readonly T[]) => T };

export function seeded(seed: number): Random {
  let state = seed >>> 0;
  const next = () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = state;
    t = Math.imul(t ^ (t >>> 15), t | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  const below = (n: number) => Math.floor(next() * n);
  return {
    below,
    pick: of => {
      const one = of[below(of.length)];
      if (one === undefined) throw new Error('pick: the list must not be empty');
      return one;
    },
  };
}
