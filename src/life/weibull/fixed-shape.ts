/**
 * The life when the shape is taken as known, and the life it lasts at least when nothing or little has failed.
 *
 *   η = (Σ t^β / r)^(1/β);   η_L = (2 Σ t^β / χ²_{C, 2r+2})^(1/β)
 *
 * t ages of all, failed and fine; r failures; β shape taken as known [1]; C confidence that the scale is not below η_L.
 * With r = 0 and C = 0.632 the bound is what "one failure at any moment" gives. A bound, never an estimate.
 * Source: Nelson 1985; Abernethy, New Weibull Handbook, 6 (memory). Finds count at the age they were found.
 */
import { erlangScore } from '../erlang.ts';
import { ended, joined, type Life, mustBeLives } from '../life.ts';

export type FixedShape = {
  readonly scale?: number; // most likely; none where nothing failed
  readonly atLeast?: number; // none where the record holds no hours
  readonly failures: number;
};

export function scaleForShape(lives: readonly Life[], shape: number, confidence: number): FixedShape {
  mustBeLives('scaleForShape', lives);
  if (!(shape > 0)) throw new Error(`scaleForShape: shape must be above 0, got ${shape}`);
  const all = joined(lives);
  const largest = all.reduce((most, { age }) => Math.max(most, age), 0);
  const failures = all.filter(ended).length;
  if (largest === 0) return { failures };
  const power = (age: number): number => (age / largest) ** shape;
  const sum = all.reduce((total, { age, from = 0 }) => total + power(age) - power(from), 0);
  const scale = (events: number): number => largest * (sum / events) ** (1 / shape);
  return {
    failures,
    ...(failures > 0 && { scale: scale(failures) }),
    atLeast: scale(erlangScore(confidence, failures + 1)),
  };
}
