/**
 * Which sprockets: every pair in the box is tried, for lap time over teeth has more than one valley. Two pairs are level
 * when their difference is less than what is not known of the kart could make of it.
 *
 *   level: |T_a - T_b| <= 2 sqrt(sum (half the change of T_a - T_b over ± spread)²) + scatter
 *
 * T lap time [s], spread what is not known of each thing, as a standard deviation. Source: propagation of uncertainty,
 * JCGM 100:2008, 5.1 (memory), with the differences themselves; the scatter was measured against rows worked outside.
 */
import { CHANGES, type Change, MAKING, timeOf } from './change.ts';
import type { LapKart } from './kart.ts';
import type { Predictor } from './lap.ts';

export type Box = { readonly front: readonly number[]; readonly rear: readonly number[] }; // teeth
/** Standard deviation of what is not known of each: kg, s, or a share. */
export type Spreads = Readonly<Partial<Record<Change, number>>>;

/** Of a kart that nobody has measured: common practice. */
export const UNMEASURED: Spreads = {
  ...{
    mass: 2,
    grip: 0.05,
    power: 0.03,
    drag: 0.1,
    scrub: 0.3,
    'shift time': 0.02,
    brakes: 0.1,
    'rolling radius': 0.01,
  },
};

export type Pair = {
  readonly front: number;
  readonly rear: number;
  readonly ratio: number;
  readonly time: number; // s
  readonly behind: number; // s, on the quickest
  readonly within: number; // s: less than this behind cannot be told from the quickest
  readonly level: boolean; // with the quickest, which is level with itself
};
export type Choice = {
  /** Quickest first; what does not get round is left out. */
  readonly pairs: readonly Pair[];
  readonly tried: number; // pairs
};
export type SweepProgress = { readonly done: number; readonly of: number };

/** Two lap times at steps of 1 m scatter by so much against each other, s. */
const SCATTER = 0.002;

/** Says how far it is after each pair, so that a worker can tell, and stop by not asking on. */
export function* sprocketSweep(
  predictor: Predictor,
  kart: LapKart,
  box: Box,
  spreads: Spreads = UNMEASURED,
): Generator<SweepProgress, Choice> {
  const pairs = box.front.flatMap(front => box.rear.map(rear => ({ front, rear })));
  const tried: {
    readonly front: number;
    readonly rear: number;
    readonly time: number;
    readonly moves: readonly number[];
  }[] = [];
  for (const [n, { front, rear }] of pairs.entries()) {
    const geared = { ...kart, gearing: { ...kart.gearing, front, rear } };
    const time = timeOf(predictor, geared);
    if (Number.isFinite(time)) tried.push({ front, rear, time, moves: movesOf(predictor, geared, spreads) });
    yield { done: n + 1, of: pairs.length };
  }
  const sorted = tried.toSorted((a, b) => a.time - b.time);
  const [best] = sorted;
  return {
    tried: pairs.length,
    pairs: sorted.map(({ front, rear, time, moves }) => {
      const behind = time - (best?.time ?? time);
      const apart = moves.reduce((sum, move, n) => sum + (move - (best?.moves[n] ?? move)) ** 2, 0);
      const within = 2 * Math.sqrt(apart) + SCATTER;
      return { front, rear, ratio: rear / front, time, behind, within, level: behind <= within };
    }),
  };
}

/** What each thing that is not known does to the lap of this pair, s for one spread. */
const movesOf = (predictor: Predictor, kart: LapKart, spreads: Spreads): readonly number[] =>
  CHANGES.flatMap(change => {
    const spread = spreads[change];
    if (spread === undefined || spread === 0) return [0];
    const at = (by: number): number => timeOf(predictor, MAKING[change].with(kart, by));
    const move = (at(spread) - at(-spread)) / 2;
    return [Number.isFinite(move) ? move : 0];
  });
