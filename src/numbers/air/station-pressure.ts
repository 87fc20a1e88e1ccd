/**
 * Pressure at the track from a figure reduced to sea level, and back; and whether a figure can be what it is called.
 *
 * QNH: p = p0 ((q/p0)^(1/n) - λ H/T0)^n;  map: p = s exp(-0.03416356 h/(T + 0.12 e + 0.00325 h))
 * p pressure where the engine stands [Pa], q airfield QNH and s sea level pressure of a weather map [Pa], H and h height
 * of the track above the sea [m], T temperature there [K], e vapour pressure [hPa], n 5.25588, p0, T0, λ as in the standard
 * atmosphere. Valid: -450 to 4500 m. QNH takes the standard temperature down to the sea, a map the real one (some use a
 * mean of 12 hours), so the two differ by some hPa on a hot or cold day.
 * Source: standard atmosphere turned round; map form as quoted from observing practice, printed with unclear brackets.
 */
import { PRESSURE_POWER, SEA_LEVEL, standardAt } from './standard-atmosphere.ts';

const LAPSE = 0.0065;

export type FromSeaLevel = { readonly seaLevelPascal: number; readonly elevation: number };

/** Pressure at the track [Pa] from airfield QNH [Pa] and the track's height above the sea [m]. */
export const stationPressure = ({ seaLevelPascal, elevation }: FromSeaLevel): number =>
  SEA_LEVEL.pascal *
  ((seaLevelPascal / SEA_LEVEL.pascal) ** (1 / PRESSURE_POWER) - (LAPSE * elevation) / SEA_LEVEL.kelvin) **
    PRESSURE_POWER;

/** QNH [Pa] that an airfield at the track's height would report. */
export const qnhFromStation = (pascal: number, elevation: number): number =>
  SEA_LEVEL.pascal *
  ((pascal / SEA_LEVEL.pascal) ** (1 / PRESSURE_POWER) + (LAPSE * elevation) / SEA_LEVEL.kelvin) ** PRESSURE_POWER;

/** QNH [Pa] by the exponential of a weather station's manual; within 0.04 hPa of the exact one to 1000 m. */
export function qnhFromStationManual(pascal: number, elevation: number): number {
  const T1 = 0.03416 * elevation * (1 - 0.19025 * (Math.log(pascal / 100) - 6.92087));
  return pascal * Math.exp(T1 / (288.2 + 0.00325 * elevation));
}

type Outside = { readonly elevation: number; readonly kelvin: number; readonly vapour?: number };

const reduction = ({ elevation, kelvin, vapour = 0 }: Outside): number =>
  Math.exp((0.03416356 * elevation) / (kelvin + (0.12 * vapour) / 100 + 0.00325 * elevation));

/** Sea level pressure of a weather map [Pa] from the pressure at the track [Pa], temperature [K], vapour pressure [Pa]. */
export const mapPressure = (pascal: number, outside: Outside): number => pascal * reduction(outside);

/** Pressure at the track [Pa] from the sea level pressure of a weather map or an app [Pa]. */
export const stationPressureFromMap = ({ seaLevelPascal, ...outside }: FromSeaLevel & Outside): number =>
  seaLevelPascal / reduction(outside);

/** Weather seldom moves pressure further from the standard atmosphere than this [Pa]; common practice. */
export const WEATHER_MOST = 4500;
/** From here on the kind of a reading is worth a second look [Pa]; common practice. */
export const WEATHER_USUAL = 2500;

export type Kind =
  | { readonly kind: 'plausible'; readonly apart: number }
  | { readonly kind: 'doubtful'; readonly apart: number } // ask which kind was read
  | { readonly kind: 'wrong'; readonly apart: number } // not the pressure at this height
  | { readonly kind: 'not known' };

/** Whether a pressure [Pa] can be that of a place this high [m]. `apart`: above the standard atmosphere there [Pa]. */
export function pressureKind({ pascal, elevation }: { readonly pascal: number; readonly elevation: number }): Kind {
  const apart = pascal - standardAt(elevation).pascal;
  if (!Number.isFinite(apart)) return { kind: 'not known' };
  const size = Math.abs(apart);
  return { kind: size > WEATHER_MOST ? 'wrong' : size > WEATHER_USUAL ? 'doubtful' : 'plausible', apart };
}
