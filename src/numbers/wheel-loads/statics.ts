/** The loads of four wheels without springs but the frame and the tyres. Left turn throughout: the left wheels are inner. */
import type { Springs } from '../front-end/warp.ts';

/** Standard gravity, exact: 3rd CGPM 1901 [m/s²]. */
export const G = 9.80665;

/** Kart with its driver. Lengths [m]. */
export type Body = {
  readonly mass: number; // [kg]
  readonly wheelbase: number;
  readonly ahead: number; // centre of mass ahead of the rear axle
  readonly left: number; // and left of the middle
  readonly heightFront: number; // of the part of the mass that stands on the front axle
  readonly heightRear: number;
};

/** How it moves. [m/s²] */
export type Motion = {
  readonly lateral: number; // to the left, 0 or more
  readonly braking: number; // slowing down +
};
export type Loads = {
  readonly frontLeft: number; // [N]; below 0 the wheel would have to be held down
  readonly frontRight: number;
  readonly rearLeft: number;
  readonly rearRight: number;
};

/**
 * Load on each axle [N].  front = m (g b + a h) / L, rear = m g - front.
 * b centre of mass ahead of the rear axle, a braking, h its height. Level road, no wing. Source: spring-statics.
 */
export function axleLoads(body: Body, braking: number): { readonly front: number; readonly rear: number } {
  const front = (body.mass * (G * body.ahead + braking * height(body))) / body.wheelbase;
  return { front, rear: body.mass * G - front };
}

/** Height of the whole centre of mass [m], from its two parts. */
export const height = ({ ahead, wheelbase, heightFront, heightRear }: Body): number =>
  (ahead / wheelbase) * heightFront + (1 - ahead / wheelbase) * heightRear;

/**
 * Load of each wheel with all four on the road [N]; linear, so a load below 0 says that this is not so.
 * KF (φF - z/tF) + Kt (φF - φR) = MF;  KR φR + Kt (φR - φF) = MR;  K = k t² / 2, M = m' (a h - g y)
 * outer, inner = W/2 ± K (φ - z/tF) / t. z warp [m]: right front contact above the left. Kt infinite: rigid frame.
 * Source: spring-statics.
 */
export function fourWheels(body: Body, springs: Springs, motion: Motion, warp = 0): Loads {
  const { front, rear } = axleLoads(body, motion.braking);
  const { frontTrack, rearTrack, frame } = springs;
  const kf = (springs.frontTyre * frontTrack ** 2) / 2;
  const kr = (springs.rearTyre * rearTrack ** 2) / 2;
  const pre = (kf * warp) / frontTrack;
  const share = body.ahead / body.wheelbase;
  const mf = body.mass * share * (motion.lateral * body.heightFront - G * body.left) + pre;
  const mr = body.mass * (1 - share) * (motion.lateral * body.heightRear - G * body.left);
  const rigid = !Number.isFinite(frame);
  const det = kf * kr + frame * (kf + kr);
  const rollFront = rigid ? (mf + mr) / (kf + kr) : (mf * (kr + frame) + frame * mr) / det;
  const rollRear = rigid ? rollFront : (mr * (kf + frame) + frame * mf) / det;
  const overFront = (kf * rollFront - pre) / frontTrack;
  const overRear = (kr * rollRear) / rearTrack;
  return {
    frontLeft: front / 2 - overFront,
    frontRight: front / 2 + overFront,
    rearLeft: rear / 2 - overRear,
    rearRight: rear / 2 + overRear,
  };
}

/** Lateral acceleration at which one wheel's load reaches 0 [m/s²]; infinite when it gains or stays. All four down till then. */
export function liftAt(
  wheel: keyof Loads,
  body: Body,
  springs: Springs,
  at: { readonly braking: number; readonly warp: number },
): number {
  const still = fourWheels(body, springs, { lateral: 0, braking: at.braking }, at.warp)[wheel];
  const slope = fourWheels(body, springs, { lateral: 1, braking: at.braking }, at.warp)[wheel] - still;
  return slope < 0 ? Math.max(0, -still / slope) : still <= 0 ? 0 : Number.POSITIVE_INFINITY;
}

/**
 * Loads with one inner wheel in the air [N]: statics alone, whatever the stiffness.
 * Its axle stands on the outer wheel; the other axle takes what is left of the roll moment.
 * Valid where that wheel is up and both others of its four-wheel neighbours stay above 0. Source: spring-statics.
 */
export function threeWheels(
  up: 'frontLeft' | 'rearLeft',
  body: Body,
  tracks: Pick<Springs, 'frontTrack' | 'rearTrack'>,
  motion: Motion,
): Loads {
  const { front, rear } = axleLoads(body, motion.braking);
  const roll = body.mass * (motion.lateral * height(body) - G * body.left);
  if (up === 'rearLeft') {
    const over = (roll - (rear * tracks.rearTrack) / 2) / tracks.frontTrack;
    return { frontLeft: front / 2 - over, frontRight: front / 2 + over, rearLeft: 0, rearRight: rear };
  }
  const over = (roll - (front * tracks.frontTrack) / 2) / tracks.rearTrack;
  return { frontLeft: 0, frontRight: front, rearLeft: rear / 2 - over, rearRight: rear / 2 + over };
}

/**
 * Lateral acceleration at which the kart stands on its outer wheels alone [m/s²].  a / g = (y + yLine(b + a h / g)) / h.
 * yLine half track on the line through both outer contacts. Rigid, tyres do not give, no kerb: a real kart goes over sooner.
 * Source: spring-statics.
 */
export function rollover(
  body: Body,
  { frontTrack, rearTrack }: Pick<Springs, 'frontTrack' | 'rearTrack'>,
  braking = 0,
) {
  const along = (body.ahead + (braking / G) * height(body)) / body.wheelbase;
  const line = (rearTrack + (frontTrack - rearTrack) * along) / 2;
  return (G * (line + body.left)) / height(body);
}
