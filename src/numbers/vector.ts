/** Vectors of three, x forward, y left, z up. */
export type Vector = readonly [number, number, number];

export const plus = (a: Vector, b: Vector): Vector => [a[0] + b[0], a[1] + b[1], a[2] + b[2]];
export const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1], a[2] - b[2]];
export const times = (f: number, a: Vector): Vector => [f * a[0], f * a[1], f * a[2]];
export const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
export const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];
export const size = (a: Vector): number => Math.hypot(a[0], a[1], a[2]);
/** Length 1, same direction. A vector of length 0 gives no numbers. */
export const unit = (a: Vector): Vector => times(1 / size(a), a);

/**
 * Turns `a` by `angle` [rad, counter-clockwise seen from the tip of `axis`] about a unit axis.
 * a' = a cos + (k × a) sin + k (k · a)(1 - cos)
 * Any angle. Source: rodrigues.
 */
export function turned(a: Vector, axis: Vector, angle: number): Vector {
  const c = Math.cos(angle);
  return plus(plus(times(c, a), times(Math.sin(angle), cross(axis, a))), times(dot(axis, a) * (1 - c), axis));
}
