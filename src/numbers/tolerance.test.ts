import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  acceptance,
  chanceInside,
  combine,
  type Link,
  normalBelow,
  normalScore,
  rootSumSquare,
  scoreFor,
  sum,
  worstCase,
} from './index.ts';
import { tolerance } from './tolerance.ts';

const size = fc.double({ min: -2, max: 2, noNaN: true });
const half = fc.double({ min: 0, max: 0.01, noNaN: true });
const links = fc.array(fc.record({ times: fc.constantFrom(-2, -1, 1, 2), size, half }), { minLength: 1, maxLength: 8 });

describe('the normal distribution', () => {
  it('is symmetric, never falls, and is undone by the score', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -37, max: 37, noNaN: true }),
        fc.double({ min: 0, max: 5, noNaN: true }),
        (x, step) => {
          expect(normalBelow(x) + normalBelow(-x)).toBeCloseTo(1, 14);
          expect(normalBelow(x + step)).toBeGreaterThanOrEqual(normalBelow(x) - 1e-15);
          if (x < 0) expect(normalScore(normalBelow(x))).toBeCloseTo(x, 10);
        },
      ),
    );
  });
  it('joins without a step where series and continued fraction meet', () => {
    expect(normalBelow(2 + 1e-12) - normalBelow(2)).toBeLessThan(1e-12);
    expect(normalBelow(-2) - normalBelow(-2 - 1e-12)).toBeLessThan(1e-12);
    expect(normalBelow(Number.NaN)).toBeNaN();
    expect(normalBelow(Number.POSITIVE_INFINITY)).toBe(1);
    expect(normalBelow(Number.NEGATIVE_INFINITY)).toBe(0);
    for (const p of [0, 1, Number.NaN]) expect(() => normalScore(p)).toThrow('normalScore: p must lie between 0 and 1');
  });
});

describe('a chain of sizes', () => {
  it('is never likelier to be further off than the worst case, and scales with its links', () => {
    fc.assert(
      fc.property(links, fc.constantFrom(2, 1000, 0.0254), (chain, k) => {
        expect(rootSumSquare(chain)).toBeLessThanOrEqual(worstCase(chain) * (1 + 1e-12));
        expect(combine(chain).u).toBeLessThanOrEqual(rootSumSquare(chain) * (1 + 1e-12));
        const scaled = chain.map(l => ({ ...l, size: l.size * k, half: l.half * k }));
        expect(sum(scaled)).toBeCloseTo(k * sum(chain), 6);
        expect(worstCase(scaled)).toBeCloseTo(k * worstCase(chain), 6);
        expect(combine(scaled).u).toBeCloseTo(k * combine(chain).u, 6);
      }),
    );
  });
  it('has no fewer degrees of freedom than its weakest part and no more than all together', () => {
    const part = fc.record({
      times: fc.constant(1),
      size,
      standard: fc.double({ min: 1e-6, max: 1, noNaN: true }),
      freedom: fc.integer({ min: 1, max: 50 }),
    });
    fc.assert(
      fc.property(fc.array(part, { minLength: 1, maxLength: 6 }), chain => {
        const { freedom } = combine(chain);
        const each = chain.map(l => l.freedom);
        expect(freedom).toBeGreaterThanOrEqual(Math.min(...each) * (1 - 1e-9));
        expect(freedom).toBeLessThanOrEqual(each.reduce((a, b) => a + b, 0) * (1 + 1e-9));
      }),
    );
  });
  it('is exact when nothing is uncertain', () => {
    const exact: Link[] = [{ times: 1, size: 1 }];
    expect(combine(exact)).toEqual({ u: 0, freedom: Number.POSITIVE_INFINITY });
    expect(chanceInside(1, 0, { max: 1 })).toBe(1);
    expect(chanceInside(1, 0, { max: 0.999 })).toBe(0);
    expect(chanceInside(1, 0, { min: 1, max: 1 })).toBe(1);
  });
});

describe('held against limits', () => {
  it('gives a chance that falls as the reading comes nearer the limit, one half on it', () => {
    const u = fc.double({ min: 1e-4, max: 1, noNaN: true });
    fc.assert(
      fc.property(size, u, fc.double({ min: 0, max: 3, noNaN: true }), (max, spread, away) => {
        expect(chanceInside(max, spread, { max })).toBe(0.5);
        const near = chanceInside(max - away * spread, spread, { max });
        expect(near).toBeGreaterThanOrEqual(0.5);
        expect(chanceInside(-max + away * spread, spread, { min: -max })).toBeCloseTo(near, 12);
      }),
    );
  });
  it('accepts exactly what has the wanted chance', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0.5, max: 0.9999, noNaN: true }),
        fc.double({ min: 1e-4, max: 1, noNaN: true }),
        (chance, u) => {
          const { max } = acceptance({ max: 1.4 }, u, chance);
          expect(chanceInside(max ?? Number.NaN, u, { max: 1.4 })).toBeCloseTo(chance, 9);
        },
      ),
    );
  });
  it('knows nothing from what is no number', () => {
    expect(chanceInside(Number.NaN, 1, { max: 1 })).toBeNaN();
    expect(chanceInside(1, Number.NaN, { max: 1 })).toBeNaN();
    expect(() => scoreFor(1)).toThrow('scoreFor: chance must be from 0.5 to below 1, got 1');
  });
});

describe('the subject', () => {
  it('answers its own example', () => {
    const answer = tolerance.ask(tolerance.example);
    expect(answer).toMatchObject({
      kind: 'answer',
      figures: { size: { text: '3.000 mm' }, 'worst case': { text: '0.230 mm' } },
    });
  });
  it('names every contradiction at once', () => {
    const answer = tolerance.ask({
      links: [{ size: '1 mm', standard: '-1 mm', freedom: '0' }],
      min: '3 mm',
      max: '2 mm',
      confidence: '120 %',
    });
    expect(answer.kind === 'problems' && answer.problems.map(p => p.path)).toEqual([
      'min',
      'confidence',
      'links/0/standard',
      'links/0/freedom',
    ]);
  });
  it('says what it took as exact and where few readings make it too hopeful', () => {
    const answer = tolerance.ask({
      links: [
        { name: 'shim', size: '1 mm' },
        { size: '2 mm', standard: '0.1 mm', freedom: '2' },
      ],
    });
    expect(answer.kind === 'answer' && answer.notes.join(' ')).toMatch(/exact.*shim.*Few degrees of freedom/s);
  });
});
