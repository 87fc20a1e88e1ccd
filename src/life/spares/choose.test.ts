import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { type Choices, chooseSpares, type SpareBudget } from './choose.ts';

/** Each further spare of a kind has a price and mass of its own kind; those in the box cost nothing. */
const kind = fc
  .record({
    gains: fc.array(fc.double({ min: 1e-4, max: 0.4, noNaN: true }), { maxLength: 3 }),
    price: fc.integer({ min: 0, max: 60 }),
    mass: fc.integer({ min: 0, max: 30 }).map(tenths => tenths / 10),
    have: fc.nat(2),
  })
  .map(({ gains, price, mass, have }) => {
    let value = -gains.reduce((sum, gain) => sum + gain, 0.01);
    return [0, ...gains].map((gain, n) => {
      value += gain;
      return { value, money: price * Math.max(0, n - have), mass: n * mass };
    });
  });
const kinds: fc.Arbitrary<Choices> = fc.array(kind, { minLength: 1, maxLength: 7 });
const budget = fc.record({ money: fc.integer({ min: 0, max: 150 }), kilograms: fc.integer({ min: 0, max: 9 }) });

/** Every way there is. */
function best(all: Choices, { money, kilograms }: SpareBudget): number {
  let most = Number.NEGATIVE_INFINITY;
  const walk = (k: number, value: number, m: number, kg: number): void => {
    if (m > money + 1e-9 || kg > kilograms + 1e-9) return;
    const here = all[k];
    if (!here) most = Math.max(most, value);
    else for (const one of here) walk(k + 1, value + one.value, m + one.money, kg + one.mass);
  };
  walk(0, 0, 0, 0);
  return most;
}

describe('which spares to carry', () => {
  test('is the best of all ways there are, and inside both budgets', () => {
    fc.assert(
      fc.property(kinds, budget, (all, within) => {
        const { taken, value, money, mass } = chooseSpares(all, within);
        expect(value).toBeCloseTo(best(all, within), 10);
        expect(money).toBeLessThanOrEqual(within.money + 1e-9);
        expect(mass).toBeLessThanOrEqual(within.kilograms + 1e-9);
        const sum = taken.reduce((total, n, k) => total + (all[k]?.[n]?.value ?? Number.NaN), 0);
        expect(sum).toBeCloseTo(value, 10);
      }),
      { numRuns: 300 },
    );
  });
  test('with more of either is never worse', () => {
    fc.assert(
      fc.property(kinds, budget, fc.nat(50), fc.nat(5), (all, within, money, kilograms) => {
        const more = { money: within.money + money, kilograms: within.kilograms + kilograms };
        expect(chooseSpares(all, more).value).toBeGreaterThanOrEqual(chooseSpares(all, within).value - 1e-12);
      }),
    );
  });
  it('without bounds is all that brings anything', () => {
    const all: Choices = [
      [
        { value: -0.2, money: 0, mass: 0 },
        { value: -0.1, money: 10, mass: 1 },
      ],
      [{ value: 0, money: 0, mass: 0 }],
    ];
    const free = { money: Number.POSITIVE_INFINITY, kilograms: Number.POSITIVE_INFINITY };
    expect(chooseSpares(all, free)).toMatchObject({ taken: [1, 0], money: 10, mass: 1 });
    expect(chooseSpares(all, { money: 0, kilograms: 0 })).toMatchObject({ taken: [0, 0], money: 0 });
  });
  it('refuses a spare that is worth no more than none', () => {
    const all: Choices = [
      [
        { value: -0.2, money: 0, mass: 0 },
        { value: -0.2, money: 10, mass: 1 },
      ],
    ];
    expect(() => chooseSpares(all, { money: 1, kilograms: 1 })).toThrow('kinds[0][1] must be worth more');
  });
});
