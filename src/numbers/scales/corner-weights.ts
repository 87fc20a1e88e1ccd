/** Four scales under four wheels: shares, the centre of gravity seen from above, and what a mass at a place adds to each. */

/** One number a wheel: masses [kg] or standard uncertainties [kg]. */
export type Corners = {
  readonly frontLeft: number;
  readonly frontRight: number;
  readonly rearLeft: number;
  readonly rearRight: number;
};

/** Middle of tyre contact to middle of tyre contact. The two tracks need not be equal. */
export type Stance = { readonly wheelbase: number; readonly frontTrack: number; readonly rearTrack: number }; // [m]

/** Seen from above [m]: forward of the rear axle, left of the middle line. */
export type Place = { readonly forward: number; readonly left: number };

/** Parts of the whole, each 0 to 1. `cross` is the diagonal front right with rear left. */
export type Shares = { readonly front: number; readonly left: number; readonly cross: number };

export const totalOf = (w: Corners): number => w.frontLeft + w.frontRight + w.rearLeft + w.rearRight;

/**
 * Shares of the four readings.  front = (FL + FR)/W;  left = (FL + RL)/W;  cross = (FR + RL)/W.
 * FL, FR, RL, RR readings [kg]; W their sum [kg]. Valid for level scales, W above 0. Source: corner-shares.
 */
export function shares(w: Corners): Shares {
  const total = totalOf(w);
  return {
    front: (w.frontLeft + w.frontRight) / total,
    left: (w.frontLeft + w.rearLeft) / total,
    cross: (w.frontRight + w.rearLeft) / total,
  };
}

/**
 * How far off a share is when its readings are.  u² = ((1 - s)² uI² + s² uO²)/W².
 * s share [1]; uI, uO standard uncertainty of the sum of the readings inside and outside the share [kg]; W total [kg].
 * Valid for independent readings. Source: jcgm-100, 5.1.2.
 */
export const shareUncertainty = (share: number, total: number, inside: number, outside: number): number =>
  Math.hypot((1 - share) * inside, share * outside) / total;

/**
 * Centre of gravity seen from above, with unequal tracks.  x = L front;  y = [(FL - FR) tF/2 + (RL - RR) tR/2]/W.
 * L wheelbase [m]; tF, tR front and rear track [m]; x forward of the rear axle [m]; y left of the middle [m].
 * (left - 1/2) t gives another y wherever tF is not tR. Valid for a kart standing level and straight. Source: statics.
 */
export function centre(w: Corners, { wheelbase, frontTrack, rearTrack }: Stance): Place {
  const total = totalOf(w);
  if (!(total > 0)) return { forward: Number.NaN, left: Number.NaN };
  const sideways = ((w.frontLeft - w.frontRight) * frontTrack + (w.rearLeft - w.rearRight) * rearTrack) / 2;
  return { forward: wheelbase * shares(w).front, left: sideways / total };
}

/**
 * What a mass adds to each scale, on a stiff frame over four equal springs.  F = A (AᵀA)⁻¹ [m, m x, m y], written out:
 *   front pair = m x/L;  left - right of an axle with track t = 2 t m y/(tF² + tR²).
 * m mass [kg]; x, y its place [m]. Valid for small masses on a frame that does not twist; a real frame shares a side load
 * otherwise between front and rear. Source: plane-fit.
 */
export function response(
  mass: number,
  { forward, left }: Place,
  { wheelbase, frontTrack, rearTrack }: Stance,
): Corners {
  const front = (mass * forward) / wheelbase;
  const apart = (2 * mass * left) / (frontTrack ** 2 + rearTrack ** 2);
  return {
    frontLeft: (front + apart * frontTrack) / 2,
    frontRight: (front - apart * frontTrack) / 2,
    rearLeft: (mass - front + apart * rearTrack) / 2,
    rearRight: (mass - front - apart * rearTrack) / 2,
  };
}
