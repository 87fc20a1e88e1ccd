import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { powerLaw, powerLawOf, shapeLimits } from './power-law.ts';
import { laplaceByLuck, trendOf } from './trend-test.ts';

const unit = fc
  .array(fc.double({ min: 0.5, max: 99, noNaN: true }), { minLength: 2, maxLength: 20 })
  .map(ages => ({ failures: ages.toSorted((a, b) => a - b), until: 100 }));

describe('the power law', () => {
  test('expects by the end of the watch as many failures as there were', () => {
    fc.assert(
      fc.property(unit, one => {
        const fit = powerLaw(one);
        if (fit.kind === 'no trend') throw new Error(fit.why);
        expect(fit.rate * one.until ** fit.shape).toBeCloseTo(one.failures.length, 9);
        expect(fit.unbiased?.shape).toBeLessThan(fit.shape);
        const limits = shapeLimits(one, 'time', 0.9);
        expect(limits && limits.low < fit.shape && fit.shape < limits.high).toBe(true);
      }),
    );
  });
  test('of several units alike is that of one, and of one unit that of one', () => {
    fc.assert(
      fc.property(unit, fc.integer({ min: 1, max: 4 }), (one, times) => {
        const [single, several] = [powerLaw(one), powerLawOf(Array.from({ length: times }, () => one))];
        if (single.kind === 'no trend' || several.kind === 'no trend') throw new Error('a trend was expected');
        expect(several.shape / single.shape).toBeCloseTo(1, 9);
        expect(several.rate / single.rate).toBeCloseTo(1, 7);
        expect(several.intensity / single.intensity).toBeCloseTo(1, 7);
      }),
    );
  });
  it('is none where nothing failed before the end, and says so', () => {
    expect(powerLaw({ failures: [], until: 50 })).toMatchObject({ kind: 'no trend' });
    expect(powerLaw({ failures: [50], until: 50 }, 'failure')).toMatchObject({ kind: 'no trend' });
    expect(powerLawOf([{ failures: [], until: 50 }])).toMatchObject({ kind: 'no trend' });
    expect(powerLaw({ failures: [20], until: 50 }).kind === 'power law').toBe(true);
  });
  it('refuses ages out of order, beyond the watch, or of nothing', () => {
    expect(() => powerLaw({ failures: [10, 5], until: 50 })).toThrow('failures[1] must be 10 or more');
    expect(() => powerLaw({ failures: [60], until: 50 })).toThrow('failures[0] must lie between 0 and the end');
    expect(() => powerLawOf([{ failures: [0], until: 50 }])).toThrow('failures[0] must lie between');
    expect(() => powerLaw({ failures: [], until: 0 })).toThrow('until must be above 0, got 0');
  });
});

describe('a trend', () => {
  it('is seen where failures crowd at the end, or at the start, and not where they come evenly', () => {
    const evenly = Array.from({ length: 12 }, (_, n) => (100 * (n + 0.5)) / 12);
    const late = evenly.map(age => 100 * (age / 100) ** (1 / 4));
    const early = evenly.map(age => 100 * (age / 100) ** 4);
    expect(trendOf({ failures: evenly, until: 100 })).toMatchObject({ verdict: 'no trend to be seen' });
    expect(trendOf({ failures: late, until: 100 })).toMatchObject({ verdict: 'more often' });
    expect(trendOf({ failures: early, until: 100 })).toMatchObject({ verdict: 'less often' });
    expect(trendOf({ failures: late, until: 100 })?.laplace).toBeGreaterThan(1.96);
  });
  test('turned round in time turns round by the test of Laplace', () => {
    fc.assert(
      fc.property(unit, one => {
        const turned = { failures: one.failures.map(age => 100 - age).toReversed(), until: 100 };
        const [there, back] = [trendOf(one)?.laplace ?? 0, trendOf(turned)?.laplace ?? 0];
        expect(there).toBeCloseTo(-back, 9);
        expect(laplaceByLuck(there)).toBeCloseTo(laplaceByLuck(back), 9);
      }),
    );
  });
  it('needs two failures', () => {
    expect(trendOf({ failures: [20], until: 100 })).toBeUndefined();
    expect(trendOf({ failures: [20, 100], until: 100 }, 'failure')).toBeUndefined();
  });
});
