/**
 * When to shift up: where the next gear pushes as hard as this one, at the same road speed.
 *
 * highest n up to the limiter with T(n) i1 = T(n i2/i1) i2; where this gear still pushes harder at the limiter: there.
 * T torque [N·m], i overall ratios of this gear and the next [1], n engine speed [rad/s]. Only ratios count, so gears
 * alone will do. Steady pull: rotating parts and the time of the shift bring the best point slightly lower in the low gears.
 * Source: principle read at a forum page citing P. Van Valkenburgh (checks/rows/gearing.json).
 */
import { fastest, slowest, type TorqueCurve, torqueAt } from './torque-curve.ts';

export type ShiftPoint =
  | { readonly kind: 'crossing'; readonly rotation: number; readonly after: number }
  | { readonly kind: 'limiter'; readonly rotation: number; readonly after: number }
  /** The torque is not known where it would be compared: nothing is said rather than a speed that may be too high. */
  | { readonly kind: 'not known'; readonly why: 'curve ends below the limiter' | 'curve begins above the next gear' };

/** One for each shift up, first gear first. */
export const shiftPoints = (
  curve: TorqueCurve,
  { gears, limiter }: { readonly gears: readonly number[]; readonly limiter: number },
): readonly ShiftPoint[] =>
  gears.slice(1).map((next, n) => shiftPoint(curve, (gears[n] ?? Number.NaN) / next, limiter));

/** `step`: this gear over the next one, above 1. */
function shiftPoint(curve: TorqueCurve, step: number, limiter: number): ShiftPoint {
  const after = (rotation: number): number => rotation / step;
  /** How much harder this gear pushes [N·m, at the next gear's shaft]. */
  const gain = (rotation: number): number => torqueAt(curve, rotation) * step - torqueAt(curve, after(rotation));
  const top = Math.min(limiter, fastest(curve));
  const foot = slowest(curve) * step;
  if (!(foot < top)) return { kind: 'not known', why: 'curve begins above the next gear' };
  if (gain(top) > 0)
    return top < limiter
      ? { kind: 'not known', why: 'curve ends below the limiter' }
      : { kind: 'limiter', rotation: limiter, after: after(limiter) };
  // The gain is straight between the points of the curve and the points of the next gear, so a bracket is a straight line.
  const kinks = curve
    .flatMap(({ rotation }) => [rotation, rotation * step])
    .filter(rotation => rotation > foot && rotation < top);
  const places = [foot, ...kinks, top].toSorted((a, b) => b - a);
  const below = places.findIndex(rotation => gain(rotation) > 0);
  // The next gear pushes at least as hard wherever both are known: where they cross lies lower still.
  if (below < 0) return { kind: 'not known', why: 'curve begins above the next gear' };
  const [low, high] = [places[below] ?? foot, places[below - 1] ?? top];
  const [over, under] = [gain(low), gain(high)];
  const rotation = low + ((high - low) * over) / (over - under);
  return { kind: 'crossing', rotation, after: after(rotation) };
}
