/** What a kart is reckoned with: from its file, the book and its log; what none of them says is named and guessed. */
import type { Fact } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import {
  type FitLog,
  type Fitted,
  fitCoast,
  fitGrip,
  fitPower,
  fitRadius,
  GENERIC_KART,
  type LapKart,
  type Spreads,
  UNMEASURED,
} from '../laps/index.ts';
import { sprockets } from '../prep/index.ts';
import { Refusal, refuse } from './problem.ts';

export type Figure = {
  readonly what: string;
  readonly value: number; // SI
  readonly unit: string;
  readonly spread?: number;
  /** `template`: the kart file leaves it to its template, so nobody has measured it on this kart. */
  readonly from: 'asked' | 'kart file' | 'book' | 'log' | 'template' | 'starting guess';
  /** What a figure of the log rests on; of a guess, why the log does not say it or where to write it. */
  readonly why?: string;
};
export type KartReckoned = {
  readonly kart: LapKart;
  readonly figures: readonly Figure[];
  /** What is not known of each, for what cannot be told apart. */
  readonly spreads: Spreads;
};

export function reckonKart(
  file: Kart,
  facts: readonly Fact[],
  { gearing, log }: { readonly gearing?: string | undefined; readonly log?: FitLog | undefined },
): KartReckoned {
  const figures: Figure[] = [];
  let kart = GENERIC_KART;
  let spreads = UNMEASURED;
  const guess = (what: string, value: number, unit: string, why: string): void => {
    figures.push({ what, value, unit, from: 'starting guess', why });
  };
  const filed = (dimension: string, unit: string, fallback: number): number => {
    const said = file.dimensions[dimension];
    if (said) figures.push({ what: dimension, value: said.si, unit, ...measured(file, dimension) });
    else guess(dimension, fallback, unit, `Write it into the kart file: dimensions: ${dimension}.`);
    return said?.si ?? fallback;
  };
  const mass = filed('mass with driver', 'kg', kart.mass);
  kart = { ...kart, mass, grip: { ...kart.grip, atMass: mass } };
  kart = { ...kart, engine: engineOf(file, guess), gearing: gearingOf(file, facts, gearing, figures, guess) };
  const round = file.dimensions['rolling circumference'];
  if (round) kart = { ...kart, wheel: { ...kart.wheel, radius: round.si / (2 * Math.PI) } };

  const take = (what: string, unit: string, fitted: Fitted, otherwise: () => number): number => {
    if (fitted.kind === 'unknown') return otherwise();
    const { value, spread, rests } = fitted;
    figures.push({ what, value, unit, spread, from: 'log', why: rests });
    return value;
  };
  const none: Fitted = { kind: 'unknown', why: 'No log of this kart was read.' };
  const whyOf = (fitted: Fitted): string => (fitted.kind === 'unknown' ? fitted.why : '');
  const share = (fitted: Fitted): number | undefined =>
    fitted.kind === 'fitted' ? fitted.spread / fitted.value : undefined;

  const radius = log ? fitRadius(log, kart) : none;
  const rolling = take('rolling radius', 'm', radius, () => {
    if (round)
      figures.push({
        what: 'rolling radius',
        value: kart.wheel.radius,
        unit: 'm',
        ...measured(file, 'rolling circumference'),
      });
    else guess('rolling radius', kart.wheel.radius, 'm', whyOf(radius));
    return kart.wheel.radius;
  });
  kart = { ...kart, wheel: { ...kart.wheel, radius: rolling } };
  const coast = log ? fitCoast(log, kart) : { dragArea: none, rolling: none };
  kart = {
    ...kart,
    dragArea: take('drag area', 'm²', coast.dragArea, () => filed('drag area', 'm²', kart.dragArea)),
    rolling: take('rolling resistance', '1', coast.rolling, () => filed('rolling resistance', '1', kart.rolling)),
  };
  const power = log && radius.kind === 'fitted' ? fitPower(log, kart) : radius.kind === 'fitted' ? none : radius;
  const scale = take('power over the torque table', '1', power, () => {
    guess('power over the torque table', 1, '1', whyOf(power));
    return 1;
  });
  kart = { ...kart, engine: { ...kart.engine, scale } };
  const grip = log ? fitGrip(log, kart) : none;
  const side = take('grip sideways', '1', grip, () => {
    guess('grip sideways', kart.grip.side, '1', whyOf(grip));
    return kart.grip.side;
  });
  const along = (kart.grip.along * side) / kart.grip.side;
  guess('grip along', along, '1', 'As sideways, in the proportion of an invented kart: no log says it alone.');
  kart = { ...kart, grip: { ...kart.grip, side, along } };
  guess('most braking force', kart.brakeCap, 'N', 'Of an invented kart.');
  guess('time of a shift', kart.engine.shiftTime, 's', 'Of an invented kart.');
  for (const [change, fitted] of [
    ['rolling radius', radius],
    ['drag', coast.dragArea],
    ['power', power],
    ['grip', grip],
  ] as const)
    spreads = { ...spreads, [change]: share(fitted) ?? spreads[change] };
  return { kart, figures, spreads };
}

function measured({ unmeasured = [] }: Kart, dimension: string): Pick<Figure, 'from' | 'why'> {
  if (!unmeasured.includes(dimension)) return { from: 'kart file' };
  return { from: 'template', why: `Measure yours and write it into the kart file: dimensions: ${dimension}.` };
}

type Guess = (what: string, value: number, unit: string, why: string) => void;

function engineOf({ engine }: Kart, guess: Guess): LapKart['engine'] {
  const generic = GENERIC_KART.engine;
  const torque = engine?.torque ?? [];
  if (torque.length < 2) {
    guess('most torque', Math.max(...generic.torques), 'N·m', 'Write the curve into the kart file: engine: torque.');
    return generic;
  }
  const limit = engine?.limiter?.si ?? torque.at(-1)?.speed.si ?? generic.limit;
  return {
    ...generic,
    speeds: torque.map(({ speed }) => speed.si),
    torques: torque.map(row => row.torque.si),
    limit,
    shiftBy: (limit * generic.shiftBy) / generic.limit,
  };
}

function gearingOf(
  file: Kart,
  facts: readonly Fact[],
  asked: string | undefined,
  figures: Figure[],
  guess: Guess,
): LapKart['gearing'] {
  const generic = GENERIC_KART.gearing;
  const { primary, gears } = file.engine ?? {};
  if (primary === undefined)
    guess('primary ratio', generic.primary, '1', 'Write it into the kart file: engine: primary.');
  if (gears === undefined)
    guess('last gear', generic.gears.at(-1) ?? 1, '1', 'Write all of them into the kart file: engine: gears.');
  const written = Object.fromEntries(
    facts.flatMap(fact =>
      fact.kind === 'set-up' ? Object.entries(fact.changes).map(([name, text]) => [name.toLowerCase(), text]) : [],
    ),
  );
  const on = sprockets(asked === undefined ? written : { gearing: asked });
  if (asked !== undefined && on === undefined)
    throw new Refusal([
      refuse('wrong shape', 'gearing', `Expected teeth in front and behind, got "${asked}".`, 'Write it as 17/23.'),
    ]);
  const { front, rear } = on ?? generic;
  if (on === undefined)
    guess('rear over front sprocket', rear / front, '1', 'Write them down as a set-up change: gearing 17/23.');
  else
    figures.push({
      what: 'rear over front sprocket',
      value: rear / front,
      unit: '1',
      from: asked === undefined ? 'book' : 'asked',
    });
  return { ...generic, primary: primary ?? generic.primary, gears: gears ?? generic.gears, front, rear };
}
