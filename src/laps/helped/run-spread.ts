/**
 * How much runs of the same kart differ from each other: a starting guess, or the driver's own history in its place.
 *
 *   guess: p(σ) ∝ e^(-σ² / (2 · 0.05²));  own: p(σ) ∝ Π over days of the likelihood that their repeat runs have under σ
 *
 * σ standard deviation of the offset of a run [s], on a lattice from 0 to 0.3 s. A repeat run is one with the same changes as
 * another of the same day. The likelihood is the restricted one (REML), base and drift of each day taken out.
 * Source: half-normal guess of 0.05 s (common practice); REML, Patterson and Thompson 1971 (memory).
 */
import { clipped } from './clipped.ts';
import { columnsOf, ratiosOf } from './columns.ts';
import { solveMixed, sumsOf } from './mixed.ts';
import { type Counted, changesOf, countedLaps, type TestRun } from './series.ts';

export const GUESSED_RUN_SPREAD = 0.05; // s
/** Fewer repeat runs say less than the guess. */
export const ENOUGH_REPEATS = 6;

export const LATTICE: readonly number[] = Array.from({ length: 61 }, (_, n) => n * 0.005);

export type RunSpread = {
  readonly basis: 'starting guess' | 'own history';
  readonly repeats: number; // runs of the history that had another like them on their day
  /** ln of the density at each point of the lattice, but for a constant. */
  readonly logDensity: readonly number[];
};

const guess = LATTICE.map(spread => -(spread ** 2) / (2 * GUESSED_RUN_SPREAD ** 2));

/** @param days earlier days with their runs in order, the same driver and kart */
export function runSpreadFrom(days: readonly (readonly TestRun[])[]): RunSpread {
  const told = days.map(repeatsOf).filter(({ repeats }) => repeats >= 2);
  const repeats = told.reduce((sum, day) => sum + day.repeats, 0);
  if (repeats < ENOUGH_REPEATS) return { basis: 'starting guess', repeats, logDensity: guess };
  const likelihoods = told.map(({ laps }) => evidenceOf(laps)).filter(each => each !== undefined);
  if (likelihoods.length === 0) return { basis: 'starting guess', repeats, logDensity: guess };
  const sum = LATTICE.map((_, n) => likelihoods.reduce((all, each) => all + (each[n] as number), 0));
  return { basis: 'own history', repeats, logDensity: sum };
}

/** Only runs that have another with the same changes, so that each change is taken out with the base it stands on. */
function repeatsOf(runs: readonly TestRun[]): { readonly repeats: number; readonly laps: readonly Counted[] } {
  const { laps } = countedLaps(runs);
  const keyOf = (on: readonly string[]): string => JSON.stringify([...on].sort());
  const runsLike = new Map<string, Set<number>>();
  for (const { on, run } of laps) runsLike.set(keyOf(on), (runsLike.get(keyOf(on)) ?? new Set()).add(run));
  const many = laps.filter(({ on }) => (runsLike.get(keyOf(on))?.size ?? 0) >= 2);
  return { repeats: new Set(many.map(({ run }) => run)).size, laps: many };
}

function evidenceOf(laps: readonly Counted[]): readonly number[] | undefined {
  const columns = columnsOf(laps, changesOf(laps));
  const flat = clipped(
    laps.map(({ time }) => time),
    columns,
    lap => ratiosOf(columns, { run: GUESSED_RUN_SPREAD, lap }),
  );
  const freedom = laps.length - columns.free.length;
  if (flat === undefined || freedom < 1) return undefined;
  const sums = sumsOf(
    columns,
    flat.values.map(value => value - (flat.values[0] as number)),
  );
  const found = LATTICE.map(spread => {
    const solved = solveMixed(sums, ratiosOf(columns, { run: spread, lap: flat.spread }));
    return solved && logEvidence(solved, freedom);
  });
  return found.every(each => each !== undefined) ? found : undefined;
}

/** Restricted likelihood with the spread of laps taken out by integration over ln s. */
export const logEvidence = (
  { logDet, rss }: { readonly logDet: number; readonly rss: number },
  freedom: number,
): number => -logDet / 2 - (freedom / 2) * Math.log(Math.max(rss, Number.MIN_VALUE));
