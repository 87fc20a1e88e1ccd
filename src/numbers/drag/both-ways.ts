/**
 * Two directions averaged: a slope goes out of a0 exactly, a light wind to first order.
 *
 *   a = (a_out + a_back)/2;  u = √(u_out² + u_back²)/2;  fall ≈ (a0_back - a0_out) me/(2 m g)
 *
 * Valid: the same stretch both ways, wind along it under 2 m/s. A single direction is answered with its own figures and
 * marked. Interval: t95 of the smaller number of degrees of freedom, which is not too narrow. Source: coast-down, jcgm-100.
 */
import { STANDARD_GRAVITY } from '../gravity.ts';
import { student95 } from '../student.ts';
import { type Drag, dragOf, type Rolling, type Slowing } from './coast.ts';
import type { CoastFit } from './fit.ts';

export type Known = { readonly value: number; readonly half: number }; // 19 of 20 within ± half
export type CoastResult = {
  readonly slowing: Slowing;
  readonly area: Known; // m²
  readonly rolling: Known; // 1
  readonly directions: 1 | 2;
  /** Fall of the ground along the first run, as if all the difference came from it [1]; not a number with one run. */
  readonly fall: number;
  /** The two directions differ by more than their own scatter. */
  readonly apart: boolean;
};
/** Limits ± over the value, of mass and of density: they go into the result. */
export type Doubt = { readonly mass: number; readonly density: number };

export function bothWays(out: CoastFit, back: CoastFit | undefined, kart: Rolling, doubt: Doubt): CoastResult {
  const mean = (of: (fit: CoastFit) => number): number => (back ? (of(out) + of(back)) / 2 : of(out));
  const u = (of: (fit: CoastFit) => number): number => (back ? Math.hypot(of(out), of(back)) / 2 : of(out));
  const t = student95(Math.min(out.points, back?.points ?? out.points) - 3);
  const slowing = { a0: mean(f => f.a0), a2: mean(f => f.a2) };
  const drag: Drag = dragOf(slowing, kart);
  const half = (value: number, relative: number, shared: number): number =>
    value * Math.hypot(t * relative, 2 * (shared / Math.sqrt(3)));
  const differ = (of: (fit: CoastFit) => number, spread: (fit: CoastFit) => number): boolean =>
    back !== undefined && Math.abs(of(out) - of(back)) > t * Math.hypot(spread(out), spread(back));
  return {
    slowing,
    area: { value: drag.area, half: half(drag.area, u(f => f.u2) / slowing.a2, Math.hypot(doubt.mass, doubt.density)) },
    rolling: { value: drag.rolling, half: half(drag.rolling, u(f => f.u0) / slowing.a0, 0) },
    directions: back ? 2 : 1,
    fall: back ? ((back.a0 - out.a0) * kart.effectiveMass) / (2 * kart.mass * STANDARD_GRAVITY) : Number.NaN,
    apart:
      differ(
        f => f.a0,
        f => f.u0,
      ) ||
      differ(
        f => f.a2,
        f => f.u2,
      ),
  };
}
