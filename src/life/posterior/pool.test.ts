import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Life } from '../life.ts';
import { chanceOver } from './chance.ts';
import { type Pooled, pool } from './pool.ts';
import type { Prior } from './prior.ts';

const PRIOR: Prior = { shape: { median: 2, spread: 0.35 }, scale: { median: 40, spread: 0.7 }, source: 'a test' };
const failed = (age: number): Life => ({ fate: 'failed', age });
/** Evenly spread over the life of shape 2 with this scale. */
const worn = (scale: number, n: number): readonly Life[] =>
  Array.from({ length: n }, (_, i) => failed(scale * Math.sqrt(-Math.log((i + 0.5) / n))));
const pooled = (...karts: readonly (readonly Life[])[]): Pooled => {
  const found = pool(PRIOR, karts);
  if (found.kind === 'unknown') throw new Error(found.why);
  return found;
};

describe('several karts', () => {
  it('that wear alike are one record, which is surer than each', () => {
    const [one, all] = [pooled(worn(30, 8)), pooled(worn(30, 8), worn(33, 8))];
    expect(all).toMatchObject({ kind: 'pooled', say: expect.stringContaining('2 karts') });
    expect(all.odds).toBeGreaterThan(1);
    const width = ({ posteriors: [first] }: Pooled): number => {
      if (first === undefined) throw new Error('a posterior was expected');
      const { low, high } = chanceOver(first, { age: 20, hours: 3 });
      return high / low;
    };
    expect(width(all)).toBeLessThan(width(one));
  });
  it('that do not keep a record each', () => {
    const { kind, odds, posteriors } = pooled(worn(10, 8), worn(90, 8));
    expect(kind).toBe('apart');
    expect(odds).toBeLessThan(0.01);
    expect(posteriors[0]).not.toBe(posteriors[1]);
  });
  it('with hardly a life each are pooled: nothing says otherwise', () => {
    expect(pooled([failed(20)], [{ fate: 'running', age: 30 }], [])).toMatchObject({ kind: 'pooled' });
  });
  test('in whatever order give the same odds, and one alone gives even ones', () => {
    const lives = fc.array(fc.double({ min: 1, max: 90, noNaN: true }).map(failed), { minLength: 1, maxLength: 6 });
    fc.assert(
      fc.property(lives, lives, (a, b) => {
        expect(pooled(a, b).odds / pooled(b, a).odds).toBeCloseTo(1, 8);
        expect(pooled(a).odds).toBeCloseTo(1, 12);
      }),
      { numRuns: 15 },
    );
  });
  it('cannot be told alike or not where nobody said how long these last', () => {
    const bare: Prior = { shape: PRIOR.shape, source: 'the kind' };
    expect(pool(bare, [[failed(10)], [failed(20)]])).toMatchObject({ kind: 'unknown' });
    expect(pool(undefined, [[failed(10)]])).toMatchObject({ kind: 'unknown' });
  });
});
