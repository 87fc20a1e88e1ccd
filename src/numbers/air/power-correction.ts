/**
 * Power measured in one air said as in another: four published factors, one function each. Corrected = factor × measured.
 *
 * J1349: 1.18 (990/pd) √((t + 273)/298) - 0.18;  ISO 1585: (99/pd)^1.2 (T/298)^0.6;  DIN 70020: (1013/p) √((t + 273)/293);
 * J607: (29.92/pd) √((F + 460)/520)
 * pd pressure without the vapour's [hPa, kPa for ISO, inHg for J607], p with it [hPa], t [°C], T = t + 273 [K], F [°F].
 * Valid: naturally aspirated, spark ignition, wide open; ISO 1585 from 0.93 to 1.07, 288 to 308 K, 80 to 110 kPa
 * (memory), which leaves motorcycles out by its scope. None was written for a tuned two-stroke: a comparison aid only.
 * Source: J1349 June 1990, DIN 70020 and J607 as quoted in public threads; exponents and limits of ISO 1585 from memory.
 */
import { vapourPressure } from './vapour.ts';

export type Measured = { readonly kelvin: number; readonly pascal: number; readonly humidity: number };

const INCH_OF_MERCURY = 3386.389; // Pa

/** Pressure of the air without that of its vapour [Pa]. */
export const dryPressure = ({ kelvin, pascal, humidity }: Measured): number =>
  pascal - vapourPressure(humidity, kelvin);

/** The standards count from 273, not 273.15. */
const rounded = ({ kelvin }: Measured): number => kelvin - 273.15 + 273;

/** SAE J1349, June 1990: to 990 hPa dry, 25 °C. */
export const factorJ1349 = (air: Measured): number =>
  1.18 * (99000 / dryPressure(air)) * Math.sqrt(rounded(air) / 298) - 0.18;

/** ISO 1585, spark ignition: to 99 kPa dry, 298 K. */
export const factorIso1585 = (air: Measured): number => (99000 / dryPressure(air)) ** 1.2 * (rounded(air) / 298) ** 0.6;

/** DIN 70020: to 1013 hPa with its vapour, 20 °C. */
export const factorDin70020 = (air: Measured): number => (101300 / air.pascal) * Math.sqrt(rounded(air) / 293);

/** SAE J607, also called STD: to 29.92 inHg dry, 60 °F. */
export const factorJ607 = (air: Measured): number =>
  (29.92 / (dryPressure(air) / INCH_OF_MERCURY)) * Math.sqrt(((air.kelvin - 273.15) * 1.8 + 32 + 460) / 520);

/** Whether ISO 1585 allows its own factor here; its limits from memory. */
export const insideIso1585 = (air: Measured): boolean => {
  const factor = factorIso1585(air);
  const pd = dryPressure(air);
  return factor >= 0.93 && factor <= 1.07 && air.kelvin >= 288 && air.kelvin <= 308 && pd >= 80e3 && pd <= 110e3;
};
