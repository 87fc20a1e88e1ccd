import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Column, fixing, fixingRule, leastBallast, minimise, STRICTEST, splitBallast } from './index.ts';
import { solve } from './small-matrix.ts';

/** Every corner of a small programme, one by one: the slow way that cannot be wrong. */
function cheapestCorner(columns: readonly Column[], right: readonly number[]): number {
  let best = Number.POSITIVE_INFINITY;
  const pick = (from: number, chosen: readonly number[]): void => {
    if (chosen.length === right.length) {
      const rest = columns.map((_, n) => n).filter(n => !chosen.includes(n));
      for (let mask = 0; mask < 2 ** rest.length; mask++) {
        const full = rest.filter((_, k) => (mask >> k) & 1);
        if (full.some(n => columns[n]?.most === Number.POSITIVE_INFINITY)) continue;
        const left = right.map((value, r) =>
          full.reduce((sum, n) => sum - (columns[n]?.most ?? 0) * (columns[n]?.adds[r] ?? 0), value),
        );
        const values = tried(
          right.map((_, r) => chosen.map(n => columns[n]?.adds[r] ?? 0)),
          left,
        );
        if (values?.every((v, k) => v >= -1e-9 && v <= (columns[chosen[k] ?? 0]?.most ?? 0) + 1e-9)) {
          const held = values.reduce((sum, v, k) => sum + v * (columns[chosen[k] ?? 0]?.cost ?? 0), 0);
          best = Math.min(
            best,
            full.reduce((sum, n) => sum + (columns[n]?.cost ?? 0) * (columns[n]?.most ?? 0), held),
          );
        }
      }
      return;
    }
    for (let n = from; n < columns.length; n++) pick(n + 1, [...chosen, n]);
  };
  pick(0, []);
  return best;
}
function tried(matrix: readonly (readonly number[])[], right: readonly number[]): readonly number[] | undefined {
  try {
    return solve(matrix, right);
  } catch {
    return undefined; // these columns lie in one plane
  }
}

const whole = fc.integer({ min: -6, max: 6 });
const column = (rows: number) =>
  fc.record({
    cost: fc.integer({ min: 0, max: 9 }),
    most: fc.integer({ min: 1, max: 8 }),
    adds: fc.array(whole, { minLength: rows, maxLength: rows }),
  });

describe('the least cost under linear demands', () => {
  test('is that of the cheapest corner, or there is no corner at all', () => {
    fc.assert(
      fc.property(fc.array(column(2), { minLength: 3, maxLength: 6 }), fc.tuple(whole, whole), (columns, right) => {
        const found = minimise(columns, right);
        const slow = cheapestCorner(columns, right);
        if (found.kind === 'infeasible') {
          expect(found.short).toBeGreaterThan(0);
          expect(slow).toBe(Number.POSITIVE_INFINITY);
        } else if (slow < Number.POSITIVE_INFINITY) expect(found.cost).toBeCloseTo(slow, 6);
      }),
    );
  });

  test('keeps every demand and every end', () => {
    fc.assert(
      fc.property(
        fc.array(column(3), { minLength: 4, maxLength: 30 }),
        fc.tuple(whole, whole, whole),
        (columns, right) => {
          const found = minimise(columns, right);
          if (found.kind === 'infeasible') return;
          right.forEach((value, r) => {
            expect(found.values.reduce((sum, v, n) => sum + v * (columns[n]?.adds[r] ?? 0), 0)).toBeCloseTo(value, 6);
          });
          found.values.forEach((v, n) => {
            expect(v).toBeGreaterThanOrEqual(0);
            expect(v).toBeLessThanOrEqual(columns[n]?.most ?? 0);
          });
          const between = found.values.filter((v, n) => v > 1e-9 && v < (columns[n]?.most ?? 0) - 1e-9);
          expect(between.length).toBeLessThanOrEqual(right.length);
        },
      ),
    );
  });

  test('a cost that falls for ever is a mistake of the caller', () => {
    expect(() => minimise([{ cost: -1, most: Number.POSITIVE_INFINITY, adds: [0] }], [0])).toThrow(
      /must have a bottom/,
    );
  });
});

const share = fc.double({ min: 0.1, max: 0.9, noNaN: true });
const wish = fc.record({
  mass: fc.double({ min: 150, max: 180, noNaN: true }),
  least: fc.double({ min: 150, max: 200, noNaN: true }),
  places: fc.array(fc.record({ most: fc.double({ min: 0.5, max: 9, noNaN: true }), front: share, left: share }), {
    minLength: 1,
    maxLength: 8,
  }),
  front: share,
  left: share,
  target: fc.double({ min: 0.4, max: 0.5, noNaN: true }),
  room: fc.constantFrom(0, 0.002, 0.02),
});
type Wish = typeof wish extends fc.Arbitrary<infer T> ? T : never;
const asked = ({ mass, least, places, front, left, target, room }: Wish) => ({
  mass,
  least,
  most: places.map(({ most }) => most),
  aims: [
    { now: front, at: places.map(each => each.front), low: target - room, high: target + room },
    { now: left, at: places.map(each => each.left), low: 0.5 - room, high: 0.5 + room },
  ],
});

