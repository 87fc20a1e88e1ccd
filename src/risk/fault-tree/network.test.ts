/** What a tree becomes before it is solved: smaller, and in which order its events are asked. */
import { describe, expect, it } from 'vitest';
import { faultTree } from '../../../test/fault-trees.ts';
import { modulesOf } from './modules.ts';
import { networkOf } from './network.ts';
import { orderedModules } from './order.ts';

type Shape = Parameters<typeof faultTree>;
const events = { a: 0.1, b: 0.2, c: 0.3, on: true, off: false } as const; // 0, 1, 2; gates from 5 on
const network = (top: string, gates: Shape[1], given: Shape[2] = events) => networkOf(faultTree(top, gates, given));
/** The gates that are left, and the top. */
const left = (top: string, gates: Shape[1]) => {
  const { gates: all, top: ref } = network(top, gates);
  return { gates: all.flatMap((gate, g) => (gate ? [[5 + g, gate.k, ...gate.inputs]] : [])), top: ref };
};

describe('a fault tree made smaller', () => {
  it.each<[string, Shape[1][string], boolean]>([
    ['"or" over what happened', ['or', 'a', 'on'], true],
    ['"and" over what cannot', ['and', 'a', 'off'], false],
    ['"or" over nothing that can', ['or', 'off'], false],
    ['"and" over nothing but what happened', ['and', 'on'], true],
    ['one of two, one of them given', [1, 'a', 'on'], true],
    ['two of three, two of them out', [2, 'a', 'off', 'off'], false],
  ])('is decided by givens: %s', (_, gate, top) => {
    expect(network('top', { top: gate })).toEqual({ events: ['a', 'b', 'c', 'on', 'off'], gates: [], top });
  });

  it('loses what is given and keeps the rest', () => {
    expect(left('top', { top: ['or', 'a', 'off', 'b'] })).toEqual({ gates: [[5, 1, 0, 1]], top: 5 });
    expect(left('top', { top: ['and', 'a', 'on', 'b', 'c'] })).toEqual({ gates: [[5, 3, 0, 1, 2]], top: 5 });
    expect(left('top', { top: [3, 'a', 'on', 'b', 'c'] })).toEqual({ gates: [[5, 2, 0, 1, 2]], top: 5 });
    expect(left('top', { top: [2, 'a', 'on', 'b', 'c'] })).toEqual({ gates: [[5, 1, 0, 1, 2]], top: 5 });
    expect(left('top', { top: [2, 'a', 'off', 'b'] })).toEqual({ gates: [[5, 2, 0, 1]], top: 5 });
  });

  it('passes through a gate with one input, also where two inputs turn out to be the same', () => {
    expect(left('top', { top: ['or', 'x', 'b', 'c'], x: ['and', 'a', 'on'] }).gates).toEqual([[5, 1, 0, 1, 2]]);
    const twice: Shape[1] = { x: ['or', 'a'], y: ['and', 'a'], top: ['and', 'z', 'b'], z: ['or', 'x', 'y'] };
    expect(left('top', twice).gates).toEqual([[5, 2, 0, 1]]);
    expect(left('top', { ...twice, z: [1, 'x', 'y'] }).gates).toEqual([[5, 2, 0, 1]]);
    expect(left('top', { ...twice, z: [2, 'x', 'y'] }).gates).toEqual([[5, 2, 0, 1]]);
    expect(left('top', { ...twice, z: [3, 'x', 'y', 'c'] }).gates).toEqual([[6, 3, 0, 2, 1]]); // all of them: "and"
  });

  it('counts for "at least" an input as often as it is named', () => {
    expect(left('top', { x: ['or', 'a'], top: [2, 'a', 'x', 'b'] })).toEqual({ gates: [[5, 2, 0, 0, 1]], top: 5 });
  });

  it('has equal gates once', () => {
    const twins: Shape[1] = { top: ['and', 'x', 'y', 'z'], x: ['or', 'a', 'b'], y: [1, 'a', 'b'], z: ['or', 'x', 'c'] };
    expect(left('top', twins).gates).toEqual([
      [5, 1, 0, 1],
      [6, 1, 5, 2],
      [7, 2, 5, 6],
    ]);
  });

  it('draws "or" under "or" and "and" under "and" up, each once', () => {
    const under = (above: 'or' | 'and', below: 'or' | 'and') =>
      left('top', { top: [above, 'c', 'x', 'a'], x: [below, 'a', 'b'] });
    expect(under('or', 'or')).toEqual({ gates: [[6, 1, 2, 0, 1]], top: 6 });
    expect(under('and', 'and')).toEqual({ gates: [[6, 3, 2, 0, 1]], top: 6 });
    expect(under('or', 'and').gates).toHaveLength(2);
    expect(under('and', 'or').gates).toHaveLength(2);
    expect(left('top', { top: [2, 'x', 'b', 'c'], x: ['or', 'a', 'b'] }).gates).toHaveLength(2);
  });

  it('leaves a gate where two use it, and draws the others beside it up', () => {
    const { gates } = left('top', {
      top: ['or', 'x', 'y', 'z'],
      x: ['or', 'a', 'b'],
      y: ['and', 'x', 'c'],
      z: ['or', 'c', 'b'],
    });
    expect(gates).toEqual([
      [5, 1, 0, 1],
      [6, 2, 5, 2],
      [8, 1, 5, 6, 2, 1],
    ]);
  });

  it('leaves out what the givens cut off from the top', () => {
    const cut: Shape[1] = { top: ['or', 'a', 'y'], x: ['and', 'b', 'c'], y: ['and', 'x', 'off'] };
    expect(left('top', cut).top).toBe(5); // one event alone stands under a gate
    expect(left('top', cut).gates).toEqual([[5, 1, 0]]);
    const more: Shape[1] = { ...cut, top: ['or', 'a', 'y', 'b'] };
    expect(left('top', more)).toEqual({ gates: [[6, 1, 0, 1]], top: 6 });
  });

  it('must be a whole tree', () => {
    expect(() => network('nowhere', {})).toThrow('networkOf: tree must define its top, got nowhere');
  });
});

