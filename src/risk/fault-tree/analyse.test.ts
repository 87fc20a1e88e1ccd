/** The engine against every state of small random trees, and what must hold of any coherent tree. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { everyState, faultTree, faultTrees } from '../../../test/fault-trees.ts';
import { type Analysis, analyse } from './analyse.ts';
import type { Basic, FaultTree } from './model.ts';

const chance = fc.double({ min: 0, max: 1, noNaN: true });
const sound = fc.double({ min: 0.001, max: 0.999, noNaN: true });
const given: fc.Arbitrary<Basic> = fc.oneof({ weight: 8, arbitrary: chance }, { weight: 1, arbitrary: fc.boolean() });

function solved(tree: FaultTree): Analysis {
  const found = analyse(tree);
  if (found.kind !== 'analysis') throw new Error('too large');
  return found;
}
const listed = ({ cutSets }: Analysis) => [...cutSets.list()].map(set => [...set].sort());
const inOrder = (sets: readonly (readonly string[])[]) => sets.map(set => set.join(' ')).sort();

describe('a fault tree', () => {
  it('has the cut sets and the top that trying every state finds', () => {
    fc.assert(
      fc.property(faultTrees(given), tree => {
        const [analysis, states] = [solved(tree), everyState(tree)];
        expect(analysis.top).toBeCloseTo(states.top(), 12);
        expect(inOrder(listed(analysis))).toEqual(inOrder(states.sets));
        expect(analysis.cutSets.count).toBe(BigInt(states.sets.length));
        const orders = states.sets.map(set => set.length).filter(order => order > 0);
        const counted = Array.from({ length: Math.max(0, ...orders) }, (_, n) =>
          BigInt(orders.filter(o => o === n + 1).length),
        );
        expect(analysis.cutSets.byOrder).toEqual(counted);
        expect([...analysis.singlePoints].sort()).toEqual(
          states.sets
            .filter(set => set.length === 1)
            .flat()
            .sort(),
        );
      }),
      { numRuns: 400 },
    );
  });

  it('knows of each event what trying every state with it sure and ruled out finds', () => {
    fc.assert(
      fc.property(faultTrees(sound), tree => {
        const [analysis, states] = [solved(tree), everyState(tree)];
        const q = states.top();
        for (const [event, p] of tree.events) {
          const [sure, out] = [states.top({ [event]: 1 }), states.top({ [event]: 0 })];
          const found = analysis.importance(event);
          expect(found?.birnbaum).toBeCloseTo(sure - out, 12);
          expect(found?.ifFailed).toBeCloseTo(sure, 12);
          expect(found?.ifPerfect).toBeCloseTo(out, 12);
          expect(found?.fussellVesely).toBeCloseTo(states.involved(event) / q, 10);
          expect(found?.criticality).toBeCloseTo((q - out) / q, 10); // P5 reduction equals criticality
          expect(found?.diagnostic).toBeCloseTo((Number(p) * sure) / q, 10);
          expect(found?.achievement).toBeGreaterThanOrEqual(1 - 1e-12); // P5
          expect(found?.reduction).toBeGreaterThanOrEqual(1 - 1e-12);
          if (out === 0) expect(found?.reduction).toBe(Number.POSITIVE_INFINITY);
        }
      }),
      { numRuns: 200 },
    );
  });

  it('gives with other chances what a tree with those chances gives', () => {
    fc.assert(
      fc.property(faultTrees(chance), fc.array(chance, { minLength: 7, maxLength: 7 }), (tree, others) => {
        const changed = new Map([...tree.events.keys()].map((name, n) => [name, others[n] ?? 0]));
        expect(solved(tree).topWith(changed)).toBe(solved({ ...tree, events: changed }).top);
      }),
    );
  });

  it('P5 has a top that rises with every chance, and lies under both bounds from its cut sets', () => {
    fc.assert(
      fc.property(faultTrees(chance), chance, (tree, more) => {
        const analysis = solved(tree);
        const [top, rounding] = [analysis.top ?? Number.NaN, 1e-12];
        for (const [event, p] of tree.events)
          expect(analysis.topWith(new Map([[event, Math.max(Number(p), more)]]))).toBeGreaterThanOrEqual(
            top - rounding,
          );
        const sets = listed(analysis).map(set => set.reduce((all, event) => all * Number(tree.events.get(event)), 1));
        const sum = sets.reduce((all, set) => all + set, 0);
        const bound = 1 - sets.reduce((none, set) => none * (1 - set), 1);
        expect(top).toBeLessThanOrEqual(bound + rounding);
        expect(bound).toBeLessThanOrEqual(sum + rounding);
      }),
    );
  });
});

describe('cut sets', () => {
  const bridge = faultTree(
    'no way through',
    {
      'no way through': ['or', 'a', 'b', 'c'],
      a: ['and', 'b1', 'b2'],
      b: ['and', 'b4', 'b5'],
      c: ['and', 'b1', 'b3', 'b5'],
    },
    { b1: 0.1, b2: 0.1, b3: 0.1, b4: 0.1, b5: 0.1 },
  );
  it('are listed up to an order, up to a number, smallest first, and as often as asked', () => {
    const { cutSets } = solved(bridge);
    expect([...cutSets.list()].map(set => set.join(' ')).toSorted()).toEqual(['b1 b2', 'b1 b3 b5', 'b4 b5']);
    expect([...cutSets.list()].map(set => set.length)).toEqual([2, 2, 3]);
    expect([...cutSets.list({ order: 2 })]).toHaveLength(2);
    expect([...cutSets.list({ sets: 1 })]).toHaveLength(1);
    expect([...cutSets.list({ sets: 0 })]).toEqual([]);
    const list = cutSets.list();
    expect([...list]).toEqual([...list]);
  });

  it('are counted past what a double holds, and the first are there at once', () => {
    const pairs = Array.from({ length: 60 }, (_, n) => [`a${n}`, `b${n}`] as const);
    const tree = faultTree(
      'all',
      {
        all: ['and', ...pairs.map((_, n) => `g${n}`)],
        ...Object.fromEntries(pairs.map(([a, b], n) => [`g${n}`, ['or', a, b]])),
      },
      Object.fromEntries(pairs.flat().map(name => [name, 0.5])),
    );
    const analysis = solved(tree);
    expect(analysis.cutSets.count).toBe(2n ** 60n);
    expect(analysis.cutSets.byOrder.at(-1)).toBe(2n ** 60n);
    expect([...analysis.cutSets.list({ sets: 3 })].map(set => set.length)).toEqual([60, 60, 60]);
    expect(analysis.top).toBeCloseTo(0.75 ** 60, 15);
  });

  it('are counted past what a double holds order by order, as the binomial theorem says', () => {
    // one of a, b, or c with d, forty times over: (2x + x²)^40
    const names = Array.from({ length: 40 }, (_, n) => n);
    const tree = faultTree(
      'all',
      {
        all: ['and', ...names.map(n => `g${n}`)],
        ...Object.fromEntries(
          names.flatMap(n => [
            [`g${n}`, ['or', `a${n}`, `b${n}`, `p${n}`]],
            [`p${n}`, ['and', `c${n}`, `d${n}`]],
          ]),
        ),
      },
      Object.fromEntries(names.flatMap(n => ['a', 'b', 'c', 'd'].map(of => [`${of}${n}`, 0.5]))),
    );
    const { count, byOrder } = solved(tree).cutSets;
    expect(count).toBe(3n ** 40n);
    expect(byOrder.slice(0, 39)).toEqual(Array(39).fill(0n));
    expect(byOrder.slice(39, 43)).toEqual([2n ** 40n, 40n * 2n ** 39n, 780n * 2n ** 38n, 9880n * 2n ** 37n]);
    expect(byOrder.slice(78)).toEqual([40n * 2n, 1n]);
  });
});

describe('where almost all hangs on one event', () => {
  it('what is left without it is exact, and so is what it reduces', () => {
    const tree = faultTree(
      'top',
      { top: ['or', 'most', 'both'], both: ['and', 'x', 'y'] },
      { most: 0.5, x: 1e-5, y: 1e-5 },
    );
    const { ifPerfect, reduction, birnbaum } = solved(tree).importance('most') ?? {};
    expect((ifPerfect ?? 0) / 1e-10).toBeCloseTo(1, 12);
    expect(birnbaum).toBeCloseTo(1 - 1e-10, 15);
    expect((reduction ?? 0) / ((0.5 + 0.5e-10) / 1e-10)).toBeCloseTo(1, 12);
  });
});

describe('what nobody knows', () => {
  const tree = faultTree(
    'top',
    { top: ['or', 'known', 'both'], both: ['and', 'x', 'y'] },
    { known: 0.1, x: undefined, y: 0.2, aside: undefined },
  );
  it('leaves the cut sets and takes the top and its importance away', () => {
    const analysis = solved(tree);
    expect(analysis.top).toBeUndefined();
    expect(analysis.importance('known')).toBeUndefined();
    expect(analysis.singlePoints).toEqual(['known']);
    expect(analysis.cutSets.count).toBe(2n);
  });
  it('comes back once it is known, and an event that nothing hangs on does not matter', () => {
    const analysis = solved(tree);
    expect(analysis.topWith(new Map([['x', 0.5]]))).toBeCloseTo(0.19, 12);
    expect(analysis.topWith(new Map())).toBeUndefined();
  });
});

describe('givens', () => {
  it('that decide the top leave one empty cut set or none', () => {
    const on = solved(faultTree('top', { top: ['or', 'off', 'x'] }, { off: true, x: 0.1 }));
    expect([on.top, on.cutSets.count, [...on.cutSets.list()]]).toEqual([1, 1n, [[]]]);
    const never = solved(faultTree('top', { top: ['and', 'off', 'x'] }, { off: false, x: 0.1 }));
    expect([never.top, never.cutSets.count, [...never.cutSets.list()]]).toEqual([0, 0n, []]);
    expect(never.importance('x')).toBeUndefined();
    expect([...on.cutSets.list({ sets: 0 })]).toEqual([]);
    expect(on.importance('x')).toMatchObject({ birnbaum: 0, ifFailed: 1, ifPerfect: 1 }); // it happens anyway
    expect(on.importance('off')).toBeUndefined();
    expect([on, never].map(each => each.topWith(new Map([['x', 0.5]])))).toEqual([1, 0]);
  });
  it('make a pair with one part off a single point', () => {
    expect(
      solved(faultTree('top', { top: ['and', 'clip', 'strap'] }, { clip: 0.01, strap: true })).singlePoints,
    ).toEqual(['clip']);
  });
  it('that are one event alone are a single point', () => {
    expect(solved(faultTree('x', {}, { x: 0.25 })).singlePoints).toEqual(['x']);
  });
});

describe('a caller', () => {
  it('who asks for what is not there is told which argument must be what', () => {
    const analysis = solved(faultTree('top', { top: ['or', 'a', 'b'] }, { a: 0.1, b: 0.2 }));
    expect(() => analysis.importance('c')).toThrow('importance: event must be one of the tree, got "c"');
    expect(() => analysis.topWith(new Map([['c', 0.1]]))).toThrow('topWith: event must be one of the tree, got "c"');
    expect(() => analysis.topWith(new Map([['a', 1.1]]))).toThrow('topWith: chance of a must lie in 0…1, got 1.1');
    expect(() => analysis.topWith(new Map([['a', Number.NaN]]))).toThrow('must lie in 0…1');
    expect(() => analysis.topWith(new Map([['a', -0.1]]))).toThrow('topWith: chance of a must lie in 0…1, got -0.1');
    const given = solved(faultTree('top', { top: ['or', 'a', 'b'] }, { a: true, b: 0.2 }));
    expect(() => given.topWith(new Map([['a', 0.1]]))).toThrow('event must have a chance, got "a", which is given');
  });
});
