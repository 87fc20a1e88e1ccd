/**
 * The exact choice of second retentions at half of what all would take: 30 candidates, several lots, of one seed; and the
 * six-speed template with every joint that could have one, its frontier over the minutes with it. The slowest lot counts.
 */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fold } from '../src/book/index.ts';
import { packageRoot } from '../src/host/index.ts';
import { readPriors } from '../src/life/index.ts';
import { type ChoiceProblem, chooser, pairOf, readRetentions, secondRetentions, weakLinks } from '../src/risk/index.ts';
import { benchKart } from './kart.ts';
import { type Figure, median, ms, times } from './measure.ts';
import { seeded } from './random.ts';

const LOTS = 10;
const CANDIDATES = 30;

export async function seconds(): Promise<readonly Figure[]> {
  const lots = Array.from({ length: LOTS }, (_, seed) => lot(seed + 1));
  const each: number[] = [];
  for (const problem of lots) each.push(await median(3, () => chooser(problem).within(half(problem))));
  const data = (file: string): string => readFileSync(join(packageRoot(), 'data', file), 'utf8');
  const ask = {
    now: '2026-06-01T08:00:00.000Z',
    retentions: readRetentions(data('retentions.yaml')),
    priors: readPriors(data('priors.yaml')),
  };
  const kart = benchKart();
  const state = fold([]);
  const links = await median(3, () => weakLinks(kart, state, ask));
  const { candidates } = secondRetentions(kart, state, ask);
  const whole = await median(3, () => secondRetentions(kart, state, ask, { minutes: 60, money: 40 }));
  return [
    {
      what: `second retentions, ${CANDIDATES} candidates, exact, the slowest of ${LOTS}`,
      value: ms(Math.max(...each)),
    },
    { what: 'weak links of the six-speed template', value: ms(links) },
    {
      what: `second retentions of it, ${candidates.length} candidates, with five more minutes and the frontier`,
      value: ms(whole),
      ratio: times(whole, links, 'its weak links'),
    },
  ];
}

/** Figures in the range of the worked example B16: every joint alone brings about one of six hazards. */
function lot(seed: number): ChoiceProblem {
  const { below, pick } = seeded(seed);
  const chances = Array.from({ length: CANDIDATES }, () => (5 + below(45)) / 10_000);
  const of = chances.map(() => below(6));
  return {
    chances,
    singleOf: of.map(hazard => (hazard < 3 ? 1 : hazard < 5 ? 2 : 0)),
    options: chances.map((chance, joint) => ({
      joint,
      chance: pairOf(chance, pick([0.01, 0.02, 0.05]), pick([0.05, 0.1, 0.2])).chance,
      money: 1 + below(9),
      minutes: 2 + below(11),
    })),
    hazards: [1000, 1000, 900, 500, 100, 20].map((weight, hazard) => {
      const joints = [...of.keys()].filter(joint => of[joint] === hazard);
      return { weight, joints, chance: x => 1 - joints.reduce((none, n) => none * (1 - (x[n] as number)), 1) };
    }),
  };
}

const half = ({ options }: ChoiceProblem) => ({
  money: options.reduce((sum, { money }) => sum + money, 0) / 2,
  minutes: options.reduce((sum, { minutes }) => sum + minutes, 0) / 2,
});
