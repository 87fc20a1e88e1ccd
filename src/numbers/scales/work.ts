/** The scales worked out in numbers, before they are put into figures and words. */
import { rectangular } from '../chain.ts';
import { chanceInside } from '../conformance.ts';
import type { Uncertain } from '../subject.ts';
import { type Aim, type Ballast, leastBallast } from './ballast.ts';
import { type Fixing, type FixingRule, fixing, fixingRule } from './ballast-fixing.ts';
import { cgHeight, cgHeightUncertainty, type Raised } from './cg-height.ts';
import {
  type Corners,
  centre,
  type Place,
  response,
  type Shares,
  type Stance,
  shares,
  shareUncertainty,
  totalOf,
} from './corner-weights.ts';
import { type Input, WHEELS } from './input.ts';
import { chanceHeavyEnough, leastReading, massAtTheEnd, type Weighed } from './least-mass.ts';

/** Pump petrol, common practice: 0.745 kg/l, and anything from 0.715 to 0.775. */
const PETROL = { density: 745, half: 30 } as const;
const SCALE_HALF = 0.2; // kg; limits ± of one scale where none were given (common practice)

export type Worked = {
  readonly input: Input;
  readonly unit: string; // of the masses
  readonly now: Weighed;
  readonly assumed: { readonly scale: boolean; readonly fuel: boolean };
  readonly corners?: { readonly readings: Corners; readonly shares: Shares; readonly u: Shares };
  readonly centre?: Place;
  readonly height?: { readonly height: number; readonly tilt: number; readonly u: number };
  readonly end: Weighed;
  readonly least?: { readonly limit: number; readonly atEnd: number; readonly before: number; readonly chance: number };
  readonly confidence: number;
  readonly ballast?: Ballast;
  readonly after?: { readonly shares: Shares };
  readonly fixings: readonly (Fixing | undefined)[]; // a place with no ballast has none
  readonly rule: FixingRule;
  readonly ruleMissing: readonly string[];
};

export function work(input: Input): Worked {
  const corners = cornersOf(input);
  const readings = corners?.readings;
  const one = input['front left'] ?? input.total;
  const now: Weighed = {
    mass: readings ? totalOf(readings) : (input.total?.si ?? Number.NaN),
    u: input['standard uncertainty']?.si ?? corners?.uTotal ?? rectangular(halfOf(input.total)),
  };
  const confidence = input.confidence?.si ?? 0.95;
  const end = massAtTheEnd(now, fuelOf(input));
  const stance = stanceOf(input);
  const limits = fixingRule({
    'ballast bolt diameter': { ...(input['bolt diameter'] ? { min: input['bolt diameter'] } : {}) },
    'ballast bolts a block': { ...(input['bolts a block'] ? { min: input['bolts a block'] } : {}) },
    'ballast block mass': { ...(input['largest block'] ? { max: input['largest block'] } : {}) },
    'ballast mass a bolt': { ...(input['mass a bolt'] ? { max: input['mass a bolt'] } : {}) },
  });
  const least = leastOf(input, end, now.mass - end.mass, confidence);
  const ballast = readings && stance ? ballastFor(input, readings, stance, least?.before ?? 0) : undefined;
  return {
    input,
    unit: one?.unit ?? 'kg',
    now,
    assumed: {
      scale: !input['standard uncertainty'] && (corners?.plain ?? input.total?.half === undefined),
      fuel: input['fuel to burn'] !== undefined && input['fuel density'] === undefined,
    },
    ...(corners && readings ? { corners: { readings, shares: shares(readings), u: corners.u } } : {}),
    ...(readings && stance ? { centre: centre(readings, stance) } : {}),
    ...heightOf(input, readings),
    end,
    ...(least ? { least } : {}),
    confidence,
    ...(ballast ? { ballast: ballast.found, after: { shares: ballast.after } } : {}),
    fixings: (ballast?.found.masses ?? []).map(mass => (mass > 0.005 ? fixing(mass, limits.rule) : undefined)),
    rule: limits.rule,
    ruleMissing: limits.missing,
  };
}

/** The chance that the true share lies within the limits of its target; undefined where it has none. Source: jcgm-106, 7.4. */
export function asWanted({ input, corners }: Worked, name: keyof Shares): number | undefined {
  const wanted = name === 'cross' ? undefined : input[`${name} target`];
  if (wanted?.half === undefined || corners === undefined) return undefined;
  const limits = { min: wanted.si - wanted.half, max: wanted.si + wanted.half };
  return chanceInside(corners.shares[name], corners.u[name], limits);
}

