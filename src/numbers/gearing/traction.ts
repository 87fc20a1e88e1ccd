/**
 * What the rear tyres push with, gear by gear, against what holds the kart back on the level.
 *
 * F = T i η 2π/C;  D = ½ ρ A v² + c m g;  top speed where F = D
 * T torque [N·m], i overall ratio [1], η efficiency of the driveline [1], C rolling circumference [m], ρ density of air
 * [kg/m³], A drag area [m²], v speed [m/s], c rolling resistance [1], m mass [kg], g 9.80665 m/s².
 * Level, no wind, straight; grip is not looked at: in low gears the tyres may slip first. Source: first principles and
 * a worked force (checks/rows/gearing.json).
 */
import { STANDARD_GRAVITY } from '../gravity.ts';
import { type Gearbox, overallRatios, rotationAt, type Sprockets, speedInGear } from './ratio.ts';
import { fastest, slowest, type TorqueCurve, torqueAt } from './torque-curve.ts';

export type Driveline = Gearbox & Sprockets & { readonly circumference: number; readonly efficiency: number };
export type Resistance = {
  readonly density: number;
  readonly dragArea: number;
  readonly rolling: number;
  readonly mass: number;
};
export type Push = { readonly rotation: number; readonly speed: number; readonly force: number };

/** Force at the ground [N] from torque at the crank [N·m]. */
export const tractiveForce = (at: {
  readonly torque: number;
  readonly ratio: number;
  readonly efficiency: number;
  readonly circumference: number;
}): number => (at.torque * at.ratio * at.efficiency * 2 * Math.PI) / at.circumference;

/** Air and rolling together [N]. */
export const resistanceAt = ({ density, dragArea, rolling, mass }: Resistance, speed: number): number =>
  0.5 * density * dragArea * speed ** 2 + rolling * mass * STANDARD_GRAVITY;

/** The push at each point of the torque curve, for each gear, up to the limiter. */
export function tractionCurve(
  curve: TorqueCurve,
  line: Driveline,
  limiter = Number.POSITIVE_INFINITY,
): readonly (readonly Push[])[] {
  const end = Math.min(limiter, fastest(curve));
  const at = [...curve.map(p => p.rotation).filter(rotation => rotation < end), end];
  return overallRatios(line, line).map(ratio =>
    at.map(rotation => ({
      rotation,
      speed: speedInGear({ ...line, rotation, ratio }),
      force: tractiveForce({ ...line, ratio, torque: torqueAt(curve, rotation) }),
    })),
  );
}

export type TopSpeed =
  | { readonly kind: 'drag'; readonly speed: number; readonly gear: number } // the air holds it there
  | { readonly kind: 'gearing'; readonly speed: number; readonly gear: number } // still pushing at the end of the curve
  | { readonly kind: 'not reached' }; // no gear pushes more than it is held back

/** The highest speed any gear can hold, gear counted from 1. */
export function topSpeed(curve: TorqueCurve, line: Driveline, against: Resistance, limiter: number): TopSpeed {
  const end = Math.min(limiter, fastest(curve));
  const found = overallRatios(line, line).flatMap((ratio, n): Exclude<TopSpeed, { kind: 'not reached' }>[] => {
    const left = (speed: number): number =>
      tractiveForce({ ...line, ratio, torque: torqueAt(curve, clamp(rotationAt({ ...line, ratio, speed }))) }) -
      resistanceAt(against, speed);
    // Rounding must not carry the engine speed past the ends of the curve.
    const clamp = (rotation: number): number => Math.min(end, Math.max(slowest(curve), rotation));
    const places = [...curve.map(p => p.rotation).filter(r => r < end), end].map(rotation =>
      speedInGear({ ...line, ratio, rotation }),
    );
    const last = places.findLastIndex(speed => left(speed) > 0);
    const [low, high] = [places[last], places[last + 1]];
    if (low === undefined) return [];
    return high === undefined
      ? [{ kind: 'gearing', speed: low, gear: n + 1 }]
      : [{ kind: 'drag', speed: crossing(left, low, high), gear: n + 1 }];
  });
  return found.toSorted((a, b) => b.speed - a.speed)[0] ?? { kind: 'not reached' };
}

/** Halves a bracket whose lower end is above 0 until it is as narrow as numbers are. */
function crossing(left: (speed: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let n = 0; n < 60; n++) {
    const middle = (low + high) / 2;
    if (left(middle) > 0) low = middle;
    else high = middle;
  }
  return low;
}
