/**
 * What tyre, brake and chain ask of one rear hub. Outer and inner are those of the corner: the side load pushes the
 * outer hub inward along the axle and pulls the inner hub off its end.
 *
 * A = k μ N;  T = min(s B, μ N R), drive likewise with the engine's torque × ratio × efficiency;  both: √((μ N)² - (T/R)²)
 * N load on the tyre [N], μ grip of the tyre [1], R rolling radius [m], k dynamic factor [1], B torque on the axle [N·m],
 * s share of it: half, or all on the outer hub in a corner where the inner wheel is in the air.
 * The tyre limits the torque, so its own factor is 1 unless one is given. Without wheel loads: inner wheel in the air,
 * so that the outer carries all the weight of the rear; the inner counts with half of it. Braking and drive take
 * the same loads, because weight moves back under drive (common practice, high side).
 */
import { STANDARD_GRAVITY } from '../gravity.ts';

export const USUAL_LOADS = {
  rearShare: 0.57, // of the weight on the rear wheels; common practice
  grip: 1.7, // of a warm slick, side or length; common practice
  sideFactor: 2, // a load put on suddenly is felt twice; from memory, elementary energy
  torqueFactor: 1, // the tyre slips first; common practice
  margin: 1.3, // wanted against slip; common practice
} as const;

export const WHEELS = ['outer', 'inner'] as const;
export type Wheel = (typeof WHEELS)[number];
export type OfWheel<T> = Readonly<Record<Wheel, T>>;

/** Loads on the rear tyres from the mass with driver [kg] and the share of it at the rear [1]. */
export const rearLoads = (mass: number, rearShare: number): OfWheel<number> => {
  const rear = mass * STANDARD_GRAVITY * rearShare;
  return { outer: rear, inner: rear / 2 };
};

/** Side load on a hub [N], dynamic factor in it. */
export const sideLoad = (load: number, grip: number, factor: number): number => load * grip * factor;

type Tyre = { readonly load: number; readonly grip: number; readonly radius: number }; // [N], [1], [m]

/** Torque that one hub feels [N·m]: its share of what the axle gets, at most what its tyre can hold; the tyre alone when unknown. */
export const hubTorque = (axleTorque: number | undefined, share: number, { load, grip, radius }: Tyre): number =>
  Math.min((axleTorque ?? Number.POSITIVE_INFINITY) * share, load * grip * radius);

/** What grip is left to the side [N] while the tyre holds a torque: one grip for both, √((g N)² - (T/R)²). */
export const sideLeft = (torque: number, { load, grip, radius }: Tyre): number =>
  Math.sqrt(Math.max(0, (load * grip) ** 2 - (torque / radius) ** 2));
