/** Fuel and oil worked out, before they are put into figures and words. */
import { rectangular } from '../chain.ts';
import { chanceInside } from '../conformance.ts';
import { leastReading, massAtTheEnd } from '../scales/index.ts';
import { student95 } from '../student.ts';
import { lapByTheory } from './consumption.ts';
import type { Input } from './input.ts';
import { litresForSession, litresPerLap, type NoSession, type PerLap, type Session, type TooFew } from './litres.ts';
import { type Densities, massRatio, mixDensity, petrolShareRatio, USUAL, volumeRatio } from './mix.ts';
import { type OilQuestion, oilFor, type Pour } from './oil-for.ts';

export type Worked = {
  readonly input: Input;
  readonly ratio: number; // by volume
  readonly byMass: number;
  readonly densities: Densities;
  readonly density: number; // of the mix [kg/m³]
  readonly pour?: Pour;
  readonly mixture?: number; // petrol now over then [1]
  readonly perLap?: PerLap | TooFew;
  readonly session?: Session | NoSession;
  readonly spare: number;
  readonly theory?: readonly [number, number]; // m³ a lap
  readonly flag?: Flag;
};
export type Flag = {
  readonly end: number; // kg
  readonly u: number;
  readonly before: number; // least reading before, as it was weighed [kg]
  readonly shortBy: number; // below 0: over [kg]
  readonly chance: number;
};

/** Laps beyond the session where nobody said, and mass lost besides fuel with its limits ± [kg]; common practice. */
const SPARE = 2;
const OTHER_LOSS = { mass: 0.4, half: 0.3 } as const;
const SCALE_HALF = 0.2; // kg, limits ± of a scale; common practice
const DENSITY_HALF = 30; // kg/m³ where nobody weighed it; fuel-density
export const CONFIDENCE = 0.95;

export const densitiesOf = (input: Input): Densities => ({
  petrol: input['petrol density']?.si ?? USUAL.petrol,
  oil: input['oil density']?.si ?? USUAL.oil,
});

/** Undefined where no volume was asked for. */
export function oilQuestion(input: Input, densities: Densities): OilQuestion | undefined {
  const { volume, 'volume is': of, 'in the can': can, 'ratio in the can': had } = input;
  if (!volume || !of) return undefined;
  return {
    ratio: input.ratio,
    by: input['ratio by'],
    volume: volume.si,
    of,
    densities,
    ...(can ? { can: { volume: can.si, ...(had === undefined ? {} : { ratio: had }) } } : {}),
  };
}

export function work(input: Input): Worked {
  const densities = densitiesOf(input);
  const given = input['ratio by'] === 'mass';
  const ratio = given ? volumeRatio(input.ratio, densities) : input.ratio;
  const question = oilQuestion(input, densities);
  const pour = question ? oilFor(question) : undefined;
  const before = input['ratio before'];
  const density = mixDensity(ratio, densities);
  const spare = input['spare laps']?.si ?? SPARE;
  const perLap = input.record
    ? litresPerLap(input.record.map(({ fuel, laps }) => ({ volume: fuel.si, laps: laps.si })))
    : undefined;
  const session =
    perLap && input.laps && input.reserve
      ? litresForSession({
          laps: input.laps.si,
          spare,
          reserve: input.reserve.si,
          perLap,
          ...(input['tank holds'] ? { tank: input['tank holds'].si } : {}),
        })
      : undefined;
  const [peak, lap] = [input['peak power'], input['lap time']];
  const flag = flagOf(input, session, perLap, density);
  return {
    input,
    ratio,
    byMass: massRatio(ratio, densities),
    densities,
    density,
    spare,
    ...(pour?.kind === 'pour' ? { pour } : {}),
    ...(before === undefined
      ? {}
      : { mixture: petrolShareRatio(given ? volumeRatio(before, densities) : before, ratio) }),
    ...(perLap ? { perLap } : {}),
    ...(session ? { session } : {}),
    ...(peak && lap ? { theory: lapByTheory(peak.si, lap.si, density) } : {}),
    ...(flag ? { flag } : {}),
  };
}

/** The scales after the race: what was weighed, with the fill where it was not in, less what burns, less what else goes. */
function flagOf(
  input: Input,
  session: Session | NoSession | undefined,
  perLap: PerLap | TooFew | undefined,
  density: number,
): Flag | undefined {
  const [weighed, least] = [input['on the scales'], input['least mass']?.si];
  if (!weighed || least === undefined || !session || session.kind === 'not known' || perLap?.kind !== 'known')
    return undefined;
  const fillIn = input['weighed with'] === 'the fill in' ? 0 : session.fill;
  const loss = input['other loss']?.si ?? OTHER_LOSS.mass;
  const uLoss = rectangular(input['other loss'] ? 0 : OTHER_LOSS.half);
  const { mass, u } = massAtTheEnd(
    { mass: weighed.si - loss, u: Math.hypot(rectangular(weighed.half ?? SCALE_HALF), uLoss) },
    {
      volume: session.burn.mean - fillIn,
      uVolume: (session.burn.high - session.burn.mean) / student95(perLap.fills - 1),
      density,
      uDensity: rectangular(input['petrol density'] ? 0 : DENSITY_HALF),
    },
  );
  const atEnd = leastReading(least, u, CONFIDENCE);
  const before = atEnd + (weighed.si - mass);
  return { end: mass, u, before, shortBy: before - weighed.si, chance: chanceInside(mass, u, { min: least }) };
}
