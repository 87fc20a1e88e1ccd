/** How far the preload can be from what was meant, by the way a bolt is tightened. */

export type Method = 'torque wrench' | 'turn of nut' | 'stretch' | 'feel';
export const METHODS = ['torque wrench', 'turn of nut', 'stretch', 'feel'] as const satisfies readonly Method[];

/** Half width of the scatter [1]. Torque wrench: preload-scatter (read); turn of nut, stretch: a weak source; feel: none. */
export function scatterOf(method: Method, oiled: boolean): number | undefined {
  if (method === 'torque wrench') return oiled ? 0.25 : 0.35;
  if (method === 'turn of nut') return 0.15;
  if (method === 'stretch') return 0.05;
  return undefined; // by feel: no preload can be defended
}

/**
 * Least and largest preload.  Fmin = (1 - Γ) F;  Fmax = (1 + Γ) F
 * F preload meant [N]; Γ scatter [1], in [0, 1). Slip is checked with the least, strength with the largest.
 * Source: preload-scatter.
 */
export function preloadRange(preload: number, scatter: number): { readonly min: number; readonly max: number } {
  if (!(scatter >= 0 && scatter < 1))
    throw new Error(`preloadRange: scatter must be from 0 to below 1, got ${scatter}`);
  return { min: (1 - scatter) * preload, max: (1 + scatter) * preload };
}

/** The same as the guideline says it: Fmin = Fmax / αA, αA the tightening factor, 1 or more. Source: vdi-2230. */
export function leastByTighteningFactor(largest: number, factor: number): number {
  if (!(factor >= 1)) throw new Error(`leastByTighteningFactor: factor must be 1 or more, got ${factor}`);
  return largest / factor;
}