describe('the order in which events are asked', () => {
  const names = ['a', 'b', 'c', 'd', 'e', 'f'];
  const given = Object.fromEntries(names.map(name => [name, 0.1]));
  /** By module, inputs by name; a module by its gate, which is asked like an event. */
  const asks = (gates: Shape[1]) => {
    const { gates: net, top } = network('top', gates, given);
    if (typeof top === 'boolean') throw new Error('decided');
    const ordered = orderedModules(net, names.length, modulesOf(net, names.length, top));
    return ordered.map(({ asks }) => asks.map(ref => names[ref] ?? `gate ${ref - names.length}`).join(' '));
  };

  it('is depth first, the larger branch first', () => {
    // The branches share f, so that none of them is a module.
    const gates: Shape[1] = {
      small: ['and', 'a', 'f'],
      large: ['and', 'b', 'c', 'd', 'f'],
      top: ['or', 'e', 'small', 'large'],
    };
    expect(asks(gates)).toEqual(['f b c d a e']);
  });

  it('begins with what is used in several places', () => {
    expect(asks({ x: ['and', 'a', 'f'], y: ['and', 'b', 'f'], top: ['or', 'x', 'y'] })).toEqual(['f a b']);
    const shared: Shape[1] = {
      both: ['and', 'a', 'f'],
      one: ['or', 'both', 'b'],
      two: ['or', 'both', 'f', 'c'],
      top: ['and', 'd', 'one', 'two'],
    };
    expect(asks(shared)).toEqual(['f a c b d']);
  });

  it('solves a branch that shares nothing alone, and asks it as one event among others', () => {
    const gates: Shape[1] = {
      apart: ['or', 'a', 'b', 'c'],
      x: ['and', 'd', 'apart', 'f'],
      top: ['or', 'e', 'f', 'x'],
    };
    expect(asks(gates)).toEqual(['a b c', 'f d gate 0 e']);
  });

  it('takes a branch that is solved alone for one event, however large it is', () => {
    const gates: Shape[1] = {
      apart: ['or', 'a', 'b', 'c'],
      x: ['and', 'apart', 'f'],
      y: ['and', 'd', 'e', 'f'],
      top: ['or', 'x', 'y'],
    };
    expect(asks(gates)).toEqual(['a b c', 'f d e gate 0']);
  });
});
