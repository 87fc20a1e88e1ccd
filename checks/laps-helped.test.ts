/**
 * Did it help: effects, intervals and chances worked apart in Python with numpy 2.4 and scipy 1.17; the smallest effects
 * of table 4.1 and the figures of table 4.2 of the notes on laps (Python, computed); Holm 1979, a sequentially rejective test.
 */
import { describe } from 'vitest';
import { helped, holm, smallestEffect, type TestRun } from '../src/laps/index.ts';
import { figuresOf, type Judged, judged, knownSeries } from '../test/lap-series.ts';
import rows from './rows/laps-helped.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

const text = (given: Given, name: string): string => String(given[name]);

function smallest(given: Given): Numbers {
  const order = text(given, 'order').split('-');
  const spreads = { lap: number(given, 'lapSpread_s'), run: number(given, 'runSpread_s'), slowStart: 0, trackGain: 0 };
  return {
    smallest_s: list(given, 'laps').map(
      laps =>
        smallestEffect(
          order.map(letter => ({ on: letter === 'B' ? ['B'] : [], laps })),
          'B',
          spreads,
        ) ?? Number.NaN,
    ),
  };
}

function series(given: Given): Numbers {
  const [runs, places, marked, one, two] = ['run', 'place', 'marked', 'one', 'two'].map(name => list(given, name));
  const found = new Map<number, { on: string[]; laps: TestRun['laps'][number][] }>();
  list(given, 'time_s').forEach((time, n) => {
    const on = [...(one?.[n] ? ['one'] : []), ...(two?.[n] ? ['two'] : [])];
    const run = found.get(runs?.[n] ?? 0) ?? { on, laps: [] };
    found.set(runs?.[n] ?? 0, run);
    run.laps.push({ time, out: places?.[n] === 0, marked: marked?.[n] === 1 });
  });
  const told = helped([...found.values()]);
  if (told.kind === 'not told') throw new Error(told.say);
  const of = (name: 'effect' | 'low' | 'high' | 'chance') => told.effects.map(effect => effect[name]);
  return { effect_s: of('effect'), low_s: of('low'), high_s: of('high'), chance: of('chance') };
}

const seen = new Map<string, readonly Judged[]>();
function figures(given: Given): Numbers {
  const design = text(given, 'design');
  const found =
    seen.get(design) ?? judged(knownSeries().filter(one => one.design === design && one.runSpread === 0.05));
  seen.set(design, found);
  const { coverage, falseAlarms, power } = figuresOf(found, 'one');
  return { coverage, falseAlarms, power };
}

describe('laps: did it help', () => {
  runRows(rows as unknown as readonly Row[], (given, { id }) => {
    if (id.startsWith('laps.helped.smallest')) return smallest(given);
    if (id.startsWith('laps.helped.series')) return series(given);
    if (id.startsWith('laps.helped.holm')) return { stands: holm(list(given, 'chances')).map(Number) };
    return figures(given);
  });
});
