/** The front end over a range of steering, as arrays of one length for a plot. Pure. Lengths [m], angles [rad], left +. */
import { type Body, fourWheels, liftAt } from '../wheel-loads/statics.ts';
import { ackermannShare } from './ackermann.ts';
import { type Column, innerEnd, type Rod, rodTurn } from './linkage.ts';
import type { Springs } from './warp.ts';
import { type FrontWheel, type SideName, type Steered, steered } from './wheel.ts';

export type FrontEnd = {
  readonly left: FrontWheel;
  readonly right: FrontWheel;
  readonly wheelbase?: number;
  readonly spacing?: number; // of the kingpins at hub height
  readonly linkage?: { readonly column: Column; readonly left: Rod; readonly right: Rod };
  /** Needed for the load and the lift of the inner rear wheel. */
  readonly weight?: { readonly body: Body; readonly springs: Springs };
};

/** One number a steering angle in each array; not a number where it is not known or the rods do not reach. */
export type Sweep = {
  readonly steer: readonly number[]; // turn of the column with a linkage, else of both kingpins
  readonly turnLeft: readonly number[]; // of the left kingpin
  readonly turnRight: readonly number[];
  readonly roadLeft: readonly number[]; // where the left wheel points
  readonly roadRight: readonly number[];
  readonly camberLeft: readonly number[];
  readonly camberRight: readonly number[];
  readonly riseLeft: readonly number[]; // contact height; below 0 pushes that corner of the kart up
  readonly riseRight: readonly number[];
  readonly warp: readonly number[]; // right contact above the left
  readonly ackermann: readonly number[]; // of the difference ideal for the outer wheel, 1 is 100 %
  readonly innerRear: readonly number[]; // load at the lateral acceleration asked for [N]; below 0 it is up
  readonly liftAt: readonly number[]; // lateral acceleration that lifts the inner rear [m/s²]
};

/** Inner rear: at the side the kart turns to. `lateral` 0 or more, always towards that side [m/s²]. */
export function frontEndSweep(front: FrontEnd, steer: readonly number[], lateral = 0): Sweep {
  const found = Object.fromEntries(KEYS.map(key => [key, new Array<number>(steer.length)])) as Record<
    (typeof KEYS)[number],
    number[]
  >;
  steer.forEach((angle, n) => {
    const turn = turnsFor(front, angle);
    const [left, right] = (['left', 'right'] as const).map(side => steered(side, front[side], turn[side])) as [
      Steered,
      Steered,
    ];
    const warp = right.rise - left.rise;
    const loads = innerRear(front, angle, warp, lateral);
    const at = {
      steer: angle,
      turnLeft: turn.left,
      turnRight: turn.right,
      roadLeft: left.roadSteer,
      roadRight: right.roadSteer,
      camberLeft: left.camber,
      camberRight: right.camber,
      riseLeft: left.rise,
      riseRight: right.rise,
      warp,
      ackermann: ackermannOf(front, angle, left.roadSteer, right.roadSteer),
      innerRear: loads.load,
      liftAt: loads.lift,
    };
    for (const key of KEYS) found[key][n] = at[key];
  });
  return found;
}

const KEYS = [
  'steer',
  'turnLeft',
  'turnRight',
  'roadLeft',
  'roadRight',
  'camberLeft',
  'camberRight',
  'riseLeft',
  'riseRight',
  'warp',
  'ackermann',
  'innerRear',
  'liftAt',
] as const satisfies readonly (keyof Sweep)[];

/** Evenly spaced angles from right to left lock, both ends in. `count` 2 or more. */
export const steeringAngles = (most: number, count: number): readonly number[] =>
  Array.from({ length: count }, (_, n) => -most + (2 * most * n) / (count - 1));

/** Turn of each kingpin for a turn of the column; both alike without a linkage. */
export function turnsFor({ linkage }: FrontEnd, angle: number): { readonly left: number; readonly right: number } {
  if (linkage === undefined) return { left: angle, right: angle };
  const of = (side: SideName): number => {
    const turn = rodTurn(linkage[side], innerEnd(linkage.column, side, angle)) ?? Number.NaN;
    return Math.abs(turn) < Math.PI / 2 ? turn : Number.NaN; // the other way to fit the rod, past its dead centre
  };
  const [left, right] = [of('left'), of('right')];
  // A column that one rod stops turns neither wheel.
  return Number.isNaN(left + right) ? { left: Number.NaN, right: Number.NaN } : { left, right };
}

function ackermannOf({ wheelbase, spacing }: FrontEnd, angle: number, left: number, right: number): number {
  if (wheelbase === undefined || spacing === undefined || angle === 0) return Number.NaN;
  const [inner, outer] = angle > 0 ? [left, right] : [-right, -left];
  return ackermannShare(inner, outer, spacing, wheelbase);
}

function innerRear({ weight }: FrontEnd, angle: number, warp: number, lateral: number) {
  if (weight === undefined || Number.isNaN(warp)) return { load: Number.NaN, lift: Number.NaN };
  // To the right: the kart in a mirror, where the left is inner again.
  const left = angle >= 0;
  const body = left ? weight.body : { ...weight.body, left: -weight.body.left };
  const towards = left ? warp : -warp;
  return {
    load: fourWheels(body, weight.springs, { lateral, braking: 0 }, towards).rearLeft,
    lift: liftAt('rearLeft', body, weight.springs, { braking: 0, warp: towards }),
  };
}

/**
 * Steering to one side at which the inner rear wheel leaves the road [rad, 0 or more]; undefined when it stays down up to
 * `most`. Found on 200 steps and halved down to a ten-thousandth of a degree.
 */
export function steerAtLift(front: FrontEnd, side: SideName, lateral: number, most: number): number | undefined {
  const sign = side === 'left' ? 1 : -1;
  const up = (angle: number): boolean => (frontEndSweep(front, [sign * angle], lateral).innerRear[0] ?? 1) <= 0;
  const STEPS = 200;
  for (let n = 0; n <= STEPS; n++) {
    if (!up((most * n) / STEPS)) continue;
    let [low, high] = [(most * Math.max(0, n - 1)) / STEPS, (most * n) / STEPS];
    while (high - low > 1e-6) {
      const middle = (low + high) / 2;
      if (up(middle)) high = middle;
      else low = middle;
    }
    return high;
  }
  return undefined;
}

/** Toe against tie-rod length: what lengthening both rods by each change does, straight ahead. Toe-in above 0. */
export function toeAgainstRod(front: FrontEnd, changes: readonly number[]) {
  const toe = (side: SideName): readonly number[] =>
    changes.map(change => {
      const { linkage } = front;
      if (linkage === undefined) return Number.NaN;
      const rod = { ...linkage[side], length: linkage[side].length + change };
      const turn = rodTurn(rod, innerEnd(linkage.column, side, 0));
      const heading = steered(side, front[side], turn ?? Number.NaN).roadSteer;
      return side === 'left' ? -heading : heading;
    });
  const [left, right] = [toe('left'), toe('right')];
  return { change: changes, left, right, total: left.map((value, n) => value + (right[n] ?? Number.NaN)) };
}
