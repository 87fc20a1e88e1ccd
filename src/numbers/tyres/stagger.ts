/**
 * Two rear tyres of unequal size on one live axle: the pair rolls like a cone, round a circle of its own.
 *
 *   R = (t/2) (C2 + C1) / (C2 - C1);  S = t C / R
 *
 * R radius to the middle of the axle [m], t rear contact track [m], C1 smaller and C2 larger circumference [m],
 * S stagger C2 - C1 [m], C mean circumference [m]. Valid: both tyres roll without slip, no grip or scrub in it. Source: tyre-cone.
 */
/** Radius [m] of the circle the pair rolls round, toward the smaller tyre; infinite for tyres alike. */
export const staggerRadius = (p: { left: number; right: number; track: number }): number =>
  p.left === p.right ? Number.POSITIVE_INFINITY : ((p.track / 2) * (p.left + p.right)) / Math.abs(p.right - p.left);

/** Stagger [m] that rolls round a radius [m]. */
export const staggerFor = (p: { radius: number; track: number; mean: number }): number => (p.track * p.mean) / p.radius;

/** Circumference of a diameter [m]: C = π d, unloaded. */
export const circumference = (diameter: number): number => Math.PI * diameter;

/** Circumference [m] rolled on the ground with the driver in. */
export const rolledOut = (length: number, turns: number): number => length / turns;

/** Change of road speed at equal engine speed [1]. */
export const speedChange = (before: number, after: number): number => after / before - 1;
