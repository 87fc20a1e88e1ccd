/** `calc life`: the most likely Weibull life of a record, how sure it is, and with a starting guess what both say together. */
import {
  chanceOver,
  chanceWords,
  type FitLimits,
  type Life,
  likelihoodLimits,
  momentsOf,
  posteriorOf,
  waldLimits,
  weibullFit,
} from '../life/index.ts';
import { guessIn, type LifeQuestion, lifeQuestion, lifeQuestionProblems, livesIn } from './bare-life-question.ts';
import { bareProblem, type Solution } from './bare-problem.ts';

export const bareLife = bareProblem<LifeQuestion>({
  name: 'life',
  title: 'Lives: the most likely Weibull life, its limits, and the chance of failing',
  how: [
    'Shape and scale by maximum likelihood; bracketed, so it ends. Times may be in any one unit; the scale is in it too.',
    'Covariance: inverse observed information of ln scale and ln(1/shape). Log-likelihood: density in the unit of the times.',
    'Limits for 19 of 20, two ways: Wald on the logarithm, and by likelihood ratio, which is to be preferred below some 20 failures.',
    'With a prior: all lives that fit both, weighed on a lattice; the chance is the mean over them.',
    'No failure, or none before the largest age: there is no most likely life, and it says so.',
  ],
  sources: [
    'Meeker and Escobar, Statistical Methods for Reliability Data, 1998, 8 (memory)',
    'R 4.2.2 with survival 3.5-3: the figures in checks/rows/life.json',
  ],
  example: { times: [31, 44, 12, 20, 38, 50], failed: [true, true, false, false, false, false] },
  schema: lifeQuestion,
  check: lifeQuestionProblems,
  solve,
});
function solve(asked: LifeQuestion): Solution {
  const lives = livesIn(asked);
  const fit = weibullFit(lives);
  return {
    ...(fit.kind === 'fit'
      ? {
          shape: fit.shape,
          scale: fit.scale,
          covariance: {
            of: ['ln scale', 'ln 1/shape'],
            matrix: [
              [fit.covariance.scale, fit.covariance.both],
              [fit.covariance.both, fit.covariance.shape],
            ],
          },
          logLikelihood: fit.logLikelihood,
          limits: { wald: plain(waldLimits(fit)), likelihoodRatio: plain(likelihoodLimits(lives, fit)) },
          lives: fit.units,
          failures: fit.failures,
          notes: notesOn(fit.failures),
        }
      : { noFit: fit.reason, notes: [fit.say] }),
    ...(asked.prior && { posterior: weighed(asked, lives) }),
  };
}

/** JSON has no infinity: null is an end that the record does not bound. */
const plain = ({ shape, scale }: FitLimits) => {
  const ends = ({ low, high }: { readonly low: number; readonly high: number }) => [
    low,
    Number.isFinite(high) ? high : null,
  ];
  return { shape: ends(shape), scale: ends(scale) };
};

const notesOn = (failures: number): readonly string[] => [
  ...(failures === 1 ? ['One failure: it says next to nothing of the shape; read the likelihood limits.'] : []),
  ...(failures > 1 && failures < 10
    ? ['With fewer than 10 failures the most likely shape is too steep on average; weigh it with a prior.']
    : []),
];

function weighed({ prior, age, hours }: LifeQuestion, lives: readonly Life[]): Solution {
  const posterior = posteriorOf(prior && guessIn(prior), lives);
  if (posterior.kind === 'unknown') return { unknown: posterior.why };
  const { meanShape, meanLnShape, sdLnShape, meanLnScale, sdLnScale, correlation } = momentsOf(posterior);
  const chance = age === undefined || hours === undefined ? undefined : chanceOver(posterior, { age, hours });
  const words = chance && chanceWords(chance, posterior);
  return {
    basis: posterior.basis,
    meanShape,
    lnShape: { mean: meanLnShape, spread: sdLnShape },
    lnScale: { mean: meanLnScale, spread: sdLnScale },
    correlation,
    ...(chance && { chance: chance.mean, band: [chance.low, chance.high], middle: chance.middle }),
    ...(words && { say: [words.long, words.basis] }),
  };
}
