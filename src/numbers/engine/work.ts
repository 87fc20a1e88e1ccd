/** The engine worked out in numbers, before it is put into figures and words. */
import { boreArea, fullRatio, sweptVolume, trappedRatio } from './compression.ts';
import { angleOfDrop, type Crank, dropBelowTop, timingSlope } from './crank.ts';
import type { Input } from './input.ts';
import { meanEffectivePressure, meanPistonSpeed, topAcceleration } from './pace.ts';
import { pipeOf1973, tunedLength, waveSpeed } from './pipe.ts';
import { afterGasket, type Port, portDuration, roofFrom } from './ports.ts';
import { SOLDER_LIMITS, type Squish, squishVerdict } from './squish.ts';
import { type CompressionTrend, compressionTrend } from './trend.ts';

export type Ignition = {
  readonly angle: number;
  readonly drop: number;
  readonly gauge: number;
  readonly slope: number;
};
export type Ratios = { readonly full: number; readonly trapped: number };
export type Pair = { readonly names: readonly [string, string]; readonly now: Squish; readonly after?: Squish };
export type Chamber = { readonly volume: number; readonly now: Ratios; readonly after?: Ratios };
export type Worked = {
  readonly input: Input;
  readonly gasket: number; // change [m]
  readonly swept: number; // [m³], not a number without bore and stroke
  readonly ignition?: Ignition;
  readonly ports: readonly { readonly name: 'exhaust' | 'transfer'; readonly now: Port; readonly after?: Port }[];
  readonly chamber?: Chamber;
  readonly squish: readonly Pair[];
  readonly pace?: { readonly piston: number; readonly acceleration: number; readonly pressure: number };
  readonly pipe?: {
    readonly length: number;
    readonly hotter: number;
    readonly duration: number;
    readonly wave: number;
    readonly cones?: ReturnType<typeof pipeOf1973>;
  };
  readonly trend?: CompressionTrend;
};

/** The crank of a question; undefined while stroke or rod is missing. */
export function crankOf(input: Input): Crank | undefined {
  const { stroke, rod, 'gudgeon offset': offset, 'offset toward': toward } = input;
  if (!stroke || !rod) return undefined;
  return { stroke: stroke.si, rod: rod.si, offset: (offset?.si ?? 0) * (toward === 'rising side' ? -1 : 1) };
}

export function work(input: Input): Worked {
  const crank = crankOf(input);
  const gasket = input['base gasket change']?.si ?? 0;
  const swept = sweptVolume({ bore: si(input.bore), stroke: si(input.stroke) });
  const ports = crank ? portsOf(input, crank, gasket) : [];
  const ignition = crank && ignitionOf(input, crank);
  const exhaust = ports.find(({ name }) => name === 'exhaust');
  const chamber = chamberOf(input, exhaust, gasket);
  const pace = paceOf(input, swept);
  const pipe = pipeOf(input, exhaust?.after ?? exhaust?.now);
  return {
    input,
    gasket,
    swept,
    ports,
    squish: input.squish ? squishOf(input.squish, gasket) : [],
    ...(ignition && { ignition }),
    ...(chamber && { chamber }),
    ...(pace && { pace }),
    ...(pipe && { pipe }),
    ...(input['compression readings'] && { trend: compressionTrend(input['compression readings'].map(reading)) }),
  };
}

const si = (measure: { readonly si: number } | undefined): number => measure?.si ?? Number.NaN;

function ignitionOf({ ignition }: Input, crank: Crank): Ignition | undefined {
  if (!ignition) return undefined;
  const lean = Math.cos(ignition['gauge tilt']?.si ?? 0); // a tilted gauge runs further than the piston
  const drop = ignition.drop ? ignition.drop.si * lean : dropBelowTop(crank, -si(ignition.angle));
  const angle = ignition.angle?.si ?? angleOfDrop(crank, drop);
  return { angle, drop, gauge: drop / lean, slope: timingSlope(crank, angle) };
}

