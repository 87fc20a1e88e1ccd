/** The air of a moment, all that a page or another number needs of it, from three readings. */
import { dryAirDensity, moistAirDensity } from './moist-air.ts';
import { densityAltitude, SEA_LEVEL } from './standard-atmosphere.ts';
import { densityUncertainty } from './uncertainty.ts';
import { dewPoint, vapourPressure } from './vapour.ts';

/** Taken where nobody said: limits ± of a thermometer, a barometer and a hygrometer in the paddock; common practice. */
export const USUAL_LIMITS = { kelvin: 1, pascal: 100, humidity: 0.05 } as const;
/** Where humidity was not read: the middle, known to the whole width. */
export const HUMIDITY_UNKNOWN = { humidity: 0.5, half: 0.5 } as const;
/** What air at a race track can be; outside it a reading is a slip or another kind. */
export const POSSIBLE = { kelvin: [243.15, 328.15], pascal: [55e3, 108.5e3] } as const;

export type AirReading = {
  readonly kelvin: number;
  readonly pascal: number; // absolute, at the track: never the sea level figure
  readonly humidity?: number; // 0 to 1; 50 % and its whole width in the band when nobody read it
  /** Limits ± of the readings [K], [Pa], [1]; the usual ones when not given. */
  readonly limits?: { readonly kelvin?: number; readonly pascal?: number; readonly humidity?: number };
};

export type Air = {
  readonly kind: 'air';
  readonly density: number; // kg/m³
  readonly dryDensity: number; // kg/m³ of it that is dry air and carries oxygen
  readonly vapourPressure: number; // Pa
  readonly dewPoint: number; // K; minus infinity for perfectly dry air
  readonly relative: number; // over 1.2250 kg/m³, ISO 2533 at sea level [1]
  readonly relativeDry: number; // dry-air share over the same [1]
  readonly densityAltitude: number; // m
  readonly u: number; // standard uncertainty of the density over it [1]
  readonly band: number; // ± of the density in about 95 of 100 cases, two standard uncertainties [kg/m³]
  readonly humidityAssumed: boolean;
};
export type NoAir = { readonly kind: 'not known'; readonly why: string };

const within = (value: number, [low, high]: readonly [number, number]): boolean => value >= low && value <= high;
const asStandard = (half: number): number => half / Math.sqrt(3);

/** Air from readings in SI; what air at a track cannot be is not known rather than computed. */
export function airOf({ kelvin, pascal, humidity, limits = {} }: AirReading): Air | NoAir {
  if (!within(kelvin, POSSIBLE.kelvin))
    return { kind: 'not known', why: 'the temperature is not one of outside air: check the unit, °C or °F' };
  if (!within(pascal, POSSIBLE.pascal))
    return {
      kind: 'not known',
      why: 'the pressure is not that of air at a track: check the unit; absolute, not gauge',
    };
  if (humidity !== undefined && !within(humidity, [0, 1]))
    return { kind: 'not known', why: 'the humidity is not between 0 and 100 %' };
  const state = { kelvin, pascal, humidity: humidity ?? HUMIDITY_UNKNOWN.humidity };
  const wet = humidity === undefined ? HUMIDITY_UNKNOWN.half : (limits.humidity ?? USUAL_LIMITS.humidity);
  const { density, relative: u } = densityUncertainty(state, {
    kelvin: asStandard(limits.kelvin ?? USUAL_LIMITS.kelvin),
    pascal: asStandard(limits.pascal ?? USUAL_LIMITS.pascal),
    humidity: asStandard(wet),
  });
  if (!Number.isFinite(u)) return { kind: 'not known', why: 'the limits of the readings are no numbers' };
  const dryDensity = dryAirDensity(state);
  const vapour = vapourPressure(state.humidity, kelvin);
  return {
    kind: 'air',
    density: moistAirDensity(state),
    dryDensity,
    vapourPressure: vapour,
    dewPoint: dewPoint(vapour),
    relative: density / SEA_LEVEL.density,
    relativeDry: dryDensity / SEA_LEVEL.density,
    densityAltitude: densityAltitude(density),
    u,
    band: 2 * u * density,
    humidityAssumed: humidity === undefined,
  };
}
