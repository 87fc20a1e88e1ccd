/** Where the fit puts each run: the base, what was on the kart, and the drift of the track up to the middle of the run. */
import type { NotTold, TestRun, Told } from '../../laps/index.ts';
import { middleOf } from '../words/laps/reads.ts';

/** s; of a test that told nothing the middle lap of each run, and nothing for a run without laps that count. */
export function levelsOf(runs: readonly TestRun[], told: Told | NotTold): readonly (number | undefined)[] {
  let before = 0;
  const counted = runs.map(({ on, laps }) => {
    const from = before;
    before += laps.length;
    const own = laps.flatMap(({ time, out, marked }, n) => (out || marked ? [] : [{ time, order: from + n }]));
    return { on, own };
  });
  if (told.kind === 'not told')
    return counted.map(({ own }) => (own.length === 0 ? undefined : middleOf(own.map(({ time }) => time))));
  const shift = (on: readonly string[], order: number): number =>
    told.effects.reduce((sum, { change, effect }) => sum + (on.includes(change) ? effect : 0), told.drift * order);
  const base = middleOf(counted.flatMap(({ on, own }) => own.map(({ time, order }) => time - shift(on, order))));
  return counted.map(({ on, own }) => {
    const [first, last] = [own[0], own.at(-1)];
    return first && last && base + shift(on, (first.order + last.order) / 2);
  });
}
