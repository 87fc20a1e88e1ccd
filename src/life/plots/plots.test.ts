import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Life } from '../life.ts';
import { type Posterior, posteriorOf } from '../posterior/index.ts';
import { kaplanMeier } from './kaplan-meier.ts';
import { rankedFailures, rankRegression } from './ranks.ts';
import { heightOf, weibullPaper } from './weibull-paper.ts';

const failed = (age: number): Life => ({ fate: 'failed', age });
const running = (age: number): Life => ({ fate: 'running', age });

describe('the share that lasts', () => {
  test('where all failed is the plain share left, with the error of a share', () => {
    const ages = fc.uniqueArray(fc.integer({ min: 1, max: 500 }), { minLength: 2, maxLength: 20 });
    fc.assert(
      fc.property(ages, all => {
        const steps = kaplanMeier(all.map(failed));
        steps.slice(0, -1).forEach(({ share, error, low, high }, n) => {
          const plain = 1 - (n + 1) / all.length;
          expect(share).toBeCloseTo(plain, 12);
          expect(error).toBeCloseTo(Math.sqrt((plain * (1 - plain)) / all.length), 12);
          expect(low < share && share < high && low > 0 && high < 1).toBe(true);
        });
        expect(steps.at(-1)).toMatchObject({ share: 0, error: Number.NaN, low: Number.NaN });
      }),
    );
  });
  it('counts a fine one of the same age as watched, and one found at the age it was found', () => {
    expect(kaplanMeier([failed(10), running(10)])).toMatchObject([{ age: 10, watched: 2, failed: 1, share: 0.5 }]);
    expect(kaplanMeier([{ fate: 'found', age: 12, fineAt: 4 }, running(20)])).toMatchObject([{ age: 12, watched: 2 }]);
    expect(kaplanMeier([running(10)])).toEqual([]);
  });
  it('counts a part moved between karts once', () => {
    const legs = [running(12), { fate: 'failed', age: 34, from: 12 } as const, failed(20), running(50)];
    expect(kaplanMeier(legs)).toEqual(kaplanMeier([failed(34), failed(20), running(50)]));
  });
});

describe('ranks', () => {
  test('where all failed are 1, 2, 3 and so on', () => {
    fc.assert(
      fc.property(fc.uniqueArray(fc.integer({ min: 1, max: 500 }), { minLength: 1, maxLength: 20 }), all => {
        rankedFailures(all.map(failed)).forEach(({ rank, share }, n) => {
          expect(rank).toBeCloseTo(n + 1, 12);
          expect(share).toBeCloseTo((n + 0.7) / (all.length + 0.4), 12);
        });
      }),
    );
  });
  it('of points on a line give that line', () => {
    const line = [0.1, 0.3, 0.6, 0.9].map((share, n) => ({
      share,
      rank: n,
      age: 40 * (-Math.log(1 - share)) ** (1 / 2.5),
    }));
    expect(rankRegression(line)?.shape).toBeCloseTo(2.5, 12);
    expect(rankRegression(line)?.scale).toBeCloseTo(40, 12);
    expect(rankRegression(line.slice(1, 2))).toBeUndefined();
  });
});

describe('Weibull paper', () => {
  const known = posteriorOf(
    { shape: { median: 2.5, spread: 0.001 }, scale: { median: 40, spread: 0.001 }, source: 'known' },
    [],
  ) as Posterior;
  it('shows a known life as a straight line with hardly a band', () => {
    for (const { x, y, low, high } of weibullPaper([], known, { from: 2, to: 90 }).line) {
      expect(y).toBeCloseTo(2.5 * (x - Math.log(40)), 2);
      expect(high - low).toBeLessThan(0.03);
    }
  });
  it('has the own failures as points, round ages across and shares failed up', () => {
    const paper = weibullPaper([failed(26), running(14), running(33)], known, { from: 3, to: 60 });
    expect(paper.points).toMatchObject([{ age: 26, x: Math.log(26) }]);
    expect(paper.across.map(({ text }) => text)).toEqual(['5', '10', '20', '50']);
    expect(paper.up.map(({ text }) => text)).toContain('63.2 %');
    expect(heightOf(1 - Math.exp(-1))).toBeCloseTo(0, 12);
  });
  it('needs ages that go up from above 0', () => {
    expect(() => weibullPaper([], known, { from: 0, to: 10 })).toThrow('ages must go up from above 0, got 0 to 10');
  });
});
