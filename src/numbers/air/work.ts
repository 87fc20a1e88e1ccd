/** The air worked out: pressure at the track, density with its uncertainty part by part, power as in a standard. */
import { type Air, airOf, HUMIDITY_UNKNOWN, USUAL_LIMITS } from './air-of.ts';
import type { Input } from './input.ts';
import { moistAirDensity } from './moist-air.ts';
import { factorDin70020, factorIso1585, factorJ607, factorJ1349, insideIso1585 } from './power-correction.ts';
import { type Kind as Doubt, pressureKind, stationPressure, stationPressureFromMap } from './station-pressure.ts';
import { vapourPressure } from './vapour.ts';

/** Limits ± of a height from a map [m]; common practice. */
export const ELEVATION_HALF = 10;

export const PARTS = ['thermometer', 'barometer', 'hygrometer', 'elevation'] as const;
export type Part = (typeof PARTS)[number];

export type Worked = {
  readonly input: Input;
  readonly air: Air;
  readonly humidity: number;
  readonly pascal: number; // at the track
  /** Standard uncertainty of the density over it that each reading brings [1]; 0 where it plays no part. */
  readonly parts: Readonly<Record<Part, number>>;
  readonly u: number; // all of them [1]
  readonly band: number; // two of it, of the density [kg/m³]
  readonly doubt: Doubt;
  /** QNH less weather map, as the same figure would give at the track [Pa]. */
  readonly kindsApart?: number;
  readonly change?: { readonly ratio: number; readonly u: number }; // density over the baseline's, less 1
  readonly power: { readonly inside: boolean; readonly factors: Readonly<Record<string, number>> };
};

type Read = { readonly kelvin: number; readonly pascal: number; readonly humidity: number; readonly elevation: number };

const readOf = (input: Input): Read => ({
  kelvin: input.temperature.si,
  pascal: input.pressure.si - (input['barometer reads high by']?.si ?? 0),
  humidity: input.humidity?.si ?? HUMIDITY_UNKNOWN.humidity,
  elevation: input.elevation?.si ?? Number.NaN,
});

function atTrack(kind: Input['pressure is'], { kelvin, pascal, humidity, elevation }: Read): number {
  if (kind === 'station') return pascal;
  const reduced = { seaLevelPascal: pascal, elevation };
  return kind === 'QNH'
    ? stationPressure(reduced)
    : stationPressureFromMap({ ...reduced, kelvin, vapour: vapourPressure(humidity, kelvin) });
}

/** Pressure at the track [Pa], whichever kind was read. */
export const pascalAt = (input: Input): number => atTrack(input['pressure is'], readOf(input));

const STEP: Read = { kelvin: 0.01, pascal: 10, humidity: 1e-4, elevation: 0.1 };

export function work(input: Input): Worked | undefined {
  const kind = input['pressure is'];
  const read = readOf(input);
  const pascal = atTrack(kind, read);
  const air = airOf({ kelvin: read.kelvin, pascal, ...(input.humidity ? { humidity: read.humidity } : {}) });
  if (air.kind !== 'air') return undefined;
  const half: Read = {
    kelvin: input.temperature.half ?? USUAL_LIMITS.kelvin,
    pascal: input.pressure.half ?? USUAL_LIMITS.pascal,
    humidity: input.humidity ? (input.humidity.half ?? USUAL_LIMITS.humidity) : HUMIDITY_UNKNOWN.half,
    elevation: kind === 'station' ? 0 : (input.elevation?.half ?? ELEVATION_HALF),
  };
  const density = (at: Read): number => moistAirDensity({ ...at, pascal: atTrack(kind, at) });
  const part = (name: keyof Read): number => {
    if (half[name] === 0) return 0;
    const at = (by: number): number => density({ ...read, [name]: read[name] + by });
    const slope = (at(STEP[name]) - at(-STEP[name])) / (2 * STEP[name]);
    return Math.abs((slope * half[name]) / (Math.sqrt(3) * air.density));
  };
  const parts = {
    thermometer: part('kelvin'),
    barometer: part('pascal'),
    hygrometer: part('humidity'),
    elevation: part('elevation'),
  };
  const u = Math.hypot(...PARTS.map(name => parts[name]));
  const base = input['baseline density'];
  const state = { kelvin: read.kelvin, pascal, humidity: read.humidity };
  const other = kind === 'QNH' ? 'sea level' : 'QNH';
  return {
    input,
    air,
    humidity: read.humidity,
    pascal,
    parts,
    u,
    band: 2 * u * air.density,
    doubt: pressureKind({ pascal, elevation: read.elevation }),
    ...(kind === 'station' ? {} : { kindsApart: Math.abs(atTrack(other, read) - pascal) }),
    ...(base
      ? { change: { ratio: air.density / base.si - 1, u: Math.hypot(u, (base.half ?? 0) / (Math.sqrt(3) * base.si)) } }
      : {}),
    power: {
      inside: insideIso1585(state),
      factors: {
        'SAE J1349 (June 1990)': factorJ1349(state),
        'ISO 1585': factorIso1585(state),
        'DIN 70020': factorDin70020(state),
        'SAE J607': factorJ607(state),
      },
    },
  };
}
