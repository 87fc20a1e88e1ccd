/** Air as a jet needs it: all of it, its dry part, and how well its oxygen is known. */
import { type AirReading, airOf, dryAirDensity, HUMIDITY_UNKNOWN, type NoAir, USUAL_LIMITS } from '../air/index.ts';

export type KnownAir = {
  readonly kind: 'air';
  readonly density: number; // kg/m³
  readonly dry: number; // kg/m³
  readonly u: number; // standard uncertainty over it, moisture counted by its oxygen [1]
};

/** From readings in SI, as `airOf` takes them; √(u0² + u1²) of two of these is the `doubt` of `jetBand`. */
export function jetAirOf(reading: AirReading): KnownAir | NoAir {
  const air = airOf(reading);
  if (air.kind !== 'air') return air;
  const { kelvin, pascal, humidity, limits } = reading;
  const half = limits?.humidity;
  const wet = moistureDoubt({
    kelvin,
    pascal,
    ...(humidity === undefined ? {} : { humidity }),
    ...(half === undefined ? {} : { half }),
  });
  return { kind: 'air', density: air.density, dry: air.dryDensity, u: Math.hypot(air.u, wet) };
}

type Moisture = {
  readonly kelvin: number;
  readonly pascal: number; // at the track
  readonly humidity?: number; // 0 to 1; unknown: all of it
  readonly half?: number; // limits ±, the usual ones when not given
};

/** What the limits of the hygrometer leave open of the oxygen, standard, over it [1]: more than they do of the density. */
export function moistureDoubt({ kelvin, pascal, humidity, half = USUAL_LIMITS.humidity }: Moisture): number {
  const read = humidity ?? HUMIDITY_UNKNOWN.humidity;
  const wide = humidity === undefined ? HUMIDITY_UNKNOWN.half : half;
  const dry = (at: number): number => dryAirDensity({ kelvin, pascal, humidity: Math.min(Math.max(at, 0), 1) });
  return (dry(read - wide) - dry(read + wide)) / (2 * Math.sqrt(3) * dry(read));
}
