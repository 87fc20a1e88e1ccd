import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { acceptance, chanceInside } from './conformance.ts';
import { normalBelow } from './normal.ts';
import { studentBelow, studentScore } from './student.ts';

describe("Student's t", () => {
  // NIST/SEMATECH e-Handbook, upper critical values for 0.05, 0.025 and 0.005, as printed in several statistics books.
  test.each([
    [1, 6.314, 12.706, 63.657],
    [2, 2.92, 4.303, 9.925],
    [5, 2.015, 2.571, 4.032],
    [10, 1.812, 2.228, 3.169],
    [29, 1.699, 2.045, 2.756],
    [100, 1.66, 1.984, 2.626],
  ])('with %i degrees of freedom is as printed', (freedom, ...printed) => {
    for (const [n, p] of [0.95, 0.975, 0.995].entries())
      expect(studentScore(p, freedom)).toBeCloseTo(printed[n] ?? Number.NaN, 3);
  });
  test('is turned back by its own share, and is symmetric', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.001, max: 0.999, noNaN: true }),
        fc.integer({ min: 1, max: 400 }),
        (p, freedom) => {
          expect(studentBelow(studentScore(p, freedom), freedom)).toBeCloseTo(p, 10);
          expect(studentScore(1 - p, freedom)).toBeCloseTo(-studentScore(p, freedom), 6);
        },
      ),
    );
  });
  test('comes to the normal distribution with many degrees of freedom, and is wider with few', () => {
    for (const x of [0.5, 1, 1.645, 2.5]) {
      expect(studentBelow(x, 9999)).toBeCloseTo(normalBelow(x), 4);
      expect(studentBelow(x, 3)).toBeLessThan(normalBelow(x));
    }
  });
  test('no whole number of degrees of freedom, or no share, throws', () => {
    expect(() => studentBelow(1, 0)).toThrow(/whole number/);
    expect(() => studentBelow(1, 2.5)).toThrow(/whole number/);
    expect(() => studentScore(1, 2)).toThrow(/between 0 and 1/);
    expect(() => chanceInside(1, 1, { max: 2 }, 0.5)).toThrow(/1 or more/);
  });
});

describe('a limit proved with few readings', () => {
  test('asks for more room, and at its edge the chance is the one wanted', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 1, max: 50 }),
        fc.double({ min: 0.6, max: 0.99, noNaN: true }),
        (freedom, wanted) => {
          const { max: few = Number.NaN } = acceptance({ max: 100 }, 1, wanted, freedom);
          const { max: known = Number.NaN } = acceptance({ max: 100 }, 1, wanted);
          expect(few).toBeLessThan(known);
          expect(chanceInside(few, 1, { max: 100 }, freedom)).toBeCloseTo(wanted, 9);
        },
      ),
    );
  });
  test('an effective number of degrees of freedom counts as the whole number below', () => {
    expect(chanceInside(0, 1, { max: 2 }, 4.9)).toBe(chanceInside(0, 1, { max: 2 }, 4));
    expect(chanceInside(0, 1, { max: 2 }, 4 - 1e-12)).toBe(chanceInside(0, 1, { max: 2 }, 4));
  });
});
