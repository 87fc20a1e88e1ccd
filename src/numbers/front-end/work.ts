/** The front end worked out at one steering angle, before it is put into figures and words. */
import { type Asked, sides, siOf } from '../asked.ts';
import { shimmed } from '../wheel-loads/input.ts';
import { ackermannShare, idealInner } from './ackermann.ts';
import { frontEndOf, hasLinkage } from './build.ts';
import { innerEnd, turnPerLength } from './linkage.ts';
import { type FrontEnd, frontEndSweep, type Sweep, steerAtLift, turnsFor } from './sweep.ts';
import { diagonalTransfer, seriesStiffness } from './warp.ts';
import { jacking, type SideName, scrub, trail } from './wheel.ts';

/** Lift is looked for up to this turn of the steering [rad]: further no kart steers. Common practice. */
const MOST = (45 * Math.PI) / 180;

export type At = { readonly [key in keyof Sweep]: number };
export type PerSide = {
  readonly scrub: number;
  readonly trail: number;
  readonly jacking: number; // [m/rad]
  readonly rod?: number; // its length [m]
  readonly toePerLength?: number; // toe-in for a longer rod, straight ahead [rad/m]
};
export type Worked = {
  readonly front: FrontEnd;
  readonly sides: Readonly<Record<SideName, PerSide>>;
  readonly at?: At; // at the steering angle asked for
  readonly plates?: { readonly ideal: number; readonly share: number };
  readonly series?: number; // frame and tyres in twist [N·m/rad]
  readonly transfer?: { readonly front: number; readonly rear: number };
  readonly lateral: number;
  readonly liftSteer?: number | 'stays down';
};

export function work(input: Asked): Worked {
  const front = frontEndOf(input);
  const lateral = siOf(input, 'lateral acceleration', 0);
  const steer = siOf(input, hasLinkage(input) ? 'column angle' : 'steering angle');
  const at = Number.isNaN(steer) ? undefined : only(frontEndSweep(front, [steer], lateral));
  const series = seriesOf(input, front);
  const track = { frontTrack: siOf(input, 'front contact track'), rearTrack: siOf(input, 'rear contact track') };
  const [inner, outer] = [siOf(input, 'inner angle'), siOf(input, 'outer angle')];
  const [spacing, wheelbase] = [siOf(input, 'kingpin spacing'), siOf(input, 'wheelbase')];
  const towards = steer < 0 ? 'right' : 'left';
  return {
    front,
    lateral,
    sides: { left: perSide(front, 'left'), right: perSide(front, 'right') },
    ...(at && { at }),
    ...(!Number.isNaN(inner) && {
      plates: { ideal: idealInner(outer, spacing, wheelbase), share: ackermannShare(inner, outer, spacing, wheelbase) },
    }),
    ...(series !== undefined && { series }),
    ...(series !== undefined && at && { transfer: diagonalTransfer(series, at.warp, track) }),
    ...(front.weight && { liftSteer: steerAtLift(front, towards, lateral, MOST) ?? 'stays down' }),
  };
}

function seriesOf(input: Asked, { weight }: FrontEnd): number | undefined {
  if (input.shim !== undefined) return shimmed(input);
  if (input['frame torque per degree'] === undefined) return undefined;
  return seriesStiffness(
    weight?.springs ?? {
      frame: siOf(input, 'frame torque per degree') / (Math.PI / 180),
      frontTyre: siOf(input, 'front tyre stiffness'),
      rearTyre: siOf(input, 'rear tyre stiffness'),
      frontTrack: siOf(input, 'front contact track'),
      rearTrack: siOf(input, 'rear contact track'),
    },
  );
}

function perSide(front: FrontEnd, side: SideName): PerSide {
  const wheel = front[side];
  const plain = { scrub: scrub(wheel), trail: trail(wheel), jacking: jacking(side, wheel) };
  const { linkage } = front;
  if (linkage === undefined) return plain;
  const perLength = turnPerLength(linkage[side], innerEnd(linkage.column, side, 0), turnsFor(front, 0)[side]);
  return { ...plain, rod: linkage[side].length, toePerLength: side === 'left' ? -perLength : perLength };
}

const only = (sweep: Sweep): At =>
  Object.fromEntries(Object.entries(sweep).map(([key, values]) => [key, values[0]])) as unknown as At;

/** Names of those of a pair that differ between the sides. */
export const uneven = (input: Asked, names: readonly string[]): readonly string[] =>
  names.filter(name => {
    const { left, right } = sides(input, name);
    return Number.isFinite(left) && Number.isFinite(right) && left !== right;
  });
