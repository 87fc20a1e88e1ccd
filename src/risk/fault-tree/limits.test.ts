/** Trees as large as are taken, and what is said where a diagram outgrows its limit. */
import { describe, expect, it } from 'vitest';
import { faultTree } from '../../../test/fault-trees.ts';
import { analyse } from './analyse.ts';
import { type FaultTree, type Gate, LIMITS } from './model.ts';

const events = Array.from({ length: LIMITS.events }, (_, n) => `e${n}`);
const chances = (p: number) => new Map(events.map(event => [event, p]));

/** Gate under gate, "and" and "or" by turns, each with one event of its own: as deep as there are events. */
function ladder(): FaultTree {
  const gates = events.slice(1).map((event, n): [string, Gate] => {
    const below = n === 0 ? (events[0] ?? '') : `g${n - 1}`;
    return [`g${n}`, { op: n % 2 === 0 ? 'or' : 'and', inputs: [event, below] }];
  });
  return { top: `g${gates.length - 1}`, gates: new Map(gates), events: chances(0.5) };
}

/** Two chains side by side that share every event, so that no gate is a module and one diagram is as deep as all. */
function chainOfNeighbours(): FaultTree {
  const pairs = events
    .slice(1)
    .map((event, n): [string, Gate] => [`p${n}`, { op: 'and', inputs: [events[n] ?? '', event] }]);
  const top: Gate = { op: 'or', inputs: pairs.map(([name]) => name) };
  return { top: 'top', gates: new Map([...pairs, ['top', top]]), events: chances(0.001) };
}

describe('the largest tree that is taken', () => {
  it('may be one gate over all events', () => {
    const gates = new Map<string, Gate>([['top', { op: 'or', inputs: events }]]);
    const analysis = analyse({ top: 'top', gates, events: chances(0.001) });
    expect(analysis).toMatchObject({ kind: 'analysis', cutSets: { count: BigInt(LIMITS.events) } });
    if (analysis.kind === 'analysis') expect(analysis.top).toBeCloseTo(1 - 0.999 ** LIMITS.events, 12);
  });

  it('may be a ladder of gates, each the only user of the next', () => {
    expect(analyse(ladder())).toMatchObject({ kind: 'analysis', cutSets: { count: BigInt(LIMITS.events / 2 + 1) } });
  });

  it('may hang together from the first event to the last', () => {
    const analysis = analyse(chainOfNeighbours());
    expect(analysis).toMatchObject({ kind: 'analysis', cutSets: { count: BigInt(LIMITS.events - 1) } });
    if (analysis.kind !== 'analysis') return;
    expect(analysis.cutSets.byOrder).toEqual([0n, BigInt(LIMITS.events - 1)]);
    expect(analysis.importance('e1000')?.fussellVesely).toBeCloseTo(2 / (LIMITS.events - 1), 5);
  });

  it('may ask for half of many', () => {
    const names = events.slice(0, 100);
    const tree = faultTree('top', { top: [50, ...names] }, Object.fromEntries(names.map(name => [name, 0.5])));
    const analysis = analyse(tree);
    if (analysis.kind !== 'analysis') throw new Error('too large');
    // 100 over 50, and half of what lies beside the middle: from the binomial coefficients
    expect(analysis.cutSets.count).toBe(100891344545564193334812497256n);
    expect(analysis.top).toBeCloseTo(0.5 + Number(analysis.cutSets.count) / 2 ** 101, 12);
  });
});

describe('a tree whose diagram outgrows the limit', () => {
  it('is said to be too large, and nothing of it is given for the whole', () => {
    expect(analyse(chainOfNeighbours(), 2048)).toEqual({ kind: 'too large', nodes: 2048 });
  });
});
