/** `calc helped`: did a change of the set-up make the kart faster, from a series of laps; or, before a test, what it would take. */
import { z } from 'zod';
import {
  adviceFor,
  effectSay,
  helped,
  ordersWith,
  planFor,
  runSpreadFrom,
  type TestRun,
  type Told,
  WORTH,
} from '../laps/index.ts';
import { baseOf, lapsAsked, runsIn, seriesProblems } from './bare-helped-series.ts';
import { bareProblem, type Solution } from './bare-problem.ts';

const positive = z.number().positive();
const schema = z.strictObject({
  laps: lapsAsked.optional(),
  setups: z
    .record(z.string(), z.array(z.string()))
    .optional()
    .describe('for each set-up named in laps the changes it has, [] the base; else the first set-up is the base'),
  outLaps: z
    .boolean()
    .optional()
    .describe('is the first lap of each run the way out, which is not compared? true when left out'),
  matters: positive.optional().describe('s a lap: less than this makes no practical difference'),
  worth: positive.optional().describe(`s a lap: the effect that a test is to find, ${WORTH} when left out`),
  history: z
    .array(lapsAsked)
    .max(1000)
    .optional()
    .describe('laps of earlier days of the same driver: with 6 repeat runs they say how far runs differ'),
  before: z
    .strictObject({
      lapSpread: positive.describe('s, standard deviation of your laps within a run'),
      runSpread: z.number().nonnegative().optional().describe('s, of runs with the same set-up; 0.05 when left out'),
      laps: z.int().min(3).max(12).optional().describe('laps that count in each run; any number when left out'),
    })
    .optional()
    .describe('instead of laps, before a test: what it would take'),
});
type Asked = z.infer<typeof schema>;

export const bareHelped = bareProblem<Asked>({
  name: 'helped',
  title: 'Did the change help: its effect on the lap time, with its interval, and what to drive next',
  how: [
    'Way out and laps with a note are not compared; a bad lap is cut back (Huber, 1.345 of a spread), one 6 spreads slower dropped.',
    'time = base + effects + drift by laps + run + slow start + track gain + chance; the run, not the lap, is what was changed.',
    'The spread of runs is a guess (half-normal, 0.05 s) until 6 repeat runs say better; the interval is a mixture of t over it.',
    'Verdict: faster, slower, no practical difference (the whole interval within "matters"), or cannot tell. Intervals: 19 of 20.',
    'A change that came or went only once is not told from the track. Changes that always go together are refused.',
    'Several changes: each has its interval; a claim must stand in the order of Holm. smallest: found 4 times of 5.',
    'Seconds throughout; an effect below 0 is faster.',
  ],
  sources: [
    'Luke 2017, doi 10.3758/s13428-016-0809-y (abstract read): few runs, t and not z',
    'Huber 1981, Holm 1979, Henderson: mixed model equations (memory)',
    'numpy 2.4 and scipy 1.17: the figures in checks/rows/laps-helped.json; series with known effects in test/fixtures/laps',
  ],
  example: {
    laps: [
      ...rows(1, 'A', [53.1, 52.41, 52.33, 52.38, 52.29, 52.36]),
      ...rows(2, 'B', [53.0, 52.12, 52.07, 52.15, 52.04, 52.11]),
      ...rows(3, 'B', [52.9, 52.09, 52.14, 52.02, 52.08, 52.05]),
      ...rows(4, 'A', [53.2, 52.3, 52.27, 52.35, 52.24, 52.31]),
    ],
    setups: { A: [], B: ['rear track 10 mm wider'] },
  },
  schema,
  check: problemsOf,
  solve: asked => (asked.before ? before(asked.before, asked.worth) : after(asked)),
});

function rows(run: number, setup: string, times: readonly number[]) {
  return times.map(time => ({ run, setup, time }));
}

function problemsOf({ laps, before: wanted, setups, history = [] }: Asked) {
  if ((laps === undefined) === (wanted === undefined))
    return [
      {
        path: laps === undefined ? 'laps' : 'before',
        expected: 'laps of a test, or before one what your laps spread',
        got: laps === undefined ? 'neither' : 'both',
        remedy: 'give "laps", or "before": {"lapSpread": 0.12}',
      },
    ];
  return [
    ...seriesProblems(laps ?? [], setups, 'laps'),
    ...history.flatMap((day, n) => seriesProblems(day, setups, `history/${n}`)),
  ];
}

function after({ laps = [], setups, outLaps = true, matters, worth = WORTH, history = [] }: Asked): Solution {
  const base = baseOf(laps);
  const runsOf = (rowsOf: typeof laps): readonly TestRun[] => runsIn(rowsOf, { setups, base, outLaps });
  const runs = runsOf(laps);
  const runSpread = runSpreadFrom(history.map(runsOf));
  const told = helped(runs, { runSpread, ...(matters === undefined ? {} : { matters }) });
  if (told.kind === 'not told') return { notTold: told.why, say: [told.say] };
  return { ...effectsOf(runs, told, worth), worth };
}

function effectsOf(runs: readonly TestRun[], told: Told, worth: number): Solution {
  const effects = told.effects.map(effect => {
    const advice = adviceFor(runs, told, effect, worth);
    return { ...effect, say: effectSay(effect), ...(advice && { advice }) };
  });
  const { kind: _, ...rest } = told;
  return { ...rest, effects, say: effects.flatMap(({ say, advice }) => (advice ? [say, advice.say] : [say])) };
}

function before({ lapSpread, runSpread = 0.05, laps }: NonNullable<Asked['before']>, worth = WORTH): Solution {
  const spreads = { lap: lapSpread, run: runSpread };
  const plan = planFor(worth, spreads);
  return {
    worth,
    plan: plan ?? null,
    orders: ordersWith(laps ?? plan?.laps ?? 8, spreads),
    say: [
      plan
        ? `To see ${worth} s a lap: ${plan.order}, ${plan.laps} laps that count in each run, ${plan.driven} laps in all with the ways out.`
        : `With laps that differ by ${lapSpread} s no test of one day shows ${worth} s a lap.`,
    ],
  };
}
