/**
 * Fuel by its temperature, and what that does to the mass through a jet.
 *
 *   ρ(t) = ρ15 (1 - β (t - 15 °C));  V(t2) = V (1 + β (t2 - t1));  m ~ √ρ
 * ρ15 density at 15 °C [kg/m³], β 0.00095 [1/K], t temperature [°C], m mass through a jet [kg/s].
 * Valid: petrol, -20 to 50 °C. Source: petrol-expansion.
 */
export const EXPANSION = 0.00095;
const AT_15 = 288.15;

/** Petrol at 15 °C [kg/m³] where nobody weighed it, and what it is sold as; fuel-density. */
export const PETROL = { density: 745, half: 30 } as const;
/** Ethanol [kg/m³]; memory. */
export const ETHANOL_DENSITY = 789;

export const petrolDensity = (at15: number, kelvin: number): number => at15 * (1 - EXPANSION * (kelvin - AT_15));

export const expandedVolume = (volume: number, from: number, to: number): number =>
  volume * (1 + EXPANSION * (to - from));

/** Mass through the same jet at the same pull, now over then [1]. */
export const fuelFlowRatio = (densityThen: number, densityNow: number): number => Math.sqrt(densityNow / densityThen);
