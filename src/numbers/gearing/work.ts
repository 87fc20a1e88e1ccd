/** Gearing worked out in numbers, before it is put into figures and words. */
import { DRAG, type Input } from './input.ts';
import { oneTooth, type Pair, pairsFor, type Wanted, wantedRatio } from './pairs.ts';
import {
  circumferenceFrom,
  DIRECT,
  type Gearbox,
  overallRatios,
  rotationAfter,
  type Sprockets,
  speedInGear,
} from './ratio.ts';
import { type ShiftPoint, shiftPoints } from './shift.ts';
import type { TorqueCurve } from './torque-curve.ts';
import { type Driveline, type Resistance, type TopSpeed, topSpeed } from './traction.ts';

const EFFICIENCY = 0.92; // two pairs of gears and a chain; memory

export type Round = {
  readonly circumference: number; // [m]
  readonly half: number; // limits of it, 0 where none are known [m]
  readonly from: 'tape' | 'log';
  readonly slip?: number; // the tyre turns this much faster than the road goes by [1]
};
export type Choice = {
  readonly wanted: Wanted;
  readonly need: number; // rear over front [1]
  readonly now: number; // engine speed with the sprockets on the kart [rad/s]
  readonly pairs: readonly Pair[];
  readonly doubt: number; // of each engine speed, from the limits of the circumference [rad/s]
};
export type Worked = {
  readonly input: Input;
  readonly box: Gearbox;
  readonly on: Sprockets;
  readonly round: Round;
  readonly ratios: readonly number[];
  readonly speeds: readonly number[]; // [m/s] at the asked engine speed
  readonly afters: readonly number[]; // [rad/s] after each shift there
  readonly tooth: ReturnType<typeof oneTooth>;
  readonly choice?: Choice;
  readonly shifts: readonly ShiftPoint[];
  readonly pull?: { readonly curve: TorqueCurve; readonly line: Driveline; readonly limiter: number };
  readonly against?: Resistance;
  readonly top?: TopSpeed;
};

export function work(input: Input): Worked {
  const box = boxOf(input);
  const on: Sprockets = { front: input['front sprocket'].si, rear: input['rear sprocket'].si };
  const ratios = overallRatios(box, on);
  const round = roundOf(input, ratios);
  const rotation = input['engine speed'].si;
  const choice = choose(input, box, on, round);
  const pull = pullOf(input, box, on, round);
  const against = resistanceOf(input);
  return {
    input,
    box,
    on,
    round,
    ratios,
    speeds: ratios.map(ratio => speedInGear({ ...round, rotation, ratio })),
    afters: ratios.slice(1).map((into, n) => rotationAfter(rotation, ratios[n] ?? Number.NaN, into)),
    tooth: oneTooth(on),
    ...(choice && { choice }),
    shifts: pull ? shiftPoints(pull.curve, { gears: ratios, limiter: pull.limiter }) : [],
    ...(pull && { pull }),
    ...(against && { against }),
    ...(pull && against && { top: topSpeed(pull.curve, pull.line, against, pull.limiter) }),
  };
}

const boxOf = ({ drive, gears, 'primary ratio': primary }: Input): Gearbox =>
  drive === 'direct' ? DIRECT : { primary: primary?.si ?? Number.NaN, gears: (gears ?? []).map(gear => gear.si) };

/** A log holds what the tape cannot: slip and growth. It wins where both are given. */
function roundOf(input: Input, ratios: readonly number[]): Round {
  const { 'rolling circumference': tape, 'logged engine speed': rotation, 'logged speed': speed } = input;
  if (!rotation || !speed) return { circumference: tape?.si ?? Number.NaN, half: tape?.half ?? 0, from: 'tape' };
  const ratio = ratios[(input['logged gear']?.si ?? 1) - 1] ?? Number.NaN;
  const circumference = circumferenceFrom({ rotation: rotation.si, speed: speed.si, ratio });
  return { circumference, half: 0, from: 'log', ...(tape && { slip: 1 - circumference / tape.si }) };
}

function choose(input: Input, box: Gearbox, on: Sprockets, round: Round): Choice | undefined {
  const { 'wanted engine speed': rotation, 'wanted speed': speed } = input;
  if (!rotation || !speed) return undefined;
  const gear = box.gears[(input['wanted gear']?.si ?? 1) - 1] ?? Number.NaN;
  const wanted = { ...round, rotation: rotation.si, speed: speed.si, inside: box.primary * gear };
  const teeth = (key: 'front sprockets owned' | 'rear sprockets owned'): readonly number[] =>
    (input[key] ?? []).map(each => each.si);
  const real = pairsFor(wanted, { front: teeth('front sprockets owned'), rear: teeth('rear sprockets owned') });
  return {
    wanted,
    need: wantedRatio(wanted),
    now: pairsFor(wanted, { front: [on.front], rear: [on.rear] })[0]?.rotation ?? Number.NaN,
    pairs: real.filter(({ ratio }) => ratio >= 1),
    doubt: (rotation.si * round.half) / round.circumference,
  };
}

function pullOf(input: Input, box: Gearbox, on: Sprockets, { circumference }: Round): Worked['pull'] {
  const { 'torque curve': points, limiter } = input;
  if (!points || !limiter) return undefined;
  const efficiency = input['driveline efficiency']?.si ?? EFFICIENCY;
  return {
    curve: points.map(({ at, torque }) => ({ rotation: at.si, torque: torque.si })),
    line: { ...box, ...on, circumference, efficiency },
    limiter: limiter.si,
  };
}

function resistanceOf(input: Input): Resistance | undefined {
  const [mass, dragArea, rolling, density] = DRAG.map(key => input[key]?.si);
  return mass === undefined || dragArea === undefined || rolling === undefined || density === undefined
    ? undefined
    : { mass, dragArea, rolling, density };
}
