/** `calc life`: the most likely Weibull life of a record, how sure it is, and with a starting guess what both say together. */
import { z } from 'zod';
import {
  chanceOver,
  chanceWords,
  type FitLimits,
  type Life,
  lifeProblems,
  likelihoodLimits,
  momentsOf,
  posteriorOf,
  waldLimits,
  weibullFit,
} from '../life/index.ts';
import type { InputProblem } from '../numbers/index.ts';
import { bareProblem, type Solution } from './bare-problem.ts';

const guess = z.strictObject({ median: z.number(), spread: z.number() });
const schema = z.strictObject({
  times: z.array(z.number()).max(100_000).describe('age of each life at its end, or now, all in one unit'),
  failed: z
    .array(z.union([z.boolean(), z.literal(0), z.literal(1)]))
    .describe('did it fail then? else it was fine: still running, or replaced fine'),
  fine: z
    .array(z.number().nullable())
    .optional()
    .describe('for a failure found by looking: the age at the last good look, 0 when there was none; else null'),
  from: z
    .array(z.number().nullable())
    .optional()
    .describe('age from which it was watched, where that was not from new'),
  prior: z
    .strictObject({ shape: guess, scale: guess.optional() })
    .optional()
    .describe('starting guess: lognormal shape and scale, median and standard deviation of the logarithm'),
  age: z.number().optional().describe('age of the part asked about, which stands in the record; with hours'),
  hours: z.number().optional().describe('what is to come for it; needs a prior'),
});
type Asked = z.infer<typeof schema>;

export const bareLife = bareProblem<Asked>({
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
  schema,
  check: asked => [...lengthProblems(asked), ...(lengthProblems(asked).length === 0 ? valueProblems(asked) : [])],
  solve,
});

function livesIn({ times, failed, fine, from }: Asked): readonly Life[] {
  return times.map((age, n): Life => {
    const fineAt = fine?.[n] ?? undefined;
    const begun = from?.[n] ?? undefined;
    const base = { age, ...(begun === undefined ? {} : { from: begun }) };
    if (!failed[n]) return { ...base, fate: 'running' };
    return fineAt === undefined ? { ...base, fate: 'failed' } : { ...base, fate: 'found', fineAt };
  });
}

function lengthProblems({ times, failed, fine, from }: Asked): readonly InputProblem[] {
  return Object.entries({ failed, fine, from }).flatMap(([path, list]) =>
    list === undefined || list.length === times.length
      ? []
      : [
          {
            path,
            expected: `one entry for each of the ${times.length} times`,
            got: `${list.length}`,
            remedy: 'say of each life how it stands, in the same order',
          },
        ],
  );
}

const NAMES = { age: 'times', fineAt: 'fine', from: 'from' } as const;

function valueProblems(asked: Asked): readonly InputProblem[] {
  const { prior, age, hours } = asked;
  const lives = livesIn(asked);
  const problems: InputProblem[] = lifeProblems(lives).map(({ place, what, expected, got }) => ({
    path: `${NAMES[what]}/${place}`,
    expected,
    got: `${got}`,
    remedy: 'ages run from watched, to last fine, to failed; correct the one that is out of order',
  }));
  const positive = (path: string, value: number | undefined): void => {
    if (value !== undefined && !(value > 0 && Number.isFinite(value)))
      problems.push({
        path,
        expected: 'a number above 0',
        got: `${value}`,
        remedy: 'a guess of nothing is none: leave it out',
      });
  };
  for (const name of ['shape', 'scale'] as const)
    for (const part of ['median', 'spread'] as const) positive(`prior/${name}/${part}`, prior?.[name]?.[part]);
  positive('hours', hours);
  if (age !== undefined && !(age >= 0))
    problems.push({ path: 'age', expected: '0 or more', got: `${age}`, remedy: 'a new part has age 0' });
  if ((age === undefined) !== (hours === undefined))
    problems.push({
      path: age === undefined ? 'age' : 'hours',
      expected: 'age and hours together',
      got: 'one of them',
      remedy: 'say how old the part is and what is to come, or neither',
    });
  if (hours !== undefined && prior === undefined)
    problems.push({
      path: 'prior',
      expected: 'a starting guess',
      got: 'nothing',
      remedy: 'with few failures the most likely life alone says the chance too low: give a prior',
    });
  if (problems.length > 0 || prior !== undefined) return problems;
  const fit = weibullFit(lives);
  if (fit.kind === 'fit') return problems;
  return [
    {
      path: 'times',
      expected: 'a record with a most likely life, or a prior beside it',
      got: fit.say,
      remedy: 'add a prior, for example {"shape":{"median":2,"spread":0.35},"scale":{"median":60,"spread":0.7}}',
    },
  ];
}

function solve(asked: Asked): Solution {
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

function weighed({ prior, age, hours }: Asked, lives: readonly Life[]): Solution {
  const guessed = prior && { shape: prior.shape, ...(prior.scale && { scale: prior.scale }), source: 'as given' };
  const posterior = posteriorOf(guessed, lives);
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
