/**
 * Replacing all of a set together at fixed hours, whatever was replaced singly in between (both rear hubs, four wheel bearings).
 *
 *   C(T) = (c_p + c_f M(T)) / T;   M(t) = F(t) + ∫₀ᵗ M(t - x) dF(x)
 *
 * M expected failures by t of one place that gets a new part on each failure; c_p a planned replacement, c_f one on failure.
 * The integral is summed at middles of steps (Xie 1989, memory), at two step widths, and the two are carried on to none:
 * within 1e-7 for shapes of 1 to 5 and t up to a few scales. Source: Barlow and Proschan 1965, 3 (memory).
 */
import { chanceBetween, type Weibull } from '../weibull/index.ts';
import type { Costs } from './by-age.ts';

const STEPS = 800;
/** Enough to look for the least: the curve is flat there. */
const ROUGH_STEPS = 100;

/** M at an age of 0 or more. */
export function renewals(life: Weibull, age: number, steps = STEPS): number {
  if (!(age >= 0)) throw new Error(`renewals: age must be 0 or more, got ${age}`);
  if (age === 0) return 0;
  const [coarse, fine] = [summed(life, age, steps), summed(life, age, 2 * steps)];
  return fine + (fine - coarse) / 3;
}

function summed(life: Weibull, age: number, steps: number): number {
  const half = age / steps / 2;
  const failedBy = Float64Array.from({ length: 2 * steps + 1 }, (_, n) => chanceBetween(life, 0, n * half));
  const at = (n: number): number => failedBy[n] as number;
  const grown = new Float64Array(steps + 1); // M(n) - M(n - 1)
  let last = 0;
  for (let n = 1; n <= steps; n++) {
    let sum = at(2 * n) - at(1) * last;
    for (let j = 1; j < n; j++) sum += (grown[j] as number) * at(2 * (n - j) + 1);
    const now = sum / (1 - at(1));
    grown[n] = now - last;
    last = now;
  }
  return last;
}

export type Together = { readonly at: number; readonly rate: number; readonly failures: number };

/**
 * The hours at which replacing all together costs least, the first least of the curve up to twice the scale, to a
 * thousandth; undefined where it only falls: then replacing together is no help.
 */
export function replaceTogether(life: Weibull, { planned, failure }: Costs): Together | undefined {
  if (!(planned > 0 && failure > planned))
    throw new Error(`replaceTogether: failure must cost more than planned, above 0, got ${failure} and ${planned}`);
  const rate = (age: number): number => (planned + failure * renewals(life, age, ROUGH_STEPS)) / age;
  const step = life.scale / 20;
  let at = step;
  while (at < 2 * life.scale && rate(at + step) < rate(at)) at += step;
  if (at >= 2 * life.scale) return undefined;
  let [low, high] = [Math.max(at - step, step / 1000), at + step];
  // One foot between low and high: thirds that cannot hold it are cut off.
  while (high - low > 1e-4 * high) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (rate(a) < rate(b)) high = b;
    else low = a;
  }
  at = (low + high) / 2;
  const failures = renewals(life, at);
  return { at, rate: (planned + failure * failures) / at, failures };
}
