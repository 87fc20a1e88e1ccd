/** Toe of the front wheels. Lengths [m], angles [rad]; toe-in above 0, toe-out below, everywhere. */

/**
 * Angle of one wheel from how much further apart the rims (or sight lines) are behind than in front.
 * θ = asin(T / 2D). T both wheels together, D the diameter or length it was read over. |T| < 2D. Source: toe-geometry.
 */
export const toeAngle = (total: number, diameter: number): number => Math.asin(total / (2 * diameter));

/** Both wheels together, read over D, from the angle of one [m].  T = 2 D sin θ. Source: toe-geometry. */
export const toeTotal = (angle: number, diameter: number): number => 2 * diameter * Math.sin(angle);

/** One wheel's own angle from its own reading over D.  θ = asin(t / D). |t| < D. Source: toe-geometry. */
export const toeOfOne = (reading: number, diameter: number): number => Math.asin(reading / diameter);

/**
 * Angle of one wheel from a string beside it, parallel to the middle of the kart.  θ = atan((front gap - rear gap) / D).
 * Gap: string in to the edge of the rim. D between the two places, along the string. Source: toe-geometry.
 */
export const toeFromString = (front: number, rear: number, between: number): number =>
  Math.atan2(front - rear, between);

/** What a string out of parallel adds to that wheel [rad].  atan(off / span). Source: toe-geometry. */
export const stringBias = (off: number, span: number): number => Math.atan2(off, span);

/**
 * A reading and the same at the same marks after half a turn of the wheels: the mean is free of rim run-out, half of the
 * difference is the run-out's share. A rim that is out by the same at both places shows nothing. Source: half-turn.
 */
export const halfTurn = (before: number, after: number): { readonly mean: number; readonly runOut: number } => ({
  mean: (before + after) / 2,
  runOut: Math.abs(before - after) / 2,
});

/** The same toe of both wheels, read over another diameter [m]: 2 mm at the tyre is less at the rim. Source: toe-geometry. */
export const toeAtDiameter = (total: number, readOver: number, diameter: number): number =>
  toeTotal(toeAngle(total, readOver), diameter);
