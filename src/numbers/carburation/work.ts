/** The main jet worked out, before it is put into figures and words. */
import { airTold, type Told } from './air-asked.ts';
import type { Input } from './input.ts';
import { type JetBand, jetBand } from './jet-band.ts';
import { type JetPoint, type Learned, learnExponent, type NotYet } from './learn.ts';
import { airNeed, type Fuel, fuelNeed } from './need.ts';
import { boreArea, mainShare, ringArea } from './orifice.ts';

export type Worked = {
  readonly input: Input;
  readonly was: Told;
  readonly now: Told;
  readonly doubt: number; // standard, of density now over then [1]
  readonly need: number;
  readonly band: JetBand;
  readonly learned?: Learned | NotYet; // only where a log was given
  readonly smallestGood: number;
  readonly share?: number; // of the main jet where the needle meters too
  readonly air?: number; // that the fuel of now needs [kg/kg]
};

/** Undefined where the air is not known: `impossible` says why. */
export function work(input: Input): Worked | undefined {
  const [was, now] = [airTold('air then', input['air then']), airTold('air now', input['air now'])];
  if ('problems' in was || 'problems' in now) return undefined;
  const doubt = Math.hypot(was.told.u, now.told.u);
  const need = fuelNeed(fuelOf(input, 'then'), fuelOf(input, 'now'));
  const points = pointsOf(input);
  const learned = input.log ? learnExponent(points) : undefined;
  const logged = points.flatMap(({ reading, jet }) => (reading === 'right' ? [jet] : []));
  const smallestGood = Math.min(input.jet, input['smallest good jet'] ?? input.jet, ...logged);
  const band = jetBand({
    jet: input.jet,
    numbering: input['numbered by'],
    was: was.told,
    now: now.told,
    doubt,
    need,
    smallestGood,
    below: input['go below it'] === 'yes',
    ...(input['jets in the box'] ? { box: input['jets in the box'] } : {}),
    ...(learned?.kind === 'learned' ? { learned } : {}),
  });
  if (band.kind !== 'band') return undefined;
  const share = shareOf(input);
  const ethanol = input['ethanol now'];
  return {
    input,
    was: was.told,
    now: now.told,
    doubt,
    need,
    band,
    ...(learned ? { learned } : {}),
    smallestGood,
    ...(share === undefined ? {} : { share }),
    ...(ethanol ? { air: airNeed(ethanol.si) } : {}),
  };
}

const fuelOf = (input: Input, when: 'then' | 'now'): Fuel => {
  const [warm, oil, ethanol] = [input[`fuel temperature ${when}`], input[`oil ${when}`], input[`ethanol ${when}`]];
  return {
    ...(warm ? { kelvin: warm.si } : {}),
    ...(oil === undefined ? {} : { oil }),
    ...(ethanol ? { ethanol: ethanol.si } : {}),
  };
};

const pointsOf = ({ log = [] }: Input): readonly JetPoint[] =>
  log.map(({ jet, density, 'dry-air density': dry, plug }) => ({
    jet,
    density: density.si,
    ...(dry ? { dry: dry.si } : {}),
    reading: plug,
  }));

function shareOf(input: Input): number | undefined {
  const [ring, thick] = [input['needle jet'], input.needle];
  if (!ring || !thick) return undefined;
  const bore = input['main jet bore']?.si ?? input.jet * 1e-5; // a diameter is stamped in 0.01 mm
  return mainShare(boreArea(bore), ringArea(ring.si, thick.si));
}
