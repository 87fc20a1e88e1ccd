/**
 * Readings held against limits: JCGM 100:2008 (GUM), JCGM 106:2012 and numbers computed outside the project, as each row
 * says. Readings, steps and limits are in mm, the torque in N·m.
 */
import { describe } from 'vitest';
import { judge } from '../src/numbers/index.ts';
import type { Measure } from '../src/quantity/index.ts';
import rows from './rows/judge.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

const measure = (si: number): Measure => ({ si, unit: 'm', text: `${si} m`, dimension: 'length' });

const answer = (given: Given): Numbers => {
  const found = judge({
    readings: list(given, 'readings').map(measure),
    gauge: {
      resolution: number(given, 'resolution'),
      scaleError: number(given, 'scale'),
      ends: given.ends === 2 ? 2 : 1,
    },
    ...(given.TL === undefined ? {} : { min: measure(number(given, 'TL')) }),
    ...(given.TU === undefined ? {} : { max: measure(number(given, 'TU')) }),
  });
  return {
    mean: found.mean.si,
    s: found.spread?.si ?? Number.NaN,
    u: found.uncertainty.si,
    pc: found.chance ?? Number.NaN,
  };
};

describe('judge: readings, instrument and limits', () => {
  runRows(rows as readonly Row[], answer);
});
