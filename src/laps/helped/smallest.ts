/**
 * What a test can show before it is driven.
 *
 *   smallest = (t.975 + t.80) √(s² variance),  variance from (X' V⁻¹ X)⁻¹;  t of Student with ν = laps - free columns
 *
 * s spread of a lap, V with the spread of runs, both taken as known: not knowing them makes it larger. 4 tests of 5 with an
 * effect so large show it. Source: power of a t test (memory); the table of designs in checks/rows/laps-helped.json.
 */
import { studentScore } from '../../numbers/index.ts';
import { columnsOf, type Placed, ratiosOf, type Spreads } from './columns.ts';
import { solveMixed, sumsOf } from './mixed.ts';
import { type Counted, changesOf } from './series.ts';

/** A run that is to come: with these changes, so many laps that count after the way out. */
export type PlannedRun = { readonly on: readonly string[]; readonly laps: number };

/** s a lap; undefined where the runs cannot tell the change from the rest. */
export function smallestEffect(runs: readonly PlannedRun[], change: string, spreads: Spreads): number | undefined {
  return smallestOf(placed(runs), change, spreads);
}

export function smallestOf(laps: readonly Placed[], change: string, spreads: Spreads): number | undefined {
  const changes = changesOf(laps);
  const columns = columnsOf(laps, changes);
  const freedom = laps.length - columns.free.length;
  if (!changes.includes(change) || freedom < 1) return undefined;
  const solved = solveMixed(
    sumsOf(
      columns,
      laps.map(() => 0),
    ),
    ratiosOf(columns, spreads),
  );
  const variance = solved?.variances[1 + changes.indexOf(change)];
  if (variance === undefined) return undefined;
  return (studentScore(0.975, freedom) + studentScore(0.8, freedom)) * spreads.lap * Math.sqrt(variance);
}

/** Laps of runs to come, after those of runs that were driven. */
export function placed(runs: readonly PlannedRun[], after: readonly Counted[] = []): readonly Placed[] {
  const laps: Placed[] = [];
  let run = 1 + Math.max(-1, ...after.map(lap => lap.run));
  let order = 1 + Math.max(-1, ...after.map(lap => lap.order));
  for (const { on, laps: count } of runs) {
    for (let place = 1; place <= count; place++) laps.push({ run, place, order: order + place, on });
    order += count + 1;
    run++;
  }
  return [...after, ...laps];
}
