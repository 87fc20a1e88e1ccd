/** A front wheel that turns about its inclined kingpin: where it touches, how it leans, where it points. */
import { cross, dot, minus, plus, times, turned, unit, type Vector } from '../vector.ts';

export type SideName = 'left' | 'right';

/** One front corner. Lengths [m], angles [rad]. */
export type FrontWheel = {
  readonly caster: number; // seen from the side, top of the kingpin rearward +
  readonly inclination: number; // kingpin seen from the front, top inward +
  readonly stub: number; // kingpin axis at hub height out to the middle plane of the wheel
  readonly forward: number; // hub ahead of the kingpin axis at hub height +
  readonly radius: number; // of the tyre, not its diameter
  readonly camber: number; // straight ahead, top outward +
};

/** A wheel with its kingpin turned. The kingpin axis crosses hub height at the origin of the kart's axes. */
export type Steered = {
  readonly contact: Vector; // lowest point of the wheel [m]
  /** Contact above where it is straight ahead [m]: below 0 pushes that corner of the kart up. */
  readonly rise: number;
  readonly roadSteer: number; // where the wheel points, left + [rad]; not the turn of the kingpin
  readonly camber: number; // top outward + [rad]
};

const outward = (side: SideName): 1 | -1 => (side === 'left' ? 1 : -1);
const UP: Vector = [0, 0, 1];

/**
 * Unit vector along the kingpin, upward.  k = (-tan τ, ∓tan σ, 1) / n, - on the left.
 * τ caster, σ inclination, each below a right angle, as projections on the side and front view. Source: axis-angles.
 */
export const kingpin = (side: SideName, { caster, inclination }: FrontWheel): Vector =>
  unit([-Math.tan(caster), -outward(side) * Math.tan(inclination), 1]);

/**
 * The wheel with its kingpin turned by `turn` [rad, left +], as a thin disc on a flat road.
 * P = C - R u,  u = unit(ẑ - (ẑ·s) s);  camber = asin(-s_z) with s outward;  road steer = heading of s × ẑ
 * C wheel centre, s spin axis, both turned about the kingpin; R radius. |turn| < 90°. No tyre deflection, frame upright.
 * Source: rodrigues, axis-angles.
 */
export function steered(side: SideName, wheel: FrontWheel, turn: number): Steered {
  const straight = disc(side, wheel, 0);
  const { contact, spin } = disc(side, wheel, turn);
  const [x, y] = times(outward(side), cross(spin, UP));
  return {
    contact,
    rise: contact[2] - straight.contact[2],
    roadSteer: Math.atan2(y, x),
    camber: Math.asin(-spin[2]),
  };
}

function disc(side: SideName, wheel: FrontWheel, turn: number): { readonly contact: Vector; readonly spin: Vector } {
  const axis = kingpin(side, wheel);
  const out = outward(side);
  const spin = turned([0, out * Math.cos(wheel.camber), -Math.sin(wheel.camber)], axis, turn);
  const centre = turned([wheel.forward, out * wheel.stub, 0], axis, turn);
  const upright = unit(minus(UP, times(dot(UP, spin), spin)));
  return { contact: plus(centre, times(-wheel.radius, upright)), spin };
}

/** Kingpin axis on the road out to the middle of the tyre [m].  s = e - R tan σ. Wheel upright. Source: axis-angles. */
export const scrub = ({ stub, radius, inclination }: FrontWheel): number => stub - radius * Math.tan(inclination);

/** Contact behind where the kingpin axis meets the road [m].  t = R tan τ - forward. Source: axis-angles. */
export const trail = ({ radius, caster, forward }: FrontWheel): number => radius * Math.tan(caster) - forward;

/**
 * Rise of the contact for a small turn of the kingpin [m/rad].  dz/dδ = ∓(tan τ s + tan σ t) / n, - on the left.
 * Straight ahead, wheel upright. The derivative of `steered` there. Source: rodrigues.
 */
export function jacking(side: SideName, wheel: FrontWheel): number {
  const [tau, sigma] = [Math.tan(wheel.caster), Math.tan(wheel.inclination)];
  return (-outward(side) * (tau * scrub(wheel) + sigma * trail(wheel))) / Math.hypot(1, tau, sigma);
}

/**
 * How far the lower edge of a flat, stiff tyre stands below the middle of its tread [m].  |sin camber| w / 2.
 * An upper bound: a tyre gives way. w width [m]. Source: rodrigues.
 */
export const edgeDrop = (camber: number, width: number): number => (Math.abs(Math.sin(camber)) * width) / 2;
