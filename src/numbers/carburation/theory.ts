/**
 * What air does to the mixture of a carburettor, and the jet that keeps the mixture as it was.
 *
 *   dp = ½ ρ v²;  mf = Cd A √(2 ρf dp);  ma ~ ρ v   so   F/A ~ A √(ρf/ρ), and A1/A0 = √(ρ1/ρ0), d1/d0 = (ρ1/ρ0)^¼
 * dp pressure that lifts the fuel [Pa], ρ density of the air [kg/m³], v its speed in the venturi [m/s], mf and ma mass flow
 * of fuel and air [kg/s], A area and d bore of the jet [m², m], ρf density of the fuel [kg/m³], F/A fuel over air [1].
 * Fuel is needed for the oxygen, which goes with the dry air in it, and lifted by all of the air:
 *   A1/A0 = (ρd1/ρd0) √(ρ0/ρ1)
 * ρd mass of dry air in a cubic metre [kg/m³].
 * Valid: same engine speed and throttle, main jet alone metering. Left out: Reynolds number of the jet, air bleeds, float
 * level, pulsation, ram of the air box. Source: jet-theory; dry air derived.
 */

/** Air of a moment. Without `dry`, moisture counts as density only. */
export type JetAir = { readonly density: number; readonly dry?: number }; // kg/m³

/** Fuel over air with the same jet, over what it was: above 1 richer [1]. `density`: now over then. */
export const mixtureRatio = (density: number): number => density ** -0.5;

/** Area of the jet, now over then, that keeps fuel to oxygen as it was [1]. Also the ratio of numbers by flow. */
export function areaRatio(was: JetAir, now: JetAir): number {
  const density = now.density / was.density;
  const both = was.dry !== undefined && now.dry !== undefined;
  const oxygen = both ? (now.dry ?? Number.NaN) / (was.dry ?? Number.NaN) : density;
  return oxygen / Math.sqrt(density);
}

/** The same for the bore of the jet [1]. */
export const boreRatio = (area: number): number => Math.sqrt(area);

/**
 * The paddock rule: the number on the jet goes with the density of the air, whatever the number means. Two to four
 * times the step of theory, so the leaner answer in thinner air. Source: jet-linear, common practice.
 */
export const paddockRatio = (density: number): number => density;

/** Exponent of theory for a number by bore and for one by flow or area [1]. */
export const THEORY = { diameter: 0.25, flow: 0.5 } as const;
/** Exponent of the paddock rule [1]. */
export const PADDOCK = 1;
