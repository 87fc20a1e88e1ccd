/**
 * Oil and petrol of a mix.
 *
 *   by volume O = V/(R + 1) in V of mix, O = P/R into P of petrol;  by mass Rv = Rm ρo/ρp, then the same
 *   petrol in a litre of mix R/(R + 1);  density of the mix (ρo + R ρp)/(R + 1)
 * O oil, P petrol, V mix [m³], R parts of petrol to one of oil by volume, Rm by mass [1], ρo and ρp density [kg/m³].
 * Valid: volumes add, as they do for oil in petrol; both at one temperature. Source: premix-shares.
 */

/** Oil in so much mix [m³]. */
export const oilInMix = (mix: number, ratio: number): number => mix / (ratio + 1);
/** Oil for so much petrol [m³]. */
export const oilForPetrol = (petrol: number, ratio: number): number => petrol / ratio;
/** Petrol in a litre of mix, 0 to 1 [1]. */
export const petrolShare = (ratio: number): number => ratio / (ratio + 1);

/** Ratio by volume of one that is by mass, and back. */
export const volumeRatio = (byMass: number, d: Densities): number => (byMass * d.oil) / d.petrol;
export const massRatio = (byVolume: number, d: Densities): number => (byVolume * d.petrol) / d.oil;

export type Densities = { readonly petrol: number; readonly oil: number }; // kg/m³

/** Density of the mix [kg/m³]. */
export const mixDensity = (ratio: number, { petrol, oil }: Densities): number => (oil + ratio * petrol) / (ratio + 1);

/**
 * Petrol through the same jet when the ratio changes, now over then [1]: under 1 is leaner. More oil is less petrol in each
 * litre, so leaner; its thicker mix adds to that and is not in it. Source: premix-leaning.
 */
export const petrolShareRatio = (then: number, now: number): number => petrolShare(now) / petrolShare(then);

/** Petrol and two-stroke oil where nobody weighed them [kg/m³]: common practice and memory (0.86 to 0.97 kg/l). */
export const USUAL: Densities = { petrol: 745, oil: 900 };
