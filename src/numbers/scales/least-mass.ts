/** Is it heavy enough at the end of the race? What burns off, and what the scales may be off by. */
import { acceptance, chanceInside } from '../conformance.ts';

/** A mass and its standard uncertainty [kg]. */
export type Weighed = { readonly mass: number; readonly u: number };

/**
 * Mass when the flag falls.  E = W - V ρ;  u² = uW² + (ρ uV)² + (V uρ)².
 * W mass before the run [kg]; V fuel that will burn [m³]; ρ its density [kg/m³]; u standard uncertainties. Valid where
 * nothing else is lost; a dropped part, dry clothes and worn tyres are not in it. Source: fuel-density.
 */
export function massAtTheEnd(
  before: Weighed,
  fuel: { readonly volume: number; readonly uVolume: number; readonly density: number; readonly uDensity: number },
): Weighed {
  return {
    mass: before.mass - fuel.volume * fuel.density,
    u: Math.hypot(before.u, fuel.density * fuel.uVolume, fuel.volume * fuel.uDensity),
  };
}

/** Least reading that proves a least mass: limit + z u [kg]. Source: jcgm-106, 8.3. */
export const leastReading = (limit: number, u: number, chance: number): number =>
  acceptance({ min: limit }, u, chance).min ?? Number.NaN;

/** The chance that the true mass is the limit or more. Source: jcgm-106, 7.3. */
export const chanceHeavyEnough = ({ mass, u }: Weighed, limit: number): number => chanceInside(mass, u, { min: limit });
