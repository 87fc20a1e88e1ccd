/** What goes in and comes out of `calc fault-tree`. */
import { describe, expect, it } from 'vitest';
import { ourTrees } from '../../test/fault-tree-files.ts';
import { bareFaultTree } from './bare-fault-tree.ts';

const { ask, example } = bareFaultTree;

describe('a fault tree asked bare', () => {
  it('comes out as counts, single points and top', () => {
    expect(ask(example)).toEqual({
      cutSets: { count: 2, byOrder: [1, 1] },
      singlePoints: ['pedal pin'],
      top: expect.closeTo(1 - (1 - 0.0001) * (1 - 0.002 * 0.003), 15),
    });
  });

  it('may be XML, and one of several', () => {
    const [file] = ourTrees();
    const answer = { cutSets: { count: file?.answer.count, byOrder: file?.answer.byOrder } };
    expect(ask([{ mef: file?.xml }, example])).toMatchObject([answer, { cutSets: { count: 2 } }]);
  });

  it('lists cut sets and what each event means where that is asked', () => {
    expect(ask({ ...example, list: 1, importance: true })).toMatchObject({
      cutSets: { list: [['pedal pin']] },
      importance: { 'rear circuit': { birnbaum: expect.closeTo(0.002 * 0.9999, 15) } },
    });
  });

  it('has no top where an event has no chance, and says which', () => {
    const basic = { ...(example.basic as object), 'rear circuit': null };
    expect(ask({ ...example, basic })).toMatchObject({ cutSets: { count: 2 }, top: null, notKnown: ['rear circuit'] });
  });

  it('writes a count past what a number holds in digits', () => {
    const pairs = Array.from({ length: 60 }, (_, n) => [`a${n}`, `b${n}`]);
    const gates = Object.fromEntries(pairs.map((inputs, n) => [`g${n}`, { op: 'or', inputs }]));
    const top = { op: 'and', inputs: Object.keys(gates) };
    const basic = Object.fromEntries(pairs.flat().map(name => [name, 0.5]));
    expect(ask({ top: 'top', gates: { ...gates, top }, basic })).toMatchObject({
      cutSets: { count: '1152921504606846976' },
    });
  });

  it.each([
    ['no tree', {}, 'the whole input', 'no top, no gates, no basic'],
    ['half a tree', { top: 'a', gates: {} }, 'the whole input', 'no basic'],
    ['two trees', { mef: '<opsa-mef/>', top: 'a' }, 'mef', 'as XML and as JSON'],
    [
      'an entity that would grow',
      { mef: '<!DOCTYPE x [<!ENTITY a "&b;&b;">]><opsa-mef/>' },
      'line 1',
      '"<!DOCTYPE x [<!ENTIT"',
    ],
    ['a loop', { top: 'a', gates: { a: { op: 'or', inputs: ['a'] } }, basic: {} }, 'gates/a', 'a > a'],
    [
      'an undefined event',
      { top: 'a', gates: { a: { op: 'or', inputs: ['b', 'c'] } }, basic: { b: 0.1 } },
      'gates/a',
      '"c"',
    ],
    ['a chance below 0', { top: 'a', gates: {}, basic: { a: -0.1 } }, 'basic/a', '-0.1'],
    ['a chance over 1', { top: 'a', gates: {}, basic: { a: 3 } }, 'basic/a', '3'],
  ])('refuses %s', (_, question, path, got) => {
    expect(ask(question)).toMatchObject({ kind: 'problems', problems: [{ path, got }] });
  });
});
