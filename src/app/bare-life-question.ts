/** What `calc life` is asked, and what can be wrong with it. */
import { z } from 'zod';
import { type Life, lifeOfAnswers, lifeProblems, type Prior, priorOfAnswers, weibullFit } from '../life/index.ts';
import type { InputProblem } from '../numbers/index.ts';

const guess = z.strictObject({ median: z.number(), spread: z.number() });
const gone = z.strictObject({ share: z.number(), by: z.number() });
/** How far a shape is trusted that two answers mean: as for a part that wears (data/priors.yaml). Common practice. */
const SHAPE_SPREAD = 0.4;

export const lifeQuestion = z.strictObject({
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
    .strictObject({
      shape: guess.optional(),
      scale: guess.optional(),
      gone: z.tuple([gone, gone]).optional(),
      shapeSpread: z.number().optional(),
    })
    .optional()
    .describe(
      'starting guess: lognormal shape and scale, median and standard deviation of the logarithm; or gone: two answers, each a share that is gone by an age',
    ),
  age: z.number().optional().describe('age of the part asked about, which stands in the record; with hours'),
  hours: z.number().optional().describe('what is to come for it; needs a prior'),
});
export type LifeQuestion = z.infer<typeof lifeQuestion>;

/** All that is wrong at once; what is wrong with the lengths of the lists first, since nothing can be told without. */
export function lifeQuestionProblems(asked: LifeQuestion): readonly InputProblem[] {
  const lengths = lengthProblems(asked);
  return lengths.length > 0 ? lengths : valueProblems(asked);
}

export function livesIn({ times, failed, fine, from }: LifeQuestion): readonly Life[] {
  return times.map((age, n): Life => {
    const fineAt = fine?.[n] ?? undefined;
    const begun = from?.[n] ?? undefined;
    const base = { age, ...(begun === undefined ? {} : { from: begun }) };
    if (!failed[n]) return { ...base, fate: 'running' };
    return fineAt === undefined ? { ...base, fate: 'failed' } : { ...base, fate: 'found', fineAt };
  });
}

export function guessIn({
  shape,
  scale,
  gone: answers,
  shapeSpread,
}: NonNullable<LifeQuestion['prior']>): Prior | undefined {
  if (answers) return priorOfAnswers(...answers, shapeSpread ?? SHAPE_SPREAD, 'two answers as given');
  return shape && { shape, ...(scale && { scale }), source: 'as given' };
}

function lengthProblems({ times, failed, fine, from }: LifeQuestion): readonly InputProblem[] {
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

const PRIOR_EXAMPLE = '{"shape":{"median":2,"spread":0.35},"scale":{"median":60,"spread":0.7}}';
const GONE_EXAMPLE = '{"gone":[{"share":0.5,"by":40},{"share":0.1,"by":15}]}';
const NAMES = { age: 'times', fineAt: 'fine', from: 'from' } as const;

function valueProblems(asked: LifeQuestion): readonly InputProblem[] {
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
  if (prior && (prior.shape === undefined) === (prior.gone === undefined))
    problems.push({
      path: 'prior',
      expected: 'a shape, or two answers under gone',
      got: JSON.stringify(prior),
      remedy: `${PRIOR_EXAMPLE}, or ${GONE_EXAMPLE}`,
    });
  else if (prior?.gone && !lifeOfAnswers(...prior.gone))
    problems.push({
      path: 'prior/gone',
      expected: 'two shares between 0 and 1, the larger gone at the greater age',
      got: JSON.stringify(prior.gone),
      remedy: `half gone by 40 and one in ten by 15 is ${GONE_EXAMPLE}`,
    });
  positive('prior/shapeSpread', prior?.shapeSpread);
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
      got: fit.say.replace(/\.$/, ''), // the sentence it goes into ends by itself
      remedy: `add a prior: ${PRIOR_EXAMPLE}`,
    },
  ];
}
