/**
 * Density of moist air from temperature, pressure and relative humidity (CIPM-2007).
 *
 * ρ = p Ma/(Z R T) (1 - xv (1 - Mv/Ma));  xv = h f ps/p;  ps = exp(A T² + B T + C + D/T);  f = 1.00062 + 3.14e-8 p + 5.6e-7 t²
 * Z = 1 - (p/T)(a0 + a1 t + a2 t² + (b0 + b1 t) xv + (c0 + c1 t) xv²) + (p/T)² (d + e xv²)
 * ρ density [kg/m³], p absolute pressure where the air is [Pa], T temperature [K], t the same [°C], h relative humidity
 * 0 to 1 [1], xv share of water vapour [1], Z compressibility [1], Ma and Mv molar mass of dry air and of water
 * [kg/mol], R gas constant [J/(mol·K)].
 * Valid: 15 to 27 °C, 600 to 1100 hPa (memory); within 0.07 % of two ideal gases from 0 to 45 °C and 850 to 1050 hPa.
 * Source: Picard, Davis, Gläser, Fujii, Metrologia 45 (2008) 149-155, constants as in two open code bases.
 */
const R = 8.314472;
const WATER = 18.01528e-3;
const ZERO_CELSIUS = 273.15;
const USUAL_CO2 = 0.0004; // share of carbon dioxide [1]

export type AirState = {
  readonly kelvin: number;
  readonly pascal: number; // absolute, where the air is
  readonly humidity: number; // 0 to 1
  readonly carbonDioxide?: number;
};

/** Saturation pressure over water [Pa], the fit that belongs to this density. */
export const saturationPressureCipm = (T: number): number =>
  Math.exp(1.2378847e-5 * T * T - 1.9121316e-2 * T + 33.93711047 - 6.3431645e3 / T);

/** How much more vapour real air holds than an empty space [1]. */
export const enhancement = ({ kelvin, pascal }: Pick<AirState, 'kelvin' | 'pascal'>): number =>
  1.00062 + 3.14e-8 * pascal + 5.6e-7 * (kelvin - ZERO_CELSIUS) ** 2;

/** Share of the molecules that are water [1]. */
export const vapourShare = (air: AirState): number =>
  (air.humidity * enhancement(air) * saturationPressureCipm(air.kelvin)) / air.pascal;

/** Z [1]: 1 for an ideal gas. */
export function compressibility({ kelvin, pascal }: Pick<AirState, 'kelvin' | 'pascal'>, xv: number): number {
  const t = kelvin - ZERO_CELSIUS;
  const pT = pascal / kelvin;
  const first =
    1.58123e-6 -
    2.9331e-8 * t +
    1.1043e-10 * t * t +
    (5.707e-6 - 2.051e-8 * t) * xv +
    (1.9898e-4 - 2.376e-6 * t) * xv * xv;
  return 1 - pT * first + pT * pT * (1.83e-11 - 0.765e-8 * xv * xv);
}

const dryMolarMass = ({ carbonDioxide = USUAL_CO2 }: Omit<AirState, 'humidity'>): number =>
  (28.96546 + 12.011 * (carbonDioxide - USUAL_CO2)) * 1e-3;

/** Density of the air as it is [kg/m³]. */
export function moistAirDensity(air: AirState): number {
  return densityOfShare(air, vapourShare(air));
}

/** The same from the share of water vapour [kg/m³]. */
export function densityOfShare(air: Omit<AirState, 'humidity'>, xv: number): number {
  return asDryAir(air, xv) * (1 - xv * (1 - WATER / dryMolarMass(air)));
}

/** Mass of dry air in a cubic metre of it [kg/m³]: what carries the oxygen. Never more than the density, not by rounding either. */
export function dryAirDensity(air: AirState): number {
  const xv = vapourShare(air);
  return asDryAir(air, xv) * (1 - xv);
}

/** What a cubic metre would weigh if every molecule in it were dry air [kg/m³]. */
const asDryAir = (air: Omit<AirState, 'humidity'>, xv: number): number =>
  (air.pascal * dryMolarMass(air)) / (compressibility(air, xv) * R * air.kelvin);
