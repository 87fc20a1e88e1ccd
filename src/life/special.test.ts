import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { normalBelow } from '../numbers/index.ts';
import { erlangBelow, erlangScore } from './erlang.ts';
import { gamma, gammaBelow } from './gamma.ts';
import { rootBetween } from './root.ts';

describe('the gamma function', () => {
  it('is the factorial at whole numbers and the root of π at a half', () => {
    for (const [n, factorial] of [1, 1, 2, 6, 24, 120, 720].entries())
      expect(gamma(n + 1) / factorial).toBeCloseTo(1, 13);
    expect(gamma(0.5)).toBeCloseTo(Math.sqrt(Math.PI), 13);
    expect(() => gamma(0)).toThrow('x must be above 0, got 0');
  });
  test('keeps Γ(x) Γ(1 - x) = π / sin πx', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.01, max: 0.99, noNaN: true }), x => {
        expect((gamma(x) * gamma(1 - x) * Math.sin(Math.PI * x)) / Math.PI).toBeCloseTo(1, 11);
      }),
    );
  });
  test('from below is the exponential for 1 and the normal distribution for a half', () => {
    fc.assert(
      fc.property(fc.double({ min: 1e-6, max: 60, noNaN: true }), x => {
        expect(gammaBelow(1, x)).toBeCloseTo(-Math.expm1(-x), 13);
        const erf = 2 * normalBelow(Math.sqrt(2 * x)) - 1;
        expect(gammaBelow(0.5, x)).toBeCloseTo(Math.sqrt(Math.PI) * erf, 12);
      }),
    );
    expect(gammaBelow(2, 1e6)).toBeCloseTo(1, 13);
    expect(gammaBelow(2, 0)).toBe(0);
  });
});

describe('a sum of waits', () => {
  it('gives the printed points of chi-square with even degrees of freedom', () => {
    // Upper 5 % points as every table prints them (memory): 5.991, 9.488, 18.307, 31.410.
    for (const [freedom, point] of [
      [2, 5.991],
      [4, 9.488],
      [10, 18.307],
      [20, 31.41],
    ] as const)
      expect(2 * erlangScore(0.95, freedom / 2)).toBeCloseTo(point, 3);
  });
  test('score and share undo each other', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.001, max: 0.999, noNaN: true }), fc.integer({ min: 1, max: 200 }), (p, n) => {
        expect(erlangBelow(erlangScore(p, n), n)).toBeCloseTo(p, 10);
      }),
    );
  });
  it('refuses a share of 0 and a half wait', () => {
    expect(() => erlangScore(0, 2)).toThrow('p must lie between 0 and 1, got 0');
    expect(() => erlangBelow(1, 0.5)).toThrow('n must be a whole number of 1 or more, got 0.5');
    expect(erlangBelow(0, 3)).toBe(0);
  });
});

describe('a root between two places', () => {
  test('is found to the last bits, whichever way the function goes', () => {
    const at = fc.double({ min: -50, max: 50, noNaN: true });
    fc.assert(
      fc.property(at, fc.constantFrom(1, -1), (x0, way) => {
        const root = rootBetween(x => way * (Math.expm1(x - x0) + (x - x0) ** 3), -60, 60);
        expect(Math.abs(root - x0)).toBeLessThan(1e-12);
      }),
    );
  });
  it('is refused where there is none', () => {
    expect(() => rootBetween(x => x * x + 1, -1, 1)).toThrow('f must change sign between -1 and 1, got 2 and 2');
  });
});
