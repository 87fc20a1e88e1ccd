/**
 * The speed at which all the power goes into air and rolling.
 *
 *   P η = (½ ρ CdA v² + Crr m g) v
 *
 * P power at the crankshaft [W], η share of it that reaches the ground [1], the rest as in coast.ts. Valid: level, still,
 * gearing that lets the engine hold that power there; a short track never reaches it. Source: drag-balance.
 * Solved by bracketing and halving: the right side only grows with v.
 */
import { STANDARD_GRAVITY } from '../gravity.ts';
import type { Drag } from './coast.ts';

export type Powered = Drag & { readonly power: number; readonly mass: number; readonly density: number };

export const airForce = ({ area, density }: Pick<Powered, 'area' | 'density'>, speed: number): number =>
  0.5 * density * area * speed ** 2;
export const rollingForce = ({ rolling, mass }: Pick<Powered, 'rolling' | 'mass'>): number =>
  rolling * mass * STANDARD_GRAVITY;

/** Speed [m/s]; `power` [W] is what reaches the ground, P η. */
export function balanceSpeed(kart: Powered): number {
  const spare = (v: number): number => kart.power - (airForce(kart, v) + rollingForce(kart)) * v;
  let high = 1;
  for (let n = 0; n < 100 && spare(high) > 0; n++) high *= 2;
  let low = 0;
  for (let n = 0; n < 200 && high - low > 1e-14 * high; n++) {
    const middle = (low + high) / 2;
    if (spare(middle) > 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
