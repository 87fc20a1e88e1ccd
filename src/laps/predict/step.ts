/**
 * One step along the way: Runge and Kutta's of fourth order for z, and the time it takes. The middle of the step comes
 * with it at no cost: z there lies `bulge` above the middle of both ends.
 *
 *   bulge = h (k1 - k4) / 8 as third-order dense output,  t = ∫ ds / sqrt(z) ≈ 2 h / (v0 + v1) - h bulge / (3 zm^1.5)
 *
 * The first term is exact where the acceleration is constant, from rest too. Source: Hairer, Nørsett and Wanner, Solving
 * Ordinary Differential Equations I, II.6 (memory); the time is the first-order change of the integral with the bulge.
 */
import { BRAKE, COAST, engineForce, type Forces } from './forces.ts';

/** Where a step ends: z and bulge, in a place that is used again and again. */
export type Reached = { z: number; bulge: number };

/**
 * The slopes are reckoned inside the loop and not by a function of their own: it would be too large for the compiler to
 * take in, and a call for each takes three times as long.
 *
 * @param how a gear, COAST, or BRAKE going back along the way; curvature goes from `first` to `last` in a straight line
 */
export function step(f: Forces, z: number, h: number, first: number, last: number, how: number, into: Reached): void {
  // Read once: the same in the loop takes three times as long.
  const { mass, weight, lift, drag, rolling, flat, tight, power, still, side, brake, brakeCap, drive, perMass } = f;
  const pulled = how === COAST ? f.perRolls : how === BRAKE ? 0 : (f.perHeavy[how] as number);
  let at = z;
  let k = first;
  let change = 0;
  let begun = 0;
  let sum = 0;
  for (let stage = 0; stage < 4; stage++) {
    const load = weight + lift * at;
    const inward = mass * at * k;
    const held = drag * at + rolling * load + inward * (flat + tight * k);
    if (how === COAST) change = -2 * held * pulled;
    else {
      const level = lift === 0 ? still : load > 0 ? load ** power : 0;
      const share = inward / (side * level);
      const left = 1 - share * share;
      const round = left > 0 ? Math.sqrt(left) * level : 0;
      if (how === BRAKE) change = 2 * (Math.min(brake * round, brakeCap) + held) * perMass;
      else {
        const engine = (engineForce(f, at > 0 ? Math.sqrt(at) : 0, how) - held) * pulled;
        change = 2 * Math.min(engine, (drive * round - held) * perMass);
      }
    }
    if (stage === 0) begun = change;
    sum += stage === 1 || stage === 2 ? 2 * change : change;
    k = stage < 2 ? (first + last) / 2 : last;
    at = z + (stage < 2 ? h / 2 : h) * change;
  }
  into.z = z + (h * sum) / 6;
  into.bulge = (h * (begun - change)) / 8;
}

/**
 * From the limit of a bend on, where the root of what is left of the grip begins with no end to its slope: a cell is cut
 * at the squares of quarters. So the step stays of its order.
 */
export const finer = (at: number): number => Math.min(1, (Math.sqrt(at) + 0.25) ** 2);

/** s, for a step of h [m]. */
export function timeOver(h: number, from: number, to: number, bulge: number): number {
  const middle = (from + to) / 2;
  return (2 * h) / (Math.sqrt(from) + Math.sqrt(to)) - (h * bulge) / (3 * middle * Math.sqrt(middle));
}

/** The bulge of a step that takes so long: of several small ones as one. */
export function bulgeFor(h: number, from: number, to: number, time: number): number {
  const middle = (from + to) / 2;
  return ((timeOver(h, from, to, 0) - time) * 3 * middle * Math.sqrt(middle)) / h;
}
