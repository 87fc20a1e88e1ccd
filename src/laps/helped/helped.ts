/**
 * Did the change make it faster? The effect of each change on the lap time with its interval, and no more than the laps bear.
 *
 *   for each spread of runs σ on the lattice:  effect ~ b(σ) + √(rss(σ) / ν · variance(σ)) t_ν,  ν = laps - free columns
 *   weight(σ) ∝ p(σ) · |V|^(-1/2) |X' V⁻¹ X|^(-1/2) rss^(-ν/2)
 *
 * Lap times without way out, marked laps and laps far too slow, bad ones cut back (`clipped`); columns in `columnsOf`; p(σ) in
 * `run-spread.ts`. Interval: 19 of 20. Smallest: the effect that such a test shows 4 times of 5, half the interval times
 * (1 + t.80 / t.975). With several changes each is claimed by Holm's order, so that all claims together err 1 time in 20.
 * A change that came or went only once is not told from the track, which went on changing too.
 * Source: mixed model with REML weights (memory); Holm 1979 (memory); figures in bench and checks/rows/laps-helped.json.
 */

import { studentScore } from '../../numbers/index.ts';
import { clipped } from './clipped.ts';
import { columnsOf, ratiosOf } from './columns.ts';
import { holm } from './holm.ts';
import { solveMixed, sumsOf } from './mixed.ts';
import { belowOf, centreOf, type Part, scoreOf } from './mixture.ts';
import { GUESSED_RUN_SPREAD, LATTICE, logEvidence, type RunSpread, runSpreadFrom } from './run-spread.ts';
import { type Counted, changesOf, countedLaps, type TestRun } from './series.ts';
import { againstTelling, switchesOf } from './telling.ts';

export type Verdict = 'faster' | 'slower' | 'no practical difference' | 'cannot tell';
export const NOT_SEPARATE = 'cannot separate the change from the track';

export type Effect = {
  readonly change: string;
  readonly effect: number; // s a lap, below 0 is faster
  readonly low: number; // s, 19 of 20 lie between low and high
  readonly high: number;
  /** s, the smallest effect that such a test shows 4 times of 5. */
  readonly smallest: number;
  /** Chance of an effect seen so far from 0 when there is none. */
  readonly chance: number;
  readonly verdict: Verdict;
  readonly why?: typeof NOT_SEPARATE | 'several changes';
};

export type Told = {
  readonly kind: 'told';
  readonly effects: readonly Effect[];
  readonly drift: number; // s a lap
  readonly lapSpread: number; // s, one standard deviation
  readonly runSpread: number; // s, the likeliest on average
  readonly basis: RunSpread['basis'];
  readonly laps: {
    readonly counted: number;
    readonly out: number;
    readonly marked: number;
    readonly slow: number; // far too slow to be a lap on the limit
    readonly cut: number; // counted, and cut back
  };
};
export type NotTold = {
  readonly kind: 'not told';
  readonly why: 'no change' | 'never without' | 'always together' | 'too few laps';
  readonly say: string;
};

export type HelpedAsk = {
  /** Smaller than this matters to nobody, s. Only with it can there be no practical difference. */
  readonly matters?: number;
  readonly runSpread?: RunSpread;
};

export function helped(runs: readonly TestRun[], ask: HelpedAsk = {}): Told | NotTold {
  const { laps, ...left } = countedLaps(runs);
  const changes = changesOf(runs);
  const against = againstTelling(laps, changes);
  if (against) return against;
  const first = flat(laps, changes);
  const kept = first ? laps.filter((_, n) => !first.slow.includes(n)) : laps;
  // A change or a drift that only the slow laps showed: then they stay, cut back.
  const used = againstTelling(kept, changes) === undefined ? kept : laps;
  const found = first && used.length < laps.length ? flat(used, changes) : first;
  if (found === undefined) return tooFew(used.length);
  const slow = laps.length - used.length;
  return told(used, changes, { ...ask, ...left, slow, found });
}

const tooFew = (laps: number): NotTold => ({
  kind: 'not told',
  why: 'too few laps',
  say: `${laps} laps that count do not tell these changes from the drift of the track. Drive more laps each way.`,
});

