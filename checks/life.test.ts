/**
 * Lives: the most likely Weibull life with covariance and limits, the record without a curve, ranks, a shape taken as
 * known. `computed` rows were worked outside the project with R 4.2.2 and survival 3.5-3, Python, numpy and scipy;
 * `read` rows are printed in the NIST/SEMATECH e-Handbook and in Abernethy's New Weibull Handbook, read second hand.
 */
import { describe } from 'vitest';
import {
  ageAtShare,
  chanceBetween,
  kaplanMeier,
  type Life,
  likelihoodLimits,
  meanLife,
  rankedFailures,
  rankRegression,
  scaleForShape,
  type WeibullFit,
  waldLimits,
  waldShare,
  weibullFit,
} from '../src/life/index.ts';
import rows from './rows/life.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

/** d: 1 failed, 0 fine, 2 found by a look (last fine at `fine`); `from`: watched from that age on. */
function livesIn(given: Given): readonly Life[] {
  const at = (name: string, n: number): number => (given[name] === undefined ? 0 : (list(given, name)[n] ?? 0));
  return list(given, 't').map((age, n): Life => {
    const base = { age, from: at('from', n) };
    const d = at('d', n);
    if (d === 2) return { ...base, fate: 'found', fineAt: at('fine', n) };
    return { ...base, fate: d === 1 ? 'failed' : 'running' };
  });
}

function fitIn(given: Given): WeibullFit {
  const fit = weibullFit(livesIn(given));
  if (fit.kind !== 'fit') throw new Error(fit.say);
  return fit;
}

const ends = ({ low, high }: { readonly low: number; readonly high: number }): readonly number[] => [low, high];

function fitted(given: Given): Numbers {
  const fit = fitIn(given);
  const [wald, ratio] = [waldLimits(fit), likelihoodLimits(livesIn(given), fit)];
  const t0 = given.t0 === undefined ? undefined : waldShare(fit, number(given, 't0'));
  const { scale, both, shape } = fit.covariance;
  return {
    shape: fit.shape,
    scale: fit.scale,
    loglik: fit.logLikelihood,
    vcov: [scale, both, shape],
    shape_wald: ends(wald.shape),
    scale_wald: ends(wald.scale),
    shape_lr: ends(ratio.shape),
    scale_lr: ends(ratio.scale),
    ...(t0 && { F_t0: [t0.share, t0.low, t0.high] }),
    B10: ageAtShare(fit, 0.1),
    mean: meanLife(fit),
  };
}

function survival(given: Given): Numbers {
  const steps = kaplanMeier(livesIn(given));
  return {
    time: steps.map(({ age }) => age),
    watched: steps.map(({ watched }) => watched),
    failed: steps.map(({ failed }) => failed),
    share: steps.map(({ share }) => share),
    error: steps.map(({ error }) => error).filter(Number.isFinite),
    low: steps.map(({ low }) => low),
    high: steps.map(({ high }) => high),
  };
}

function ranks(given: Given): Numbers {
  const ranked = rankedFailures(livesIn(given));
  const line = rankRegression(ranked) ?? { shape: Number.NaN, scale: Number.NaN };
  return { rank: ranked.map(({ rank }) => rank), share: ranked.map(({ share }) => share), ...line };
}

function fixed(given: Given): Numbers {
  const at = list(given, 'confidence').map(c => scaleForShape(livesIn(given), number(given, 'shape'), c));
  return { atLeast: at.map(({ atLeast = Number.NaN }) => atLeast), scale: at[0]?.scale ?? Number.NaN };
}

const ANSWERS: Readonly<Record<string, (given: Given) => Numbers>> = {
  fit: fitted,
  'kaplan-meier': survival,
  ranks,
  'fixed shape': fixed,
  mission: given => ({ F: chanceBetween(fitIn(given), number(given, 'age'), number(given, 'hours')) }),
  'mission of a life': given => ({
    F: chanceBetween(
      { shape: number(given, 'shape'), scale: number(given, 'scale') },
      number(given, 'age'),
      number(given, 'hours'),
    ),
  }),
};

describe('life: the most likely life, the record without a curve, ranks, a fixed shape', () => {
  runRows(rows as unknown as readonly Row[], (given, { what }) => {
    const answer = ANSWERS[what];
    if (answer === undefined) throw new Error(`no answer for ${what}: add it to ANSWERS`);
    return answer(given);
  });
});