describe('the least ballast', () => {
  test('keeps its places, and is met or says what is missing', () => {
    fc.assert(
      fc.property(wish, made => {
        const question = asked(made);
        const found = leastBallast(question);
        found.masses.forEach((mass, n) => {
          expect(mass).toBeGreaterThanOrEqual(0);
          expect(mass).toBeLessThanOrEqual((question.most[n] ?? 0) + 1e-9);
        });
        const short = Math.max(0, question.least - question.mass - found.total);
        if (found.massShort === 0) expect(short).toBeLessThan(1e-6);
        else expect(found.massShort).toBeCloseTo(short, 6);
        found.aims.forEach(({ reached, missing }, n) => {
          const { low = 0, high = 0 } = question.aims[n] ?? {};
          if (missing === 0) {
            expect(reached).toBeGreaterThan(low - 1e-8);
            expect(reached).toBeLessThan(high + 1e-8);
          } else {
            const end = missing > 0 ? low : high;
            expect(missing).toBeCloseTo((end - reached) * (question.mass + found.total), 5);
          }
        });
        expect(found.met).toBe(found.massShort === 0 && found.aims.every(({ missing }) => missing === 0));
      }),
    );
  });

  test('is never more with more room, and scales with the kart', () => {
    fc.assert(
      fc.property(wish, made => {
        const question = asked(made);
        const found = leastBallast(question);
        if (!found.met) return;
        const wider = { ...question, aims: question.aims.map(a => ({ ...a, low: a.low - 0.01, high: a.high + 0.01 })) };
        expect(leastBallast(wider).total).toBeLessThanOrEqual(found.total + 1e-6);
        const double = {
          ...question,
          mass: 2 * question.mass,
          least: 2 * question.least,
          most: question.most.map(m => 2 * m),
        };
        expect(leastBallast(double).total).toBeCloseTo(2 * found.total, 5);
      }),
    );
  });

  test('a heavy kart that stands as wanted needs none', () => {
    const none = leastBallast({
      mass: 180,
      least: 175,
      most: [5],
      aims: [{ now: 0.43, at: [0.8], low: 0.42, high: 0.44 }],
    });
    expect(none).toMatchObject({ masses: [0], total: 0, met: true });
  });

  test('two thousand pieces: all but a few are fitted whole or left', () => {
    const pieces = Array.from({ length: 2000 }, (_, n) => ({
      most: 0.25 + (n % 7) * 0.05,
      front: 0.1 + (n % 97) / 110,
      left: 0.2 + (n % 61) / 100,
    }));
    const found = leastBallast(
      asked({ mass: 160, least: 190, places: pieces, front: 0.41, left: 0.49, target: 0.43, room: 0 }),
    );
    expect(found.met).toBe(true);
    const cut = found.masses.filter((m, n) => m > 1e-9 && m < (pieces[n]?.most ?? 0) - 1e-9);
    expect(cut.length).toBeLessThanOrEqual(3);
  });

  test('split between two places: back to the target by moments', () => {
    fc.assert(
      fc.property(share, share, share, fc.double({ min: 1, max: 20, noNaN: true }), (x1, x2, xt, m) => {
        fc.pre(Math.abs(x1 - x2) > 0.05);
        const [one, two] = splitBallast({ mass: 172, at: 0.43 }, m, [x1, x2], xt);
        expect((172 * 0.43 + one * x1 + two * x2) / (172 + m)).toBeCloseTo(xt, 9);
      }),
    );
  });
});

describe('how ballast is fixed', () => {
  test('blocks no heavier than allowed, bolts no fewer', () => {
    expect(fixing(5, STRICTEST)).toEqual({ blocks: 1, boltsABlock: 2, boltDiameter: 0.008 });
    expect(fixing(5.1, STRICTEST).blocks).toBe(2);
    expect(fixing(9, { boltDiameter: 0.008, boltsABlock: 1, blockMass: 20, massABolt: 4 }).boltsABlock).toBe(3);
  });

  test('the rule set wins where it speaks, and what it leaves out is named', () => {
    const { rule, missing } = fixingRule({
      'ballast bolt diameter': { min: { si: 0.0079375 } },
      'ballast mass a bolt': { max: { si: 2.27 } },
    });
    expect(rule).toEqual({ ...STRICTEST, boltDiameter: 0.0079375, massABolt: 2.27 });
    expect(missing).toEqual(['ballast bolts a block', 'ballast block mass']);
  });
});
