/** Before a test: how many runs in which order it takes. After one that could not tell: how many more laps each way. */
import type { Spreads } from './columns.ts';
import { type Counted, countedLaps, type TestRun } from './series.ts';
import { type PlannedRun, placed, smallestEffect, smallestOf } from './smallest.ts';

/** A without the change, B with it; each letter is a run with its way out. Each goes back, so that the track is told apart. */
const ORDERS = ['A-B-A', 'A-B-B-A', 'A-B-B-A-B-A-A-B'] as const;
export type Order = (typeof ORDERS)[number];
export type TestPlan = {
  readonly order: Order;
  readonly laps: number; // that count, each run
  readonly driven: number; // in all, with the ways out
  readonly smallest: number; // s
};

const FEWEST = 3;
/** More in one run and tyres and fuel are others than at its start: common practice. */
const MOST = 12;
const LAPS = Array.from({ length: MOST - FEWEST + 1 }, (_, n) => FEWEST + n);

/** Every order with so many laps a run, and what each could show. */
export const ordersWith = (laps: number, spreads: Spreads): readonly TestPlan[] =>
  ORDERS.flatMap(order => {
    const runs = runsOf(order, laps);
    const smallest = smallestEffect(runs, 'B', spreads);
    return smallest === undefined ? [] : [{ order, laps, driven: runs.length * (laps + 1), smallest }];
  });

/** The fewest laps that show an effect of `worth` s 4 times of 5; undefined when none of a day does. */
export function planFor(worth: number, spreads: Spreads): TestPlan | undefined {
  const enough = LAPS.flatMap(laps => ordersWith(laps, spreads)).filter(({ smallest }) => smallest <= worth);
  return enough.sort((a, b) => a.driven - b.driven || a.smallest - b.smallest)[0];
}

const runsOf = (order: Order, laps: number): readonly PlannedRun[] =>
  order.split('-').map(letter => ({ on: letter === 'B' ? ['B'] : [], laps }));

export type More = {
  readonly laps: number; // that count, each run
  readonly runs: readonly ('with' | 'without')[];
  readonly smallest: number; // s
};

/** After these runs: the fewest further laps with and without the change that show `worth` s 4 times of 5. */
export function moreFor(
  runs: readonly TestRun[],
  change: string,
  { worth, spreads }: { readonly worth: number; readonly spreads: Spreads },
): More | undefined {
  const { laps: driven } = countedLaps(runs);
  const others = (runs.at(-1)?.on ?? []).filter(each => each !== change);
  const tries = ([['with', 'without'] as const, ['without', 'with'] as const] as const).flatMap(pair =>
    [pair, [...pair, ...pair.toReversed()]].flatMap(order =>
      Array.from({ length: MOST }, (_, n) => more(driven, { change, others, order, laps: n + 1, spreads })),
    ),
  );
  return tries
    .flatMap(each => (each && each.smallest <= worth ? [each] : []))
    .sort((a, b) => a.runs.length * (a.laps + 1) - b.runs.length * (b.laps + 1) || a.smallest - b.smallest)[0];
}

function more(
  driven: readonly Counted[],
  {
    change,
    others,
    order,
    laps,
    spreads,
  }: {
    readonly change: string;
    readonly others: readonly string[];
    readonly order: More['runs'];
    readonly laps: number;
    readonly spreads: Spreads;
  },
): More | undefined {
  const runs = order.map(each => ({ on: each === 'with' ? [...others, change] : others, laps }));
  const smallest = smallestOf(placed(runs, driven), change, spreads);
  return smallest === undefined ? undefined : { laps, runs: order, smallest };
}
