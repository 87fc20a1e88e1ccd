/** Tie rods: how far a kingpin turns for where the inner end of its rod is. Lengths [m], angles [rad]. */
import { cross, dot, minus, plus, size, turned, type Vector } from '../vector.ts';

/** One kingpin with its arm and tie rod. */
export type Rod = {
  readonly pivot: Vector; // a point of the kingpin axis
  readonly axis: Vector; // along it, upward, length 1
  readonly arm: Vector; // pivot to the outer end of the rod, wheel straight ahead
  readonly length: number; // of the rod, joint to joint
};

/**
 * Turn of the kingpin that fits the rod between its ends; of the two that do, the one nearest to `near`.
 * A cos δ + B sin δ = C;  D = pivot - inner end, A = D·a - (D·k)(k·a), B = D·(k × a), C = (l² - D² - a²)/2 - (D·k)(k·a)
 * δ = atan2(B, A) ± acos(C / √(A² + B²)). Undefined when the rod does not reach. Source: rodrigues.
 */
export function rodTurn({ pivot, axis, arm, length }: Rod, inner: Vector, near = 0): number | undefined {
  const d = minus(pivot, inner);
  const along = dot(d, axis) * dot(axis, arm);
  const a = dot(d, arm) - along;
  const b = dot(d, cross(axis, arm));
  const c = (length ** 2 - dot(d, d) - dot(arm, arm)) / 2 - along;
  const ratio = c / Math.hypot(a, b);
  if (!(Math.abs(ratio) <= 1)) return undefined;
  const [middle, off] = [Math.atan2(b, a), Math.acos(ratio)];
  const [one, other] = [nearest(middle + off, near), nearest(middle - off, near)];
  return Math.abs(one - near) <= Math.abs(other - near) ? one : other;
}

const nearest = (angle: number, near: number): number =>
  angle - 2 * Math.PI * Math.round((angle - near) / (2 * Math.PI));

/** Rod that holds the wheel straight ahead with its inner end there [m]. */
export const straightRod = ({ pivot, arm }: Omit<Rod, 'length'>, inner: Vector): number =>
  size(minus(plus(pivot, arm), inner));

/**
 * Turn of the kingpin for a longer rod [rad/m, left +].  dδ/dl = 1 / (unit rod · (k × arm)), the inverse of the effective arm.
 * Infinite where rod and arm are in line. Source: rodrigues.
 */
export function turnPerLength({ pivot, axis, arm }: Rod, inner: Vector, turn: number): number {
  const now = turned(arm, axis, turn);
  const rod = minus(plus(pivot, now), inner);
  return size(rod) / dot(rod, cross(axis, now));
}

/** The steering arm on the column: where the inner ends of both rods are for a turn of the column. */
export type Column = {
  readonly centre: Vector; // where the column axis meets the plane of the arm
  readonly axis: Vector; // upward, length 1
  readonly left: Vector; // centre to the inner end of the left rod, straight ahead
  readonly right: Vector;
};

export const innerEnd = (column: Column, side: 'left' | 'right', turn: number): Vector =>
  plus(column.centre, turned(column[side], column.axis, turn));
