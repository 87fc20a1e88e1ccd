/**
 * Spares: how many are enough, and which to carry. `computed` rows were worked outside the project with Python and scipy, the
 * choices by trying every way there is.
 */
import { describe } from 'vitest';
import { chooseSpares, countsOf } from '../src/life/index.ts';
import rows from './rows/life-spares.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

const soFar = (counts: readonly number[]): readonly number[] =>
  counts.map((_, n) => counts.slice(0, n + 1).reduce((sum, one) => sum + one, 0));

function enough(given: Given): Numbers {
  const life = { shape: number(given, 'shape'), scale: number(given, 'scale') };
  return { enough: soFar(countsOf(life, list(given, 'ages'), number(given, 'hours'), 4)) };
}

function choice(given: Given): Numbers {
  const [price, mass] = [list(given, 'price'), list(given, 'mass')];
  const kinds = list(given, 'expected').map((mean, k) =>
    Array.from({ length: number(given, 'most') + 1 }, (_, n) => ({
      value: Math.log(poisson(mean, n)),
      money: n * (price[k] ?? 0),
      mass: n * (mass[k] ?? 0),
    })),
  );
  const { value } = chooseSpares(kinds, { money: number(given, 'money'), kilograms: number(given, 'kilograms') });
  return { finished: Math.exp(value) };
}

/** Σ e^-m mⁿ / n!: the choice is looked at here, not the counts. */
function poisson(mean: number, most: number): number {
  let [term, sum] = [Math.exp(-mean), 0];
  for (let n = 0; n <= most; n++) {
    sum += term;
    term *= mean / (n + 1);
  }
  return sum;
}

const ANSWERS: Readonly<Record<string, (given: Given) => Numbers>> = { 'enough spares': enough, choice };

describe('life: spares', () => {
  runRows(rows as unknown as readonly Row[], (given, { what }) => {
    const answer = ANSWERS[what];
    if (answer === undefined) throw new Error(`no answer for ${what}: add it to ANSWERS`);
    return answer(given);
  });
});
