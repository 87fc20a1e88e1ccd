import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { pairOf, shareOf } from './pair.ts';

const chance = fc.double({ min: 0, max: 1, noNaN: true });

describe('two retentions of one joint', () => {
  it('let go alone, or both by what they have in common', () => {
    // by hand: c = 0.1 x 0.01; P = 0.001 + 0.999 x 0.009 x 0.199
    const { first, second, both, chance } = pairOf(0.01, 0.2, 0.1);
    expect(first).toBeCloseTo(0.009, 15);
    expect(second).toBeCloseTo(0.199, 15);
    expect(both).toBeCloseTo(0.001, 15);
    expect(chance).toBeCloseTo(0.002789209, 12);
  });

  test('lie between what they share and the less likely one, whichever is named first', () => {
    fc.assert(
      fc.property(chance, chance, chance, (p, q, share) => {
        const pair = pairOf(p, q, share);
        expect(pair.chance).toBeGreaterThanOrEqual(pair.both);
        expect(pair.chance).toBeLessThanOrEqual(Math.min(p, q) + 1e-12);
        expect(pairOf(q, p, share).chance).toBeCloseTo(pair.chance, 15);
      }),
    );
    expect(pairOf(1, 1, 0).chance).toBe(1);
    expect(pairOf(0, 0, 1).chance).toBe(0);
  });

  it('are refused with what is no chance, by name', () => {
    for (const bad of [-0.1, 1.1, Number.NaN]) {
      expect(() => pairOf(bad, 0.1, 0.1)).toThrow(`pairOf: p must lie in 0…1, got ${bad}`);
      expect(() => pairOf(0.1, bad, 0.1)).toThrow(`pairOf: q must lie in 0…1, got ${bad}`);
      expect(() => pairOf(0.1, 0.1, bad)).toThrow(`pairOf: share must lie in 0…1, got ${bad}`);
    }
  });

  it('share by two causes what one of them or the other takes', () => {
    expect(shareOf(0.5, 0.1)).toBeCloseTo(0.55, 15);
    expect([shareOf(0, 0.3), shareOf(1, 0.3)]).toEqual([0.3, 1]);
  });
});
