import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { leastRemoval, type RemovalAsk } from './least.ts';

const removal = (ask: RemovalAsk) => {
  const found = leastRemoval(ask);
  if (found.kind !== 'found') throw new Error(`expected a way, got none for ${found.wishes} ${found.parts}`);
  return found;
};

/** Every set of parts tried in turn: the cheapest that opens, from nothing, all that is asked for. */
const byTryingAll = (ask: RemovalAsk): number => {
  const bit = new Map(ask.parts.map((p, i) => [p.id, 1 << i]));
  const masks = (access: readonly (readonly string[])[]) =>
    access.map(way => way.reduce((set, id) => set | (bit.get(id) ?? 0), 0));
  const parts = ask.parts.map(p => ({ bit: bit.get(p.id) ?? 0, minutes: p.minutes, access: masks(p.access) }));
  const off = (ask.lyingOff ?? []).reduce((set, id) => set | (bit.get(id) ?? 0), 0);
  const open = (access: readonly number[], set: number) => access.length === 0 || access.some(w => (w & set) === w);
  let best = Number.POSITIVE_INFINITY;
  for (let set = 0; set < 1 << parts.length; set++) {
    if ((set & off) !== off || !ask.wishes.every(w => open(masks(w.ways), set))) continue;
    let out = 0;
    for (let grew = true; grew; ) {
      grew = false;
      for (const p of parts)
        if (p.bit & set & ~out && open(p.access, out)) {
          out |= p.bit;
          grew = true;
        }
    }
    if (out !== set) continue; // it cannot all come off, or not back on
    best = Math.min(
      best,
      parts.reduce((sum, p) => sum + (p.bit & set & ~off ? p.minutes : 0), 0),
    );
  }
  return best;
};

const PARTS = 9;
const ways = fc.array(fc.uniqueArray(fc.nat(PARTS - 1), { minLength: 1, maxLength: 3 }), { maxLength: 3 });
const anyAsk = (circles: boolean): fc.Arbitrary<RemovalAsk> =>
  fc
    .record({
      access: fc.array(ways, { minLength: PARTS, maxLength: PARTS }),
      minutes: fc.array(fc.oneof(fc.integer({ min: 0, max: 9 }), fc.constant(1)), {
        minLength: PARTS,
        maxLength: PARTS,
      }),
      wishes: fc.array(ways, { minLength: 1, maxLength: 5 }),
      off: fc.uniqueArray(fc.nat(PARTS - 1), { maxLength: 2 }),
    })
    .map(({ access, minutes, wishes, off }) => ({
      parts: access.map((w, i) => ({
        id: `part ${i}`,
        minutes: minutes[i] ?? 0,
        access: circles
          ? w.map(way => way.map(k => `part ${k}`))
          : i === 0
            ? []
            : w.map(way => way.map(k => `part ${k % i}`)),
      })),
      wishes: wishes.map((w, i) => ({ id: `wish ${i}`, ways: w.map(way => way.map(k => `part ${k}`)) })),
      lyingOff: off.map(k => `part ${k}`),
    }));

describe('the least removal', () => {
  it('is the true optimum, against trying every set', () => {
    fc.assert(
      fc.property(anyAsk(false), ask => {
        const found = removal(ask);
        expect(found.proven).toBe(true);
        expect(found.minutes).toBe(byTryingAll(ask));
        expect(found.bound).toBe(found.minutes);
      }),
      { numRuns: 3000 },
    );
  });

  it('reaches no part by way of itself, also where ways go in circles', () => {
    let circled = 0;
    fc.assert(
      fc.property(anyAsk(true), ask => {
        const best = byTryingAll(ask);
        const found = leastRemoval(ask);
        expect(found.kind).toBe(best < Number.POSITIVE_INFINITY ? 'found' : 'no way');
        if (found.kind !== 'found') {
          circled++;
          return;
        }
        expect(found.proven).toBe(true);
        expect(found.minutes).toBe(best);
      }),
      { numRuns: 5000 },
    );
    expect(circled).toBeGreaterThan(10);
  });

  it('names the parts in an order in which they can come off, and a way for each that is off before it', () => {
    fc.assert(
      fc.property(anyAsk(true), ask => {
        const found = leastRemoval(ask);
        if (found.kind !== 'found') return;
        const out = new Set<string>();
        for (const id of found.off) {
          const access = ask.parts.find(p => p.id === id)?.access ?? [];
          const way = found.wayOf('part', id);
          if (access.length > 0) expect(access).toContainEqual(way);
          for (const p of way) expect(out).toContain(p);
          out.add(id);
        }
        for (const wish of ask.wishes) {
          if (wish.ways.length > 0)
            expect(wish.ways.map(w => [...w].sort())).toContainEqual([...found.wayOf('wish', wish.id)].sort());
          for (const p of found.wayOf('wish', wish.id)) expect(out).toContain(p);
        }
        for (const p of ask.lyingOff ?? []) expect(out).toContain(p);
      }),
      { numRuns: 2000 },
    );
  });

  it('never costs more when something less is wanted, and never less when a part takes longer', () => {
    fc.assert(
      fc.property(anyAsk(false), fc.nat(PARTS - 1), (ask, k) => {
        const { minutes } = removal(ask);
        expect(removal({ ...ask, wishes: ask.wishes.slice(1) }).minutes).toBeLessThanOrEqual(minutes);
        const longer = ask.parts.map((p, i) => (i === k ? { ...p, minutes: p.minutes + 3 } : p));
        expect(removal({ ...ask, parts: longer }).minutes).toBeGreaterThanOrEqual(minutes);
      }),
    );
  });

  it('keeps the best it has when the effort ends, with a bound that holds', () => {
    fc.assert(
      fc.property(anyAsk(true), fc.nat(60), (ask, effort) => {
        const found = leastRemoval({ ...ask, effort });
        if (found.kind !== 'found') return;
        const best = byTryingAll(ask);
        expect(found.bound).toBeLessThanOrEqual(best);
        expect(found.minutes).toBeGreaterThanOrEqual(best);
        expect(found.proven).toBe(found.bound === found.minutes);
      }),
      { numRuns: 2000 },
    );
  });

  it('names what cannot be reached but by way of itself', () => {
    const ask: RemovalAsk = {
      parts: [
        { id: 'floor', minutes: 1, access: [['seat']] },
        { id: 'seat', minutes: 1, access: [['floor']] },
        { id: 'guard', minutes: 1, access: [] },
      ],
      wishes: [
        { id: 'look under the seat', ways: [['seat']] },
        { id: 'look under the guard', ways: [['guard']] },
      ],
      lyingOff: ['floor'],
    };
    expect(leastRemoval(ask)).toEqual({ kind: 'no way', parts: ['floor'], wishes: ['look under the seat'] });
  });

  it('refuses a part that is not there, a name given twice and negative minutes', () => {
    const part = { id: 'seat', minutes: 2, access: [['floor']] };
    expect(() => leastRemoval({ parts: [part], wishes: [] })).toThrow(/parts that are there, got "floor"/);
    expect(() => leastRemoval({ parts: [{ ...part, access: [] }, part], wishes: [] })).toThrow(/got one twice/);
    expect(() => leastRemoval({ parts: [{ ...part, access: [], minutes: -1 }], wishes: [] })).toThrow(
      /0 or more, got -1/,
    );
    expect(() => leastRemoval({ parts: [{ ...part, access: [], minutes: Number.NaN }], wishes: [] })).toThrow(
      /got NaN/,
    );
  });
});
