/** The tables that diagrams stand in: memory handed on, nodes kept once, results remembered, however far they grow. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { borrow, giveBack, longer } from './arrays.ts';
import { Functions } from './functions.ts';
import { Nodes, ONE, TooLarge, ZERO } from './nodes.ts';
import { Results } from './results.ts';

/** Lengths that no diagram asks for, so that each test meets its own arrays. */
let length = 3;
const other = (): number => ++length;

describe('an array that was given back', () => {
  it('is handed out again, all zero', () => {
    const size = other();
    const first = borrow(size);
    expect(first).toEqual(new Int32Array(size));
    first.fill(7);
    giveBack(first);
    const again = borrow(size);
    expect(again).toBe(first);
    expect(again).toEqual(new Int32Array(size));
    expect(borrow(size)).not.toBe(again);
  });

  it('is kept only while it is short and eight of its length at most are', () => {
    const size = other();
    const given = Array.from({ length: 9 }, () => new Int32Array(size));
    given.forEach(giveBack);
    const kept = Array.from({ length: 9 }, () => borrow(size)).filter(array => given.includes(array));
    expect(kept).toHaveLength(8);
    for (const [size, keeps] of [
      [1 << 17, true],
      [(1 << 17) + 1, false],
    ] as const) {
      const array = new Int32Array(size);
      giveBack(array);
      expect(borrow(size) === array).toBe(keeps);
    }
  });

  it('is what its longer copy took the place of', () => {
    const [short, long] = [borrow(other()), other() + 10];
    short.fill(5);
    const copy = longer(short, long);
    expect([...copy]).toEqual([...short, ...new Array(long - short.length).fill(0)]);
    expect(borrow(short.length)).toBe(short);
  });
});

describe('nodes', () => {
  it('that are alike are one, also after the table has grown', () => {
    const nodes = new Nodes(1 << 14);
    const triples = Array.from({ length: 2500 }, (_, n) => [n % 71, n % 73, n] as const);
    const made = triples.map(([level, high, low]) => nodes.node(level, high, low));
    expect(new Set(made).size).toBe(2500);
    expect(nodes.size).toBe(2502);
    expect(triples.map(([level, high, low]) => nodes.node(level, high, low))).toEqual(made);
    expect(made.map(n => [nodes.level[n], nodes.high[n], nodes.low[n]])).toEqual(triples);
    expect(nodes.level[ZERO]).toBe(nodes.level[ONE]);
    expect(nodes.level[ONE]).toBeGreaterThan(1e9); // below every variable
  });

  it('fill the table to its limit and no further', () => {
    const nodes = new Nodes(2048);
    for (let n = 2; n < 2048; n++) nodes.node(n, ONE, ZERO);
    expect(() => nodes.node(2048, ONE, ZERO)).toThrow(new TooLarge('more than 2048 nodes'));
    expect(nodes.node(2047, ONE, ZERO)).toBe(2047); // what is there is still found
  });

  it('leave their arrays to the next', () => {
    const nodes = new Nodes(1024);
    const { level, high, low } = nodes;
    nodes.release();
    const next = new Nodes(1024);
    expect(new Set([next.level, next.high, next.low, borrow(1024)])).toContain(level);
    expect(
      [level, high, low].filter(array => [next.level, next.high, next.low].includes(array)).length,
    ).toBeGreaterThan(1);
  });
});

describe('results', () => {
  it('are given back, or nothing is, and never those of others', () => {
    const pairs = Array.from({ length: 4000 }, (_, n) => [1 + (n % 97), n] as const);
    const results = new Results();
    const last = pairs.filter(([a, b], n) => results.keep(a, b, n) === n && results.get(a, b) === n);
    expect(last).toEqual(pairs); // what was kept last is there
    const found = pairs.map(([a, b]) => results.get(a, b));
    expect(found.filter((got, n) => got !== n && got !== -1)).toEqual([]);
    expect(found.filter(got => got >= 0).length).toBeGreaterThan(pairs.length / 2); // the table grows, and takes the old along
    expect(pairs.filter(([a, b]) => results.get(b + 20_000, a) !== -1)).toEqual([]);
  });

  it('leave their places to the next', () => {
    const results = new Results();
    results.keep(3, 4, 5);
    results.release();
    expect(new Results().get(3, 4)).toBe(-1);
  });
});

describe('functions', () => {
  const made = () => {
    const functions = new Functions(1 << 12);
    return { functions, of: Array.from({ length: 4 }, (_, level) => functions.event(level)) };
  };
  const fold = (functions: Functions, of: readonly number[], terms: readonly (readonly number[])[]): number =>
    terms.reduce(
      (all, term) =>
        functions.or(
          all,
          term.reduce((one, n) => functions.and(one, of[n] ?? ZERO), ONE),
        ),
      ZERO,
    );
  const terms = fc.array(fc.uniqueArray(fc.nat(3), { maxLength: 4 }), { maxLength: 5 });

  it('that are the same are the same node, however they came about', () => {
    fc.assert(
      fc.property(terms, terms, terms, (x, y, z) => {
        const { functions, of } = made();
        const { and, or } = { and: functions.and.bind(functions), or: functions.or.bind(functions) };
        const [a, b, c] = [x, y, z].map(each => fold(functions, of, each)) as [number, number, number];
        expect([and(a, b), or(a, b)]).toEqual([and(b, a), or(b, a)]);
        expect([and(a, a), or(a, a), and(a, or(a, b)), or(a, and(a, b))]).toEqual([a, a, a, a]);
        expect([and(a, ONE), and(ONE, a), or(a, ZERO), or(ZERO, a)]).toEqual([a, a, a, a]);
        expect([and(a, ZERO), and(ZERO, a), or(a, ONE), or(ONE, a)]).toEqual([ZERO, ZERO, ONE, ONE]);
        expect(and(a, or(b, c))).toBe(or(and(a, b), and(a, c)));
        expect([functions.atLeast(1, [a, b, c]), functions.atLeast(3, [a, b, c])]).toEqual([
          or(or(a, b), c),
          and(and(a, b), c),
        ]);
        expect(functions.atLeast(2, [a, b, c])).toBe(or(or(and(a, b), and(a, c)), and(b, c)));
      }),
    );
  });

  it('cost no node that they do not need', () => {
    const { functions, of } = made();
    const all = functions.atLeast(4, of);
    expect(functions.nodes.size).toBe(2 + 4 + 3); // ends, events, and what is left above each
    expect(functions.atLeast(4, of)).toBe(all);
    functions.atLeast(1, of);
    expect(functions.nodes.size).toBe(2 + 4 + 3 + 3);
  });
});
