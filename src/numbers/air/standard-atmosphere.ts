/**
 * The standard atmosphere below 11 km, by geopotential height, and heights read back from it.
 *
 * T = T0 - λ H;  p = p0 (T/T0)^(g/(R λ));  ρ = p/(R T);  a = √(1.4 R T);  H = r Z/(r + Z)
 * H geopotential height [m], Z height on a tape [m], T temperature [K], p pressure [Pa], ρ density [kg/m³], a speed of
 * sound [m/s]; T0 288.15 K, p0 101325 Pa, λ 0.0065 K/m, R 287.05287 J/(kg·K), r 6 356 766 m.
 * Valid: -2000 to 11 000 m. The two heights differ by 0.16 m at 1000 m. Source: ISO 2533:1975 (constants as reprinted).
 */
import { STANDARD_GRAVITY } from '../gravity.ts';

export const SEA_LEVEL = { kelvin: 288.15, pascal: 101325, density: 1.225 } as const;
const LAPSE = 0.0065;
const R = 287.05287;
const EARTH = 6356766;
export const PRESSURE_POWER = STANDARD_GRAVITY / (R * LAPSE);

export type Standard = {
  readonly kelvin: number;
  readonly pascal: number;
  readonly density: number;
  readonly soundSpeed: number;
};

/** The standard air at a geopotential height [m]. */
export function standardAt(height: number): Standard {
  const kelvin = SEA_LEVEL.kelvin - LAPSE * height;
  const pascal = SEA_LEVEL.pascal * (kelvin / SEA_LEVEL.kelvin) ** PRESSURE_POWER;
  return { kelvin, pascal, density: pascal / (R * kelvin), soundSpeed: Math.sqrt(1.4 * R * kelvin) };
}

/** Geopotential height [m] of a height above the sea [m]. */
export const geopotentialHeight = (geometric: number): number => (EARTH * geometric) / (EARTH + geometric);
/** And back. */
export const geometricHeight = (geopotential: number): number => (EARTH * geopotential) / (EARTH - geopotential);

/** The standard air at a height on a tape [m]. */
export const standardAtGeometric = (height: number): Standard => standardAt(geopotentialHeight(height));

/** Geopotential height [m] at which the standard atmosphere has this pressure [Pa]. */
export const pressureAltitude = (pascal: number): number =>
  (SEA_LEVEL.kelvin / LAPSE) * (1 - (pascal / SEA_LEVEL.pascal) ** (1 / PRESSURE_POWER));

/** Density altitude [m]: the height at which the standard atmosphere has this density [kg/m³]. Below 0 on a dense day. */
export const densityAltitude = (density: number): number =>
  (SEA_LEVEL.kelvin / LAPSE) * (1 - (density / SEA_LEVEL.density) ** (1 / (PRESSURE_POWER - 1)));
