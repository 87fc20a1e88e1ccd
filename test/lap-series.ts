/** Series of laps whose effects are known: test/fixtures/laps/lap_series.csv, invented, and its truth. */
import { readFileSync } from 'node:fs';
import { helped, type TestRun, type Told } from '../src/laps/index.ts';

export type KnownSeries = {
  readonly design: string;
  readonly effects: Readonly<Record<string, number>>; // s
  readonly runSpread: number; // s
  readonly runs: readonly TestRun[];
};

const linesOf = (file: string): readonly (readonly string[])[] =>
  readFileSync(`test/fixtures/laps/${file}`, 'utf8') // tests and bench run at the root

    .trim()
    .split('\n')
    .slice(1)
    .map(line => line.trim().split(','));

/** B, and in the designs with two factors 10, 01 and 11. */
const changesIn = (setup: string): readonly string[] =>
  setup.length === 1 ? (setup === 'B' ? ['one'] : []) : ['one', 'two'].filter((_, n) => setup[n] === '1');

export function knownSeries(): readonly KnownSeries[] {
  const runs = new Map<string, Map<string, { on: readonly string[]; laps: TestRun['laps'][number][] }>>();
  for (const [series = '', run = '', place, , setup = '', time, note = ''] of linesOf('lap_series.csv')) {
    const own = runs.get(series) ?? new Map();
    runs.set(series, own);
    const found = own.get(run) ?? { on: changesIn(setup), laps: [] };
    own.set(run, found);
    found.laps.push({ time: Number(time), out: place === '1', marked: note !== '' });
  }
  return linesOf('lap_series_truth.csv').map(([series = '', design = '', one, two, , runSpread]) => ({
    design,
    effects: { one: Number(one), two: Number(two) },
    runSpread: Number(runSpread),
    runs: [...(runs.get(series)?.values() ?? [])],
  }));
}

export type Figures = {
  readonly intervals: number;
  readonly coverage: number;
  readonly falseAlarms: number;
  readonly power: number;
};
export type Judged = { readonly series: KnownSeries; readonly told: Told };

export const judged = (some: readonly KnownSeries[]): readonly Judged[] =>
  some.map(series => {
    const told = helped(series.runs);
    if (told.kind === 'not told') throw new Error(told.say);
    return { series, told };
  });

/** Of the intervals: how many hold the truth, leave 0 out when there is nothing, and leave it out at 0.25 s. */
export function figuresOf(all: readonly Judged[], change?: string): Figures {
  const each = all.flatMap(({ series, told }) =>
    told.effects
      .filter(effect => change === undefined || effect.change === change)
      .map(({ change: name, low, high }) => ({ low, high, truth: series.effects[name] ?? Number.NaN })),
  );
  const share = (of: typeof each, is: (one: (typeof each)[number]) => boolean): number =>
    of.filter(is).length / of.length;
  const clear = ({ low, high }: (typeof each)[number]): boolean => low > 0 || high < 0;
  return {
    intervals: each.length,
    coverage: share(each, ({ low, high, truth }) => low <= truth && truth <= high),
    falseAlarms: share(
      each.filter(({ truth }) => truth === 0),
      clear,
    ),
    power: share(
      each.filter(({ truth }) => Math.abs(truth) === 0.25),
      clear,
    ),
  };
}
