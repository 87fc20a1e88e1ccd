import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type JetPoint, learnExponent } from './index.ts';

/** Jets that follow an exponent, rounded to a step as a box does. */
const logOf = (exponent: number, densities: readonly number[], step = 1): readonly JetPoint[] =>
  densities.map(density => ({
    density,
    jet: Math.round((165 * (density / 1.2) ** exponent) / step) * step,
    reading: 'right',
  }));
const SEASON = [1.06, 1.09, 1.12, 1.15, 1.18, 1.21, 1.24, 1.27];

describe('the exponent of the log', () => {
  test('is found again, inside its interval', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 1.4, noNaN: true }), exponent => {
        const learned = learnExponent(logOf(exponent, SEASON));
        if (learned.kind !== 'learned') throw new Error(learned.why);
        expect(learned.low).toBeLessThanOrEqual(exponent);
        expect(learned.high).toBeGreaterThanOrEqual(exponent);
        expect(learned.high - learned.low).toBeGreaterThan(0.01);
        expect(learned.seen).toEqual([1.06, 1.27]);
      }),
    );
  });

  test('does not change with the unit of the number or the order of the sessions', () => {
    const points = logOf(0.6, SEASON);
    const [one, two] = [learnExponent(points), learnExponent(points.map(p => ({ ...p, jet: p.jet * 2 })).toReversed())];
    if (one.kind !== 'learned' || two.kind !== 'learned') throw new Error('not learned');
    expect(two.exponent).toBeCloseTo(one.exponent, 9);
    expect(two.high).toBeCloseTo(one.high, 9);
  });

  test('is never surer than the steps between jets allow', () => {
    const exact = SEASON.map((density): JetPoint => ({ density, jet: 165 * (density / 1.2) ** 0.5, reading: 'right' }));
    const learned = learnExponent(exact);
    if (learned.kind !== 'learned') throw new Error(learned.why);
    expect(learned.high - learned.low).toBeGreaterThan(0.01);
  });

  test('needs five sessions read as right: rich, lean and unread ones teach nothing', () => {
    const points = logOf(0.6, SEASON);
    for (const reading of ['rich', 'lean', 'not read'] as const)
      expect(learnExponent(points.map((p, n) => (n < 4 ? p : { ...p, reading })))).toMatchObject({
        kind: 'not yet',
        right: 4,
      });
  });

  test('needs air that differs, jets that differ, and an interval narrower than the band', () => {
    expect(learnExponent(logOf(0.6, [1.2, 1.201, 1.202, 1.203, 1.21]))).toMatchObject({ kind: 'not yet' });
    expect(learnExponent(logOf(0, SEASON))).toMatchObject({ kind: 'not yet' });
    const wild = SEASON.map((density, n): JetPoint => ({ density, jet: n % 2 ? 150 : 180, reading: 'right' }));
    expect(learnExponent(wild)).toMatchObject({ kind: 'not yet' });
  });

  test('an exponent that no carburettor has is not taken', () => {
    for (const exponent of [-0.8, 3])
      expect(learnExponent(logOf(exponent, SEASON))).toMatchObject({
        kind: 'not yet',
        why: expect.stringContaining('no carburettor'),
      });
  });

  test('goes by dry air where every session has it', () => {
    const points = logOf(0.6, SEASON).map(p => ({ ...p, dry: p.density * 0.99 }));
    expect(learnExponent(points)).toMatchObject({ kind: 'learned', by: 'dry air' });
    expect(learnExponent(points.map(({ dry, ...p }, n) => (n === 0 ? p : { ...p, dry })))).toMatchObject({
      by: 'all air',
    });
  });

  test('points that are no numbers are left out', () => {
    const broken = [Number.NaN, 0].flatMap(bad => [
      { density: bad, jet: 165, reading: 'right' as const },
      { density: 1.2, jet: bad, reading: 'right' as const },
    ]);
    expect(learnExponent([...logOf(0.6, SEASON), ...broken])).toEqual(learnExponent(logOf(0.6, SEASON)));
    expect(learnExponent([])).toMatchObject({ kind: 'not yet', right: 0 });
  });
});
