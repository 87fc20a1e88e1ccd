/**
 * What a split hub clamped on a round axle holds by friction alone.
 *
 * T = c μ F d;  A = 2 c μ F;  Q = √((2 k T / d)² + (k A)²);  S = 2 c μ F / Q;  p = F / (d l)
 * F force of all bolts together [N], μ friction of hub on axle [1], d axle diameter [m], c by how the bore bears [1],
 * T torque [N·m], A axial force [N], k dynamic factor [1], Q demand at the seat [N], S margin against slip [1], p mean
 * pressure over the projected area [Pa], l axle inside the hub [m].
 * Valid while the slot stands open and the bore closes on the axle. Source: the split-hub method of text books, its
 * published worked output and the pressure fields integrated outside the project (checks/rows/hub-hold.json).
 */

import { preloadByNutFactor, preloadRange } from '../bolt/index.ts';

/** c by how the bore bears on the axle. `band` is a thin strap closing without friction: never a hub. */
export const CONTACT = {
  'two lines': 1,
  'close fit': 4 / Math.PI,
  conforming: Math.PI / 2,
  band: Math.PI,
} as const;
export type Contact = keyof typeof CONTACT;

export type Clamp = {
  readonly force: number; // all bolts together [N]
  readonly friction: number; // [1]
  readonly diameter: number; // of the axle [m]
  readonly contact: Contact;
};
/** What the hub must carry at the same time, dynamic factors already in it. */
export type Demand = { readonly torque: number; readonly axial: number }; // [N·m], [N]

/** Torque at which the clean friction joint slips [N·m]. */
export const slipTorque = ({ contact, friction, force, diameter }: Clamp): number =>
  CONTACT[contact] * friction * force * diameter;

/** Axial force at which it slips [N]. */
export const slipAxial = ({ contact, friction, force }: Clamp): number => 2 * CONTACT[contact] * friction * force;

/** Torque and axial force as one force along the seat [N]. */
export const seatDemand = ({ torque, axial }: Demand, diameter: number): number =>
  Math.hypot((2 * torque) / diameter, axial);

/** How many times the demand is held [1]; without a demand there is no such number. */
export const slipMargin = (clamp: Clamp, demand: Demand): number => {
  const asked = seatDemand(demand, clamp.diameter);
  return asked > 0 ? slipAxial(clamp) / asked : Number.NaN;
};

/** Force of all bolts together that holds the demand `margin` times [N]. */
export const clampFor = (clamp: Omit<Clamp, 'force'>, demand: Demand, margin: number): number =>
  (margin * seatDemand(demand, clamp.diameter)) / slipAxial({ ...clamp, force: 1 });

/** Mean pressure over the projected area [Pa]. */
export const meanPressure = (force: number, diameter: number, length: number): number => force / (diameter * length);

/** Pressure that an overturning moment [N·m] adds at the ends of a stiff, full seat: 6 M / (d l²) [Pa]. */
export const edgePressure = (moment: number, diameter: number, length: number): number =>
  (6 * moment) / (diameter * length ** 2);

/**
 * Jaw force of a hub with one slot, hinged opposite to it [N]: F × bolt arm / axle arm, arms from the hinge line [m].
 * An upper bound, because the bending of the web takes part of the bolts' force first.
 */
export const hingeForce = (force: number, boltArm: number, axleArm: number): number => (force * boltArm) / axleArm;

/**
 * Least preload of one bolt [N]: (1 - Γ)(M - M0) / (K d).
 * M torque of the wrench [N·m], M0 running torque of a locking nut [N·m], K nut factor [1], d thread diameter [m],
 * Γ scatter of preload by the tightening method [1]. Below 0 never: a nut that only runs holds nothing.
 */
export const leastPreload = (bolt: {
  readonly torque: number;
  readonly running: number;
  readonly nutFactor: number;
  readonly diameter: number;
  readonly scatter: number;
}): number => {
  const nominal = preloadByNutFactor({
    factor: bolt.nutFactor,
    diameter: bolt.diameter,
    torque: bolt.torque - bolt.running,
  });
  return preloadRange(Math.max(0, nominal), bolt.scatter).min;
};
