/** What besides the air asks for another jet: fuel by its temperature, oil in the mix, ethanol in the petrol. */
import { petrolShareRatio } from '../premix/index.ts';
import { ETHANOL_DENSITY, fuelFlowRatio, PETROL, petrolDensity } from './fuel.ts';
import { blendRatio, ethanolByMass } from './stoichiometry.ts';

export type Fuel = {
  readonly kelvin?: number; // in the tank
  readonly oil?: number; // parts of petrol to one of oil [1]
  readonly ethanol?: number; // share of the petrol by volume, 0 to 1
};

/**
 * Area of the jet, now over then, for what the fuel asks [1].
 *   need = √(ρ0/ρ1) × (R0/(R0+1)) / (R1/(R1+1)) × AFR0/AFR1
 * ρ density of the petrol [kg/m³], R mixing ratio [1], AFR air a fuel needs [kg/kg]. What is not known of both times counts
 * as unchanged. Valid: small changes; viscosity, which adds to that of oil, and cooling by ethanol left out.
 * Sources: petrol-expansion, premix-leaning, combustion-balance.
 */
export function fuelNeed(then: Fuel, now: Fuel): number {
  const flow = both(then.kelvin, now.kelvin, (a, b) =>
    fuelFlowRatio(petrolDensity(PETROL.density, a), petrolDensity(PETROL.density, b)),
  );
  const petrol = both(then.oil, now.oil, petrolShareRatio);
  const air = both(then.ethanol, now.ethanol, (a, b) => airNeed(b) / airNeed(a));
  return 1 / (flow * petrol * air);
}

const both = (
  then: number | undefined,
  now: number | undefined,
  ratio: (then: number, now: number) => number,
): number => (then === undefined || now === undefined ? 1 : ratio(then, now));

/** Air that petrol with this share of ethanol by volume needs [kg/kg]. */
export const airNeed = (ethanol: number): number => blendRatio(ethanolByMass(ethanol, ETHANOL_DENSITY, PETROL.density));
