/** A chain of lengths (or of anything that adds): its sum and how far off it can be. */
export type Link = {
  readonly times: number; // c, usually 1 or -1; 2 for one measured length used on both sides
  readonly size: number; // X [SI]
  readonly half?: number; // limits ± a [SI]: nothing is known but that it lies between
  readonly standard?: number; // standard uncertainty u [SI], where one is known
  readonly freedom?: number; // degrees of freedom ν of `standard`; limits are taken as exact
};

/**
 * The sum of a chain.  Y = Σ c X.  c coefficient [1]; X size [SI unit of the chain]. Valid always.
 * Source: stack-up.
 */
export const sum = (links: readonly Link[]): number => links.reduce((total, l) => total + l.times * l.size, 0);

/**
 * The furthest the sum can be off when every link is at its limit.  T = Σ |c| a.  a limit [SI], 3 u where a standard
 * uncertainty stands instead (common practice). Valid always. Source: stack-up.
 */
export const worstCase = (links: readonly Link[]): number =>
  links.reduce((total, l) => total + Math.abs(l.times) * limit(l), 0);

/**
 * The usual spread when limits are met independently.  T = √Σ (c a)².  Valid for centred, independent links whose
 * limits mean the same number of standard deviations. Source: stack-up.
 */
export const rootSumSquare = (links: readonly Link[]): number => Math.hypot(...links.map(l => l.times * limit(l)));

const limit = (l: Link): number => (l.half ?? 0) + 3 * (l.standard ?? 0);

/** Standard uncertainty of limits ± a.  u = a / √3.  Valid when nothing says where between them. Source: jcgm-100, 4.3.7. */
export const rectangular = (half: number): number => half / Math.sqrt(3);

/**
 * Combined standard uncertainty.  u² = Σ (c u)², and ν = u⁴ / Σ ((c u)⁴ / ν).  u standard uncertainty [SI], ν degrees
 * of freedom [1], infinite where a limit is taken as exact. Valid for independent links, a nearly linear sum.
 * Source: jcgm-100, 5.1.2 and G.4.1 (Welch-Satterthwaite).
 */
export function combine(links: readonly Link[]): { readonly u: number; readonly freedom: number } {
  const parts = links.flatMap(l => [
    { u: Math.abs(l.times) * rectangular(l.half ?? 0), freedom: Number.POSITIVE_INFINITY },
    { u: Math.abs(l.times) * (l.standard ?? 0), freedom: l.freedom ?? Number.POSITIVE_INFINITY },
  ]);
  const u = Math.hypot(...parts.map(p => p.u));
  const share = u === 0 ? 0 : parts.reduce((total, p) => total + (p.u / u) ** 4 / p.freedom, 0);
  return { u, freedom: 1 / share };
}
