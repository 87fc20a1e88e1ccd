import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { reach } from './reach.ts';

const kart: Record<string, string[][]> = {
  wheel: [],
  hub: [['wheel']],
  guard: [],
  tank: [],
  floor: [],
  seat: [['tank'], ['floor', 'guard']],
};
const minutes: Record<string, number> = { wheel: 3, hub: 5, guard: 1, tank: 6, floor: 4, seat: 8 };
const ask = (...wishes: string[][][]) =>
  reach({
    wishes: wishes.map((ways, i) => ({ id: `w${i}`, ways })),
    lyingOff: [],
    behind: p => kart[p] ?? [],
    cost: p => minutes[p] ?? 0,
  });

describe('reach', () => {
  it('takes off what is in the way of what is in the way', () => {
    expect([...(ask([['hub']])?.off ?? [])].sort()).toEqual(['hub', 'wheel']);
  });
  it('takes the cheaper way in', () => {
    expect([...(ask([['seat']])?.off ?? [])].sort()).toEqual(['floor', 'guard', 'seat']); // 4 + 1 < 6
  });
  it('pays a shared part once, so that the dearer way alone can be the cheaper one together', () => {
    expect([...(ask([['seat']], [['tank']])?.off ?? [])].sort()).toEqual(['seat', 'tank']);
  });
  it('finds the true optimum on small graphs, against trying every set', () => {
    const ways = fc.array(fc.array(fc.nat(6), { minLength: 1, maxLength: 2 }), { maxLength: 3 });
    fc.assert(
      fc.property(
        fc.array(ways, { minLength: 7, maxLength: 7 }),
        fc.array(fc.integer({ min: 1, max: 9 }), { minLength: 7, maxLength: 7 }),
        fc.array(ways, { minLength: 1, maxLength: 4 }),
        (rough, cost, wanted) => {
          const behind = rough.map((w, i) => (i === 0 ? [] : w.map(a => a.map(k => k % i))));
          const closed = (set: number): boolean =>
            behind.every((w, i) => !(set & (1 << i)) || w.length === 0 || w.some(a => a.every(k => set & (1 << k)))) &&
            wanted.every(w => w.length === 0 || w.some(a => a.every(k => set & (1 << k))));
          const price = (set: number): number => cost.reduce((s, c, i) => s + (set & (1 << i) ? c : 0), 0);
          const best = Math.min(
            ...Array.from({ length: 128 }, (_, s) => s)
              .filter(closed)
              .map(price),
          );
          const found = reach({
            wishes: wanted.map((w, i) => ({ id: `${i}`, ways: w.map(a => a.map(String)) })),
            lyingOff: [],
            behind: p => (behind[Number(p)] ?? []).map(a => a.map(String)),
            cost: p => cost[Number(p)] ?? 0,
          });
          expect(found?.proven).toBe(true);
          expect([...(found?.off ?? [])].reduce((s, p) => s + (cost[Number(p)] ?? 0), 0)).toBe(best);
        },
      ),
      { numRuns: 1000 },
    );
  });
  it('says so when the ways in go in a circle', () => {
    const round: Record<string, string[][]> = { a: [['b']], b: [['a']] };
    expect(
      reach({ wishes: [{ id: 'w', ways: [['a']] }], lyingOff: [], behind: p => round[p] ?? [], cost: () => 1 }),
    ).toBeUndefined();
  });
});
