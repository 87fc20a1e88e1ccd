/**
 * Record and starting guess weighed together. Means were worked outside the project with numpy on a far wider lattice;
 * bands with numpy and scipy by Gauss-Legendre sums up to the exact threshold. How often something happens an event: with scipy.
 */
import { describe } from 'vitest';
import { chanceIfReached, chanceOver, type Life, momentsOf, posteriorOf, rateOver } from '../src/life/index.ts';
import rows from './rows/life-posterior.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

function weighed(given: Given): Numbers {
  const lives = list(given, 't').map(
    (age, n): Life => ({ age, fate: list(given, 'd')[n] === 1 ? 'failed' : 'running' }),
  );
  const shape = { median: number(given, 'shape'), spread: number(given, 'shape_spread') };
  const scale = { median: number(given, 'scale'), spread: number(given, 'scale_spread') };
  const posterior = posteriorOf({ shape, scale, source: 'the row' }, lives);
  if (posterior.kind === 'unknown') throw new Error(posterior.why);
  const ahead = list(given, 'age').map((age, n) => ({ age, hours: list(given, 'hours')[n] ?? Number.NaN }));
  const chances = ahead.map(each => chanceOver(posterior, each));
  const moments = momentsOf(posterior);
  return {
    ln_evidence: posterior.lnEvidence,
    mean_shape: moments.meanShape,
    mean_ln_shape: moments.meanLnShape,
    sd_ln_shape: moments.sdLnShape,
    mean_ln_scale: moments.meanLnScale,
    sd_ln_scale: moments.sdLnScale,
    correlation: moments.correlation,
    chance: chances.map(({ mean }) => mean),
    chance_if_reached: ahead.map(each => chanceIfReached(posterior, each)),
    low: chances.map(({ low }) => low),
    middle: chances.map(({ middle }) => middle),
    high: chances.map(({ high }) => high),
  };
}

function rated(given: Given): Numbers {
  const guess = { mean: number(given, 'guess'), sureAs: number(given, 'weight') };
  const { mean, low, high } = rateOver(guess, { times: number(given, 'times'), events: number(given, 'events') });
  return { mean, low, high };
}

describe('life: record and starting guess together', () => {
  runRows(rows as unknown as readonly Row[], given => ('guess' in given ? rated(given) : weighed(given)));
});
