/** Shared causes and the chances of a retention: closed forms, and what a second retention can and cannot do. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultTree } from '../../../test/fault-trees.ts';
import { analyse } from './analyse.ts';
import { withSharedCause } from './common-cause.ts';
import type { Basic, FaultTree } from './model.ts';
import { afterInspection, latent, leftOutToo } from './retention-chance.ts';

const chance = fc.double({ min: 0, max: 1, noNaN: true });
const pair = (p: Basic, q: Basic): FaultTree =>
  faultTree('off', { off: ['and', 'clip', 'strap'] }, { clip: p, strap: q });
const hands = (beta: number) => ({ name: 'same hands', members: ['clip', 'strap'], beta });
function topOf(tree: FaultTree): number | undefined {
  const found = analyse(tree);
  return found.kind === 'analysis' ? found.top : Number.NaN;
}

describe('a cause shared by a pair', () => {
  it('P6 keeps its chance at or over the shared part, and adding the second never raises it over the first alone', () => {
    fc.assert(
      fc.property(chance, chance, chance, (p, q, beta) => {
        const top = topOf(withSharedCause(pair(p, q), hands(beta))) ?? Number.NaN;
        const c = beta * Math.min(p, q);
        expect(top).toBeCloseTo(1 - (1 - c) * (1 - (p - c) * (q - c)), 12);
        expect(top).toBeGreaterThanOrEqual(c * (1 - 1e-12));
        expect(top).toBeLessThanOrEqual(p + 1e-12);
      }),
    );
  });

  it('is a single point of its own, and leaves the tree it was made from as it was', () => {
    const before = pair(0.002, 0.02);
    const after = analyse(withSharedCause(before, hands(0.1)));
    expect(after).toMatchObject({ singlePoints: ['same hands'], cutSets: { count: 2n } });
    expect(before.events.get('clip')).toBe(0.002);
  });

  it('may come beside another one', () => {
    const twice = withSharedCause(withSharedCause(pair(0.1, 0.1), hands(0.2)), { ...hands(0.25), name: 'same bottle' });
    // shared 0.02, then a quarter of the 0.08 that is left, 0.02; alone 0.06 each
    expect(topOf(twice)).toBeCloseTo(1 - 0.98 * 0.98 * (1 - 0.06 ** 2), 12);
  });

  it('may share nothing or all, and not the name of what its members become', () => {
    expect(topOf(withSharedCause(pair(0.1, 0.2), hands(0)))).toBeCloseTo(0.1 * 0.2, 15);
    expect(topOf(withSharedCause(pair(0.1, 0.2), hands(1)))).toBeCloseTo(0.1, 15);
    const once = withSharedCause(pair(0.1, 0.2), hands(0.1));
    expect(() => withSharedCause(once, { ...hands(0.1), members: ['clip', 'strap'] })).toThrow(
      'must be new in the tree',
    );
  });

  it('is not known where one of the pair is not', () => {
    expect(topOf(withSharedCause(pair(0.1, undefined), hands(0.1)))).toBeUndefined();
  });

  it('is refused to a caller whose group is none', () => {
    expect(() => withSharedCause(pair(0.1, 0.2), hands(1.5))).toThrow('beta must lie in 0…1, got 1.5');
    expect(() => withSharedCause(pair(0.1, 0.2), hands(-0.1))).toThrow('beta must lie in 0…1, got -0.1');
    for (const members of [['clip', 'clip'], ['clip'], ['clip', 'strap', 'clip']])
      expect(() => withSharedCause(pair(0.1, 0.2), { ...hands(0.1), members })).toThrow(
        `withSharedCause: members must be two or more different events, got ${members.join(', ')}`,
      );
    expect(() => withSharedCause(pair(0.1, 0.2), { ...hands(0.1), members: ['clip', 'pin'] })).toThrow('got "pin"');
    expect(() => withSharedCause(pair(0.1, true), hands(0.1))).toThrow('got "strap"');
    expect(() => withSharedCause(pair(0.1, 0.2), { ...hands(0.1), name: 'off' })).toThrow('must be new in the tree');
  });
});

describe('a chance of a retention', () => {
  it('given that the first step was left out rises with dependence, from its own to certainty', () => {
    fc.assert(
      fc.property(chance, n => {
        const rising = (['none', 'low', 'moderate', 'high', 'complete'] as const).map(level => leftOutToo(n, level));
        expect(rising[0]).toBe(n);
        expect(rising.at(-1)).toBe(1);
        for (let level = 1; level < rising.length; level++)
          expect(rising[level]).toBeGreaterThanOrEqual((rising[level - 1] ?? 2) - 1e-15);
      }),
    );
  });

  it('falls with an inspection and rises where it may be gone already', () => {
    expect(afterInspection(0.01, 0.8)).toBeCloseTo(0.002, 15);
    expect(latent(0.1, 0.02)).toBeCloseTo(1 - 0.9 * 0.98, 15);
    expect(latent(0, 0.02)).toBe(0.02);
  });

  it('is no number where one of its own is none', () => {
    for (const bad of [Number.NaN, -0.1, 1.1]) {
      expect(leftOutToo(bad, 'high')).toBeNaN();
      expect(latent(bad, 0.1)).toBeNaN();
      expect(afterInspection(0.1, bad)).toBeNaN();
    }
  });
});