const halfOf = (value: Uncertain | undefined): number => value?.half ?? SCALE_HALF;

function cornersOf(input: Input) {
  const [fl, fr, rl, rr] = WHEELS.map(wheel => input[wheel]);
  if (!fl || !fr || !rl || !rr) return undefined;
  const readings: Corners = { frontLeft: fl.si, frontRight: fr.si, rearLeft: rl.si, rearRight: rr.si };
  const [uFl, uFr, uRl, uRr] = [fl, fr, rl, rr].map(r => rectangular(halfOf(r))) as [number, number, number, number];
  const total = totalOf(readings);
  const at = shares(readings);
  const u: Shares = {
    front: shareUncertainty(at.front, total, Math.hypot(uFl, uFr), Math.hypot(uRl, uRr)),
    left: shareUncertainty(at.left, total, Math.hypot(uFl, uRl), Math.hypot(uFr, uRr)),
    cross: shareUncertainty(at.cross, total, Math.hypot(uFr, uRl), Math.hypot(uFl, uRr)),
  };
  const plain = [fl, fr, rl, rr].some(r => r.half === undefined);
  return { readings, u, uTotal: Math.hypot(uFl, uFr, uRl, uRr), plain };
}

function stanceOf(input: Input): Stance | undefined {
  const [wheelbase, front, rear] = [input.wheelbase, input['front track'], input['rear track']];
  return wheelbase && front && rear ? { wheelbase: wheelbase.si, frontTrack: front.si, rearTrack: rear.si } : undefined;
}

function fuelOf(input: Input) {
  const fuel = input['fuel to burn'];
  const density = input['fuel density'];
  return {
    volume: fuel?.si ?? 0,
    uVolume: rectangular(fuel?.half ?? 0),
    density: density?.si ?? PETROL.density,
    uDensity: rectangular(density ? (density.half ?? 0) : PETROL.half),
  };
}

/** `before`: what the scales must show before the run, so that the end is proven [kg]. */
function leastOf(input: Input, end: Weighed, burnt: number, confidence: number) {
  const limit = input['least mass']?.si;
  if (limit === undefined) return undefined;
  const atEnd = leastReading(limit, end.u, confidence);
  return { limit, atEnd, before: atEnd + burnt, chance: chanceHeavyEnough(end, limit) };
}

function heightOf(input: Input, readings: Corners | undefined) {
  const [raised, rise, wheelbase] = [input['front raised'], input.rise, input.wheelbase];
  const [front, rear] = [input['front wheel radius'], input['rear wheel radius']];
  if (!readings || !raised || !rise || !wheelbase || !front || !rear) return {};
  const asked: Raised = {
    mass: totalOf(readings),
    wheelbase: wheelbase.si,
    frontLevel: readings.frontLeft + readings.frontRight,
    frontRaised: raised.si,
    frontRadius: front.si,
    rearRadius: rear.si,
    rise: rise.si,
  };
  const [left, right] = [halfOf(input['front left']), halfOf(input['front right'])];
  const u = cgHeightUncertainty(asked, {
    frontLevel: Math.hypot(left, right),
    frontRaised: raised.half ?? Math.hypot(left, right),
    ...Object.fromEntries(
      (
        [
          ['wheelbase', wheelbase],
          ['rise', rise],
          ['frontRadius', front],
          ['rearRadius', rear],
        ] as const
      ).flatMap(([name, { half }]) => (half === undefined ? [] : [[name, half]])),
    ),
  });
  return { height: { ...cgHeight(asked), u } };
}

function ballastFor(input: Input, readings: Corners, stance: Stance, least: number) {
  const places = input.places;
  if (places === undefined) return undefined;
  const adds = places.map(({ forward, left }) => shares(response(1, { forward: forward.si, left: left.si }, stance)));
  const now = shares(readings);
  const aims = (['front', 'left'] as const).flatMap((name): Aim[] => {
    const wanted = input[`${name} target`];
    if (wanted === undefined) return [];
    const half = wanted.half ?? 0;
    return [{ now: now[name], at: adds.map(each => each[name]), low: wanted.si - half, high: wanted.si + half }];
  });
  const found = leastBallast({ mass: totalOf(readings), least, most: places.map(({ most }) => most.si), aims });
  const mean = (name: keyof Shares): number =>
    (totalOf(readings) * now[name] + found.masses.reduce((sum, m, n) => sum + m * (adds[n]?.[name] ?? 0), 0)) /
    (totalOf(readings) + found.total);
  return { found, after: { front: mean('front'), left: mean('left'), cross: mean('cross') } };
}
