/** Medians of what was taken, and how they are said. */
import { type Figure, ms, times } from '../measure.ts';
import type { Took } from './browser.ts';

export const middle = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN;

export const middleOf = (all: readonly Took[]): Took => ({
  wall: middle(all.map(({ wall }) => wall)),
  cpu: middle(all.map(({ cpu }) => cpu)),
});

/** @param goal what a person may wait at most [ms] */
export function figure(
  what: string,
  all: readonly Took[],
  goal: number | undefined,
  than?: readonly [Took, string],
): Figure {
  const took = middleOf(all);
  const ratio = than && times(took.wall, than[0].wall, than[1]);
  const range = `${Math.min(...all.map(one => one.wall)).toFixed(0)} to ${Math.max(...all.map(one => one.wall)).toFixed(0)}`;
  return {
    what,
    value: `${ms(took.wall)} (${ms(took.cpu)})`,
    ratio: [ratio, `of ${all.length}: ${range}`, goal && `goal ${goal} ms`].filter(Boolean).join('; '),
  };
}
