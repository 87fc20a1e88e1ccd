/**
 * What each axle carries while braking, and which locks first.
 *
 * Wf = m g (b + z h)/L;  Wr = m g (L - b - z h)/L;  ideal front share = (b + z h)/L
 * front locks at zF = (μ b + φ δ L)/(φ L - μ h), rear at zR = (μ (L - b) - φ δ L)/((1 - φ) L + μ h)
 * m mass with driver [kg], L wheelbase, b centre of mass ahead of the rear axle, h its height [m], z deceleration over g
 * [1], φ front share of the brakes' force, μ grip of the tyres, δ drag of the engine at the rear over weight [1].
 * Level track, stiff kart, no air drag, one grip for both axles. Source: moment balance (checks/rows/brakes.json).
 */
import { STANDARD_GRAVITY } from '../gravity.ts';

export type Kart = {
  readonly wheelbase: number;
  readonly ahead: number; // centre of mass ahead of the rear axle [m]
  readonly height: number; // of the centre of mass [m]
};

export const weightOf = (mass: number): number => mass * STANDARD_GRAVITY;

/** Loads [N] at a deceleration z [g]; below 0 the rear has lifted before. */
export const brakingLoads = (
  kart: Kart,
  mass: number,
  z: number,
): { readonly front: number; readonly rear: number } => {
  const front = weightOf(mass) * idealFrontShare(kart, z);
  return { front, rear: weightOf(mass) - front };
};

/** Front share of force that uses both axles alike [1]. */
export const idealFrontShare = ({ wheelbase, ahead, height }: Kart, z: number): number =>
  (ahead + z * height) / wheelbase;

type Sharing = { readonly frontShare: number; readonly grip: number; readonly drag?: number };

/** Deceleration [g] at which the front wheels lock; infinite where they never do. */
export function frontLocks({ wheelbase, ahead, height }: Kart, { frontShare, grip, drag = 0 }: Sharing): number {
  const gain = frontShare * wheelbase - grip * height;
  return gain > 0 ? (grip * ahead + frontShare * drag * wheelbase) / gain : Number.POSITIVE_INFINITY;
}

/** Deceleration [g] at which the rear axle locks; 0 where the drag of the engine alone does it. */
export const rearLocks = ({ wheelbase, ahead, height }: Kart, { frontShare, grip, drag = 0 }: Sharing): number =>
  Math.max(
    0,
    (grip * (wheelbase - ahead) - frontShare * drag * wheelbase) / ((1 - frontShare) * wheelbase + grip * height),
  );

/** Deceleration [g] at which the rear wheels leave the ground. */
export const rearLifts = ({ wheelbase, ahead, height }: Kart): number => (wheelbase - ahead) / height;
