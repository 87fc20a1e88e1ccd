/**
 * Failures of repaired units: power law, its limits, and the tests of a trend. Worked outside the project with Python and
 * scipy; the first set is printed in public documentation of reliability growth, the valve seats are Nelson's.
 */
import { describe } from 'vitest';
import { type EndedBy, powerLaw, powerLawOf, shapeLimits, trendOf } from '../src/life/index.ts';
import rows from './rows/life-trend.json' with { type: 'json' };
import { type Given, list, type Numbers, number, type Row, runRows } from './rows.ts';

function oneUnit(given: Given): Numbers {
  const unit = { failures: list(given, 't'), until: number(given, 'until') };
  const by: EndedBy = given.by === 'failure' ? 'failure' : 'time';
  const fit = powerLaw(unit, by);
  const trend = trendOf(unit, by);
  const limits = shapeLimits(unit, by, 0.9);
  if (fit.kind === 'no trend' || trend === undefined || limits === undefined) throw new Error('a trend was expected');
  return {
    shape: fit.shape,
    rate: fit.rate,
    unbiased: fit.unbiased?.shape ?? Number.NaN,
    unbiased_rate: fit.unbiased?.rate ?? Number.NaN,
    intensity: fit.intensity,
    between: 1 / fit.intensity,
    cvm: trend.misfit ?? Number.NaN,
    limits90: [limits.low, limits.high],
    laplace: trend.laplace,
    chi2: trend.chiSquare,
    freedom: trend.freedom,
  };
}

function severalUnits(given: Given): Numbers {
  const units = list(given, 'until').map((until, unit) => ({
    until,
    failures: list(given, 't').filter((_, n) => list(given, 'unit')[n] === unit),
  }));
  const fit = powerLawOf(units);
  return fit.kind === 'no trend' ? {} : { shape: fit.shape, rate: fit.rate };
}

describe('life: the trend of repaired units', () => {
  runRows(rows as unknown as readonly Row[], (given, { what }) =>
    what === 'one unit' ? oneUnit(given) : severalUnits(given),
  );
});
