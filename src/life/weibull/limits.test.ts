import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Life } from '../life.ts';
import { evidenceOf } from './evidence.ts';
import { type WeibullFit, weibullFit } from './fit.ts';
import { scaleForShape } from './fixed-shape.ts';
import { logLikelihood } from './likelihood.ts';
import { likelihoodLimits, waldLimits, waldShare } from './limits.ts';

const fitOf = (lives: readonly Life[]): WeibullFit => {
  const fit = weibullFit(lives);
  if (fit.kind !== 'fit') throw new Error(fit.say);
  return fit;
};
const record = fc
  .array(fc.tuple(fc.double({ min: 1, max: 100, noNaN: true }), fc.boolean()), { minLength: 1, maxLength: 15 })
  .map((all): Life[] => [
    { fate: 'failed', age: 20 },
    { fate: 'failed', age: 35 },
    { fate: 'running', age: 50 },
    ...all.map(([age, bad]): Life => ({ fate: bad ? 'failed' : 'running', age })),
  ]);

describe('likelihood limits', () => {
  test('hold the fit, and at each end the best the record allows lies 1.92 below the top', () => {
    fc.assert(
      fc.property(record, lives => {
        const fit = fitOf(lives);
        const of = evidenceOf(lives);
        const limits = likelihoodLimits(lives, fit);
        const best = (at: (free: number) => { shape: number; scale: number }): number =>
          golden(free => logLikelihood(of, at(Math.exp(free))), -6, 14);
        for (const shape of [limits.shape.low, limits.shape.high])
          expect(fit.logLikelihood - best(scale => ({ shape, scale }))).toBeCloseTo(1.9207294, 5);
        for (const scale of [limits.scale.low, limits.scale.high])
          expect(fit.logLikelihood - best(shape => ({ shape, scale }))).toBeCloseTo(1.9207294, 5);
        for (const name of ['shape', 'scale'] as const) {
          expect(limits[name].low).toBeLessThan(fit[name]);
          expect(limits[name].high).toBeGreaterThan(fit[name]);
        }
      }),
      { numRuns: 30 },
    );
  });
  it('of one failure are wide, and say so', () => {
    const lives: Life[] = [{ fate: 'failed', age: 26 }, ...[14, 19, 33].map((age): Life => ({ fate: 'running', age }))];
    const { shape } = likelihoodLimits(lives, fitOf(lives));
    expect(shape.high / shape.low).toBeGreaterThan(30);
  });
});

describe('Wald limits', () => {
  test('lie as far above on the log as below, and more confidence is wider', () => {
    fc.assert(
      fc.property(record, lives => {
        const fit = fitOf(lives);
        const [some, more] = [waldLimits(fit, 0.9), waldLimits(fit, 0.99)];
        expect(some.scale.low * some.scale.high).toBeCloseTo(fit.scale ** 2, (6 - Math.log10(fit.scale ** 2)) | 0);
        expect(more.shape.low).toBeLessThan(some.shape.low);
        expect(more.shape.high).toBeGreaterThan(some.shape.high);
      }),
    );
  });
  it('of a share stay between 0 and 1', () => {
    const fit = fitOf([
      { fate: 'failed', age: 20 },
      { fate: 'running', age: 30 },
    ]);
    for (const age of [0.1, 20, 1000]) {
      const { low, share, high } = waldShare(fit, age);
      expect(0 <= low && low <= share && share <= high && high <= 1).toBe(true);
    }
  });
  it('need a confidence between 0 and 1', () => {
    const fit = fitOf([
      { fate: 'failed', age: 20 },
      { fate: 'running', age: 30 },
    ]);
    expect(() => waldLimits(fit, 1)).toThrow('confidence must lie between 0 and 1, got 1');
  });
});

describe('with the shape taken as known', () => {
  it('of 1 the scale is hours over failures: the exponential life', () => {
    const lives: Life[] = [10, 30, 60].map((age, n) => ({ fate: n === 0 ? 'failed' : 'running', age }));
    expect(scaleForShape(lives, 1, 0.5).scale).toBeCloseTo(100, 12);
  });
  it('a bound stands where nothing failed, and 0.632 is one failure at any moment', () => {
    const lives = [20, 20, 15].map((age): Life => ({ fate: 'running', age }));
    const { scale, atLeast = 0 } = scaleForShape(lives, 2.5, 1 - Math.exp(-1));
    expect(scale).toBeUndefined();
    expect(atLeast).toBeCloseTo((2 * 20 ** 2.5 + 15 ** 2.5) ** (1 / 2.5), 10);
    expect(scaleForShape([], 2, 0.9)).toEqual({ failures: 0 });
  });
});

/** The top of a curve with one, by narrowing alone. */
function golden(f: (x: number) => number, from: number, to: number): number {
  let [low, high] = [from, to];
  for (let n = 0; n < 200; n++) {
    const [a, b] = [low + (high - low) / 3, high - (high - low) / 3];
    if (f(a) < f(b)) low = a;
    else high = b;
  }
  return f((low + high) / 2);
}
