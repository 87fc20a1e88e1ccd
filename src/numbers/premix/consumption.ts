/**
 * Fuel by theory: only to see whether a record can be true.
 *
 *   m = P x b;  V = m/ρ;  b of a charge: m = Vh n δ ρd/AFR, b = m/P
 * m fuel [kg/s], P peak power [W], x mean over peak power [1], b consumption for the work [kg/J], V [m³/s], ρ density of the
 * mix [kg/m³], Vh swept volume [m³], n turns a second [1/s], δ delivery ratio on the dry air outside [1], ρd its density
 * [kg/m³], AFR air over fuel by mass [1]. 1 lb/(hp h) = 0.45359237 kg / (745.699872 W × 3600 s).
 * Valid: full throttle, one charge a turn; the share of power on a track is a guess. Sources: fuel-work, fuel-balance.
 */
const POUND_PER_HORSEPOWER_HOUR = 0.45359237 / (4.4482216152605 * 550 * 0.3048 * 3600);

/** kg/J from pounds a horsepower hour. */
export const fromPounds = (lbPerHpHour: number): number => lbPerHpHour * POUND_PER_HORSEPOWER_HOUR;
/** g/(kW h), as fuel consumption is printed, from kg/J. */
export const inGrams = (kgPerJoule: number): number => kgPerJoule * 3.6e9;

/** Carburetted two-strokes in general, pounds a horsepower hour; not race engines. Source: fuel-work. */
export const GUIDE = {
  'high compression, peak torque': 0.5,
  'high compression, peak power': 0.55,
  'low compression, peak torque': 0.55,
  'low compression, peak power': 0.6,
  '1000 rpm': 0.8,
} as const;

/** Rich race engines that lose charge at the exhaust [kg/J]; memory. */
export const RACE = 450 / 3.6e9;
/** Mean over peak power of a lap; memory. */
export const MEAN_SHARE = 0.45;

/** Fuel [kg/s]. */
export const fuelForPower = (p: { readonly peak: number; readonly share: number; readonly work: number }): number =>
  p.peak * p.share * p.work;

export type Charge = {
  readonly swept: number; // m³
  readonly turns: number; // a second
  readonly delivery: number; // on dry air outside [1]
  readonly dryDensity: number; // kg/m³
  readonly airToFuel: number;
};
/** Air through a two-stroke [kg/s]. */
export const airThrough = ({ swept, turns, delivery, dryDensity }: Omit<Charge, 'airToFuel'>): number =>
  swept * turns * delivery * dryDensity;
export const fuelOfCharge = (charge: Charge): number => airThrough(charge) / charge.airToFuel;

/** Volume a lap that power alone would explain [m³], from the guide at peak torque to a rich race engine. */
export function lapByTheory(peak: number, lapTime: number, density: number): readonly [low: number, high: number] {
  const lap = (work: number): number => (fuelForPower({ peak, share: MEAN_SHARE, work }) * lapTime) / density;
  return [lap(fromPounds(GUIDE['high compression, peak torque'])), lap(RACE)];
}