function portsOf({ ports }: Input, crank: Crank, gasket: number): Worked['ports'] {
  const datum = ports?.['measured from'];
  if (!ports || !datum) return [];
  return (['exhaust', 'transfer'] as const).flatMap(name => {
    const height = ports[name];
    if (!height) return [];
    const roof = roofFrom(crank, height.si, datum, ports['crown below the cylinder top']?.si);
    return [{ name, now: portDuration(crank, roof), ...(gasket !== 0 && { after: afterGasket(crank, roof, gasket) }) }];
  });
}

function chamberOf(input: Input, exhaust: Worked['ports'][number] | undefined, gasket: number): Chamber | undefined {
  const { chamber, bore, stroke } = input;
  if (!chamber || !bore || !stroke) return undefined;
  const volume = chamber.liquid.si - (chamber['plug thread']?.si ?? 0);
  const ratios = (held: number, port: Port | undefined): Ratios => ({
    full: fullRatio({ bore: bore.si, stroke: stroke.si }, held),
    trapped: trappedRatio(bore.si, port?.roof ?? Number.NaN, held),
  });
  return {
    volume,
    now: ratios(volume, exhaust?.now),
    ...(gasket !== 0 && { after: ratios(volume + boreArea(bore.si) * gasket, exhaust?.after) }),
  };
}

type Solders = NonNullable<Input['squish']>;
const squishSides = (group: Solders): readonly (readonly ['left' | 'front', 'right' | 'back'])[] =>
  (
    [
      ['left', 'right'],
      ['front', 'back'],
    ] as const
  ).filter(([a, b]) => group[a] && group[b]);

function squishOf(group: Solders, gasket: number): readonly Pair[] {
  return squishSides(group).map(names => {
    const [a, b] = [group[names[0]], group[names[1]]];
    const half = Math.max(a?.half ?? SOLDER_LIMITS, b?.half ?? SOLDER_LIMITS);
    const verdict = (more: number): Squish =>
      squishVerdict({ sides: [si(a) + more, si(b) + more], half, ...(group.least && { least: group.least.si }) });
    return { names, now: verdict(0), ...(gasket !== 0 && { after: verdict(gasket) }) };
  });
}

function paceOf(input: Input, swept: number): Worked['pace'] {
  const [speed, stroke] = [input['engine speed'], input.stroke];
  if (!speed || !stroke) return undefined;
  return {
    piston: meanPistonSpeed(stroke.si, speed.si),
    acceleration: topAcceleration({ stroke: stroke.si, rod: si(input.rod) }, speed.si),
    pressure: meanEffectivePressure({ power: si(input.power), swept, speed: speed.si }),
  };
}

function pipeOf({ pipe }: Input, exhaust: Port | undefined): Worked['pipe'] {
  if (!pipe) return undefined;
  const wave = pipe['wave speed']?.si ?? waveSpeed(si(pipe['gas temperature']));
  const duration = pipe['exhaust duration']?.si ?? exhaust?.duration ?? Number.NaN;
  const tuned = { wave, duration, speed: pipe['tuned speed'].si };
  const length = tunedLength(tuned);
  const [header, diffuser, baffle] = [
    si(pipe['header diameter']),
    si(pipe['diffuser half-angle']),
    si(pipe['baffle half-angle']),
  ];
  // The wave runs as the root of the temperature: what 100 K more do to the speed at which this length works.
  const hotter = Math.sqrt(1 + 100 / (wave ** 2 / waveSpeed(1) ** 2)) - 1;
  return {
    length,
    hotter,
    duration,
    wave,
    ...(header + diffuser + baffle > 0 && { cones: pipeOf1973({ length, header, diffuser, baffle }) }),
  };
}

type Reading = NonNullable<Input['compression readings']>[number];
const reading = ({ ran, compression, gauge, engine, throttle }: Reading) => ({
  ran: ran.si,
  pressure: compression.si,
  gauge,
  hot: engine === 'hot',
  open: throttle === 'held open',
  ...(compression.half !== undefined && { half: compression.half }),
});
