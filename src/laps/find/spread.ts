/**
 * How far a lap time may be off, from how far the places may be.
 *
 *   s² = s_b² (1/v₀² + 1/v₁² - 2 e^(-T/τ) / (v₀ v₁)) + s_w² (1/v₀² + 1/v₁²) + s_i²(h₀)/v₀² + s_i²(h₁)/v₁²
 *
 * s one standard deviation of the lap time [s];  T lap time [s];  v speed through the gate at start and end [m/s];  s_b slow
 * error of the receiver, which wanders with time constant τ [m, s];  s_w its quick error [m];  s_i error of the cubic between
 * two fixes h apart [m]. With v₀ = v₁ and fixes close by it is (1/v) √(2 s_b² (1 - e^(-T/τ)) + 2 s_w²). Two laps that share
 * a crossing share its error: judge several by `overLaps`, never by the spread over √n.
 * Source: derived for an error that wanders and forgets (Ornstein-Uhlenbeck); what a receiver is worth by its rate is
 * memory, an assumption that a person may better.
 */
import type { Crossing } from './crossing.ts';

export type Receiver = {
  readonly slow: number; // m, standard deviation one way
  readonly memory: number; // s
  readonly quick: number; // m
};

/** By fixes a second: memory. Between two of them the next lower. */
const BY_RATE: readonly (readonly [number, Receiver])[] = [
  [25, { slow: 0.5, memory: 60, quick: 0.08 }],
  [10, { slow: 0.8, memory: 60, quick: 0.15 }],
  [5, { slow: 1.0, memory: 60, quick: 0.3 }],
  [0, { slow: 1.5, memory: 60, quick: 0.5 }],
];
/** Of a ring that holds 68 of 100 fixes, to one way: √(-2 ln 0.32). */
const RING = Math.sqrt(-2 * Math.log(1 - 0.68));
/** A rate of 10 a second shows itself as steps of 0.1 s, give or take. */
const RATE_SLACK = 0.9;

/** What to assume of a receiver that logs every `step` s; its own word on its accuracy [m] goes first. */
export function receiverFor(step: number, accuracy?: number): Receiver {
  if (!(step > 0)) throw new Error(`receiverFor: step must be above 0 s, got ${step}`);
  const found = BY_RATE.find(([rate]) => 1 / step >= RATE_SLACK * rate)?.[1] as Receiver;
  if (accuracy === undefined || !(accuracy > 0)) return found;
  return { ...found, slow: accuracy / RING, quick: Math.min(found.quick, accuracy / RING) };
}

/**
 * Standard deviation of the place on the cubic between two fixes, m: 0.12 m for fixes a second apart, with the power 2.5
 * of the time between, as of a way whose jerk is chance. Seen on noise-free logs at 1, 5 and 10 a second (computed).
 */
export const betweenFixes = (over: number): number => 0.12 * over ** 2.5;

/** One standard deviation of the time from one crossing to another, s. */
export function spreadOf(start: Crossing, end: Crossing, { slow, memory, quick }: Receiver): number {
  const took = end.time - start.time;
  const [a, b] = [1 / start.speed, 1 / end.speed];
  const wander = slow ** 2 * (a * a + b * b - 2 * a * b * Math.exp(-took / memory));
  const noise = quick ** 2 * (a * a + b * b);
  return Math.sqrt(wander + noise + (betweenFixes(start.over) * a) ** 2 + (betweenFixes(end.over) * b) ** 2);
}

/** The mean of n laps on end: from the first crossing to the last, over n. */
export function overLaps(
  crossings: readonly Crossing[],
  receiver: Receiver,
): { readonly mean: number; readonly spread: number } {
  const [first, last] = [crossings[0], crossings.at(-1)];
  const laps = crossings.length - 1;
  if (first === undefined || last === undefined || laps < 1)
    throw new Error(`overLaps: crossings must be two or more, got ${crossings.length}`);
  return { mean: (last.time - first.time) / laps, spread: spreadOf(first, last, receiver) / laps };
}
