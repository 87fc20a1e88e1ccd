/**
 * When to replace: by age, all together, renewing what is repaired. `computed` rows were worked outside the project with
 * Python and scipy; one printed figure of public documentation is a known difference, the least of a coarse table.
 */
import { describe } from 'vitest';
import { renewals, renewByAge, replaceByAge, replaceTogether, type Weibull } from '../src/life/index.ts';
import rows from './rows/life-replacement.json' with { type: 'json' };
import { type Given, type Numbers, number, type Row, runRows } from './rows.ts';

const life = (given: Given): Weibull => ({ shape: number(given, 'shape'), scale: number(given, 'scale') });
const costs = (given: Given) => ({ planned: number(given, 'planned'), failure: number(given, 'failure') });

function byAge(given: Given): Numbers {
  const found = replaceByAge(life(given), costs(given));
  if (found.kind === 'no help') return { help: 0, rate: found.never, never: found.never };
  const { at, rate, never, saved, failBefore } = found;
  return { at, rate, never, saved, fail_before: failBefore };
}

const ANSWERS: Readonly<Record<string, (given: Given) => Numbers>> = {
  'by age': byAge,
  'minimal repair': given => ({ ...renewByAge(life(given), number(given, 'planned'), number(given, 'repair')) }),
  renewals: given => ({ M: renewals(life(given), number(given, 'age')) }),
  'all together': given => {
    const { at, rate, failures } = replaceTogether(life(given), costs(given)) ?? {};
    return { at: at ?? Number.NaN, rate: rate ?? Number.NaN, M: failures ?? Number.NaN };
  },
};

describe('life: when to replace', () => {
  runRows(rows as unknown as readonly Row[], (given, { what }) => {
    const answer = ANSWERS[what];
    if (answer === undefined) throw new Error(`no answer for ${what}: add it to ANSWERS`);
    return answer(given);
  });
});
