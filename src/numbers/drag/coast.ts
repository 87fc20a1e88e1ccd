/**
 * A kart rolling out, clutch in: what slows it, from constants to speeds and times, and back to area and coefficient.
 *
 *   -dv/dt = a0 + a2 v²;  v(t) = √(a0/a2) tan(atan(v0 √(a2/a0)) - t √(a0 a2));  t = (atan(v1 k) - atan(v2 k)) / √(a0 a2), k = √(a2/a0)
 *   CdA = 2 me a2 / ρ;  Crr = a0 me / (m g)
 *
 * v speed [m/s], t time [s], a0 slowing at no speed [m/s²], a2 slowing by the air over v² [1/m], CdA drag area [m²],
 * Crr rolling coefficient [1], m mass [kg], me mass with what its wheels, axle and discs add by turning [kg], ρ air density
 * [kg/m³]. Valid: level, still, straight, warm tyres; scrub of axle and toe, bearings and gearbox count as rolling. Source: coast-down.
 */
import { STANDARD_GRAVITY } from '../gravity.ts';

/** What slows: a0 [m/s²] above 0, a2 [1/m] above 0. */
export type Slowing = { readonly a0: number; readonly a2: number };

/** Time [s] from speed v1 down to v2 [m/s]. */
export function coastTime(v1: number, v2: number, { a0, a2 }: Slowing): number {
  const k = Math.sqrt(a2 / a0);
  return (Math.atan(v1 * k) - Math.atan(v2 * k)) / Math.sqrt(a0 * a2);
}

/** Speed [m/s] after t [s] from v0; 0 once it stands. */
export function coastSpeed(t: number, v0: number, { a0, a2 }: Slowing): number {
  const angle = Math.atan(v0 * Math.sqrt(a2 / a0)) - t * Math.sqrt(a0 * a2);
  return angle > 0 ? Math.sqrt(a0 / a2) * Math.tan(angle) : 0;
}

export type Rolling = { readonly mass: number; readonly effectiveMass: number; readonly density: number };
export type Drag = { readonly area: number; readonly rolling: number }; // CdA [m²], Crr [1]

export const dragOf = ({ a0, a2 }: Slowing, { mass, effectiveMass, density }: Rolling): Drag => ({
  area: (2 * effectiveMass * a2) / density,
  rolling: (a0 * effectiveMass) / (mass * STANDARD_GRAVITY),
});

/** The way back: what a drag area and a rolling coefficient slow. */
export const slowingOf = ({ area, rolling }: Drag, { mass, effectiveMass, density }: Rolling): Slowing => ({
  a0: (rolling * mass * STANDARD_GRAVITY) / effectiveMass,
  a2: (area * density) / (2 * effectiveMass),
});