const flat = (laps: readonly Counted[], changes: readonly string[]) => {
  const columns = columnsOf(laps, changes);
  return clipped(
    laps.map(({ time }) => time),
    columns,
    lap => ratiosOf(columns, { run: GUESSED_RUN_SPREAD, lap }),
  );
};

type Found = {
  readonly found: NonNullable<ReturnType<typeof flat>>;
  readonly out: number;
  readonly marked: number;
  readonly slow: number;
};

function told(laps: readonly Counted[], changes: readonly string[], ask: HelpedAsk & Found): Told | NotTold {
  const { found, out, marked, slow, matters, runSpread = runSpreadFrom([]) } = ask;
  const columns = columnsOf(laps, changes);
  const freedom = laps.length - columns.free.length;
  const sums = sumsOf(
    columns,
    found.values.map(value => value - (found.values[0] as number)),
  );
  const solved = LATTICE.map(spread => solveMixed(sums, ratiosOf(columns, { run: spread, lap: found.spread })));
  if (!solved.every(each => each !== undefined)) return tooFew(laps.length);
  const weights = weightsOf(solved.map((each, n) => logEvidence(each, freedom) + (runSpread.logDensity[n] as number)));
  const least = freedom * (found.spread * 1e-3) ** 2;
  const partsOf = (column: number): readonly Part[] =>
    solved.flatMap(({ free, rss, variances }, n) => {
      const weight = weights[n] as number;
      const error = Math.sqrt((Math.max(rss, least) / freedom) * (variances[column] as number));
      return weight > 0 ? [{ weight, centre: free[column] as number, error }] : [];
    });
  const raw = changes.map((change, n) => rawEffect(change, partsOf(n + 1), freedom));
  const claimed = holm(raw.map(({ chance }) => chance));
  const effects = raw.map((effect, n): Effect => {
    const once = switchesOf(laps, effect.change) < 2;
    return { ...effect, ...verdictOf(effect, { once, claimed: claimed[n] === true, matters }) };
  });
  return {
    kind: 'told',
    effects,
    drift: centreOf(partsOf(changes.length + 1)),
    lapSpread: Math.sqrt(solved.reduce((sum, { rss }, n) => sum + (weights[n] as number) * (rss / freedom), 0)),
    runSpread: LATTICE.reduce((sum, spread, n) => sum + (weights[n] as number) * spread, 0),
    basis: runSpread.basis,
    laps: { counted: laps.length, out, marked, slow, cut: found.cut },
  };
}

/** Of 1 in all, the ends of the lattice half; what is below a millionth of the largest is nothing. */
function weightsOf(logs: readonly number[]): readonly number[] {
  const top = Math.max(...logs);
  const raw = logs.map((log, n) => (n === 0 || n === logs.length - 1 ? 0.5 : 1) * Math.exp(log - top));
  const some = raw.map(each => (each < 1e-6 ? 0 : each));
  const sum = some.reduce((all, each) => all + each, 0);
  return some.map(each => each / sum);
}

type Raw = Pick<Effect, 'change' | 'effect' | 'low' | 'high' | 'smallest' | 'chance'>;

function rawEffect(change: string, parts: readonly Part[], freedom: number): Raw {
  const [low, high] = [scoreOf(parts, freedom, 0.025), scoreOf(parts, freedom, 0.975)];
  const below = belowOf(parts, freedom, 0);
  return {
    change,
    effect: centreOf(parts),
    low,
    high,
    smallest: ((high - low) / 2) * (1 + studentScore(0.8, freedom) / studentScore(0.975, freedom)),
    chance: 2 * Math.min(below, 1 - below),
  };
}

function verdictOf(
  { low, high }: Raw,
  {
    once,
    claimed,
    matters,
  }: { readonly once: boolean; readonly claimed: boolean; readonly matters: number | undefined },
): Pick<Effect, 'verdict' | 'why'> {
  if (once) return { verdict: 'cannot tell', why: NOT_SEPARATE };
  if (matters !== undefined && low > -matters && high < matters) return { verdict: 'no practical difference' };
  if (!(low > 0 || high < 0)) return { verdict: 'cannot tell' };
  if (!claimed) return { verdict: 'cannot tell', why: 'several changes' };
  return { verdict: high < 0 ? 'faster' : 'slower' };
}
