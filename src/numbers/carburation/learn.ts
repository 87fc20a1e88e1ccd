/**
 * How this engine's jet goes with the air, from its own log.
 *
 *   ln J = a + k ln ρ over the points read as right;  k ± t s/√Σ(x - x̄)²,  x = ln ρ
 * J number of the jet, ρ density of the air, of its dry part where every point has it [kg/m³], k exponent [1], s residual
 * standard deviation, never less than that of sizes rounded to their step, step/√12 over the mean jet [1], t two-sided 95 %
 * point of Student's t with n - 2 degrees of freedom.
 * Valid: same fuel, oil, ratio, plug, pipe and needle in all points; five or more, 4 % of density apart or more (common
 * practice). Sources: jet-log, line-fit, student-t.
 */
import { lineFit, type Point } from '../line-fit.ts';
import { student95 } from '../student.ts';
import { type JetAir, PADDOCK, THEORY } from './theory.ts';

/** What the plug said of a main jet at full throttle. Only `right` teaches; `not read` never does. */
export type Reading = 'right' | 'rich' | 'lean' | 'not read';
export type JetPoint = JetAir & { readonly jet: number; readonly reading: Reading };

export const ENOUGH = { points: 5, spread: 0.04 } as const;

export type Learned = {
  readonly kind: 'learned';
  readonly exponent: number;
  readonly low: number; // 19 times of 20; never below 0
  readonly high: number;
  readonly points: number;
  readonly by: 'dry air' | 'all air';
  /** Densities the log has seen [kg/m³], of what `by` says. */
  readonly seen: readonly [least: number, most: number];
};
export type NotYet = { readonly kind: 'not yet'; readonly why: string; readonly right: number };

/** Pure; points of which a size is no number above 0 are left out. */
export function learnExponent(points: readonly JetPoint[]): Learned | NotYet {
  const right = points.filter(({ reading, jet, density }) => reading === 'right' && jet > 0 && density > 0);
  const notYet = (why: string): NotYet => ({ kind: 'not yet', why, right: right.length });
  if (right.length < ENOUGH.points)
    return notYet(`${right.length} of the ${ENOUGH.points} logged sessions it takes were read as right`);
  const dry = right.every(each => each.dry !== undefined && each.dry > 0);
  const densities = right.map(each => (dry ? (each.dry ?? Number.NaN) : each.density));
  const seen = [Math.min(...densities), Math.max(...densities)] as const;
  const apart = seen[1] / seen[0] - 1;
  if (!(apart >= ENOUGH.spread))
    return notYet(`the air of those sessions differed by ${(100 * apart).toFixed(1)} %, and it takes 4 %`);
  const step = smallestStep(right.map(each => each.jet));
  if (step === undefined) return notYet('one jet was right in all of them, so the log shows no step');
  const fit = lineFit(right.map(({ jet }, n): Point => [Math.log(densities[n] ?? Number.NaN), Math.log(jet)]));
  if (fit === undefined) return notYet('the log is no line');
  const mean = right.reduce((sum, { jet }) => sum + jet, 0) / right.length;
  const s = Math.max(fit.residual, step / Math.sqrt(12) / mean);
  const half = (student95(right.length - 2) * s) / Math.sqrt(fit.spread);
  const [low, high] = [fit.slope - half, fit.slope + half];
  if (!(half < WIDEST))
    return notYet(
      `the log leaves the exponent between ${low.toFixed(2)} and ${high.toFixed(2)}, no better than the band`,
    );
  if (!(fit.slope > 0 && fit.slope <= MOST))
    return notYet(`the log gives an exponent of ${fit.slope.toFixed(2)}, which no carburettor has: look through it`);
  const by = dry ? 'dry air' : 'all air';
  // Thinner air never asks for a larger jet (theory: ρ^0.25 to ρ^1): what an interval says below 0 is noise of few sessions.
  return { kind: 'learned', exponent: fit.slope, low: Math.max(low, 0), high, points: right.length, by, seen };
}

/** Half the span between theory by bore and the paddock rule: wider says nothing new. */
const WIDEST = (PADDOCK - THEORY.diameter) / 2;
/** Twice the paddock rule; common practice. */
const MOST = 2;

/** The finest step between two jets that were used; undefined where only one was. */
function smallestStep(jets: readonly number[]): number | undefined {
  const sizes = [...new Set(jets)].toSorted((a, b) => a - b);
  const steps = sizes.slice(1).map((size, n) => size - (sizes[n] ?? 0));
  return steps.length === 0 ? undefined : Math.min(...steps);
}
