/**
 * Two other ways in use to say density altitude; the one that is shown is `densityAltitude` of the standard atmosphere.
 *
 * weather service: H = 145366 (1 - (17.326 B/Tv)^0.235), Tv = T/(1 - 0.378 e/p);  pilots' rule: H = P + 120 (t - ts)
 * H density altitude [ft], B pressure [inHg], Tv virtual temperature [°R], T temperature [K], p pressure [Pa],
 * e = 611 × 10^(7.5 d/(237.7 + d)) vapour pressure [Pa] from the dew point d [°C], P pressure altitude [ft],
 * t temperature and ts that of the standard atmosphere [°C].
 * Valid: the first to some 40 ft below 2500 m; the second for dry air only and some 260 ft high at 4750 ft and 30 °C.
 * Source: US weather service formula as quoted at metpod.co.uk; rule as worked in two pilots' texts.
 */
import { dewPoint, vapourPressure } from './vapour.ts';

const INCH_OF_MERCURY = 3386.389; // Pa
const FOOT = 0.3048;

/** Density altitude [m] by the weather service's formula. */
export function densityAltitudeWeatherService(air: {
  readonly kelvin: number;
  readonly pascal: number;
  readonly humidity: number;
}): number {
  const dew = dewPoint(vapourPressure(air.humidity, air.kelvin)) - 273.15;
  // Its own vapour pressure and zero of the Rankine scale (memory); the exact zero is 459.67.
  const vapour = air.humidity === 0 ? 0 : 611 * 10 ** ((7.5 * dew) / (237.7 + dew));
  const virtual = air.kelvin / (1 - (0.378 * vapour) / air.pascal);
  const rankine = (virtual - 273.15) * 1.8 + 32 + 459.69;
  const feet = 145366 * (1 - ((17.326 * (air.pascal / INCH_OF_MERCURY)) / rankine) ** 0.235);
  return feet * FOOT;
}

/** Density altitude [m] by the rule of 120 ft a kelvin above the standard temperature; dry air only. */
export const densityAltitudeRule120 = (pressureAltitude: number, kelvin: number, standardKelvin: number): number =>
  pressureAltitude + 120 * FOOT * (kelvin - standardKelvin);
