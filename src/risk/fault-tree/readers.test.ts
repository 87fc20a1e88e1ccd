/** Trees read from JSON and from XML: what is taken, and what is refused with place and remedy. */
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { faultTrees } from '../../../test/fault-trees.ts';
import type { TreeRead } from './draft.ts';
import { readJsonTree } from './json.ts';
import { readMef } from './mef.ts';
import { type Basic, type FaultTree, LIMITS } from './model.ts';

const mef = (inside: string): string =>
  `<?xml version="1.0"?>\n<opsa-mef><define-fault-tree name="t">\n${inside}\n</define-fault-tree></opsa-mef>`;
const gate = (name: string, formula: string): string => `<define-gate name="${name}">${formula}</define-gate>`;
const or = (...names: string[]): string => `<or>${names.map(name => `<event name="${name}"/>`).join('')}</or>`;
const event = (name: string, value?: string): string =>
  `<define-basic-event name="${name}">${value === undefined ? '' : `<float value="${value}"/>`}</define-basic-event>`;

function read(found: TreeRead): FaultTree {
  if (found.kind === 'tree') return found.tree;
  throw new Error(JSON.stringify(found.problems));
}
const wrong = (found: TreeRead): readonly string[] =>
  found.kind === 'tree' ? [] : found.problems.map(({ path, expected, got }) => `${path}: ${expected}, got ${got}`);
const remedies = (found: TreeRead): readonly string[] =>
  found.kind === 'tree' ? [] : found.problems.map(({ remedy }) => remedy);

const escaped = (text: string): string =>
  text.replaceAll('&', '&amp;').replaceAll('<', '&lt;').replaceAll('"', '&quot;');

/** A tree written down in the format, as another program would. */
function written({ gates, events }: FaultTree): string {
  const value = (is: Basic): string =>
    is === undefined ? '' : typeof is === 'boolean' ? `<constant value="${is}"/>` : `<float value="${is}"/>`;
  const lines = [...gates].map(([name, is]) =>
    gate(
      escaped(name),
      `<${is.op}${is.op === 'atleast' ? ` min="${is.k}"` : ''}>${is.inputs.map(input => `<${gates.has(input) ? 'gate' : 'event'} name="${escaped(input)}"/>`).join('')}</${is.op}>`,
    ),
  );
  const leaves = [...events].map(([name, is]) => {
    const kind = typeof is === 'boolean' ? 'house' : 'basic';
    return `<define-${kind}-event name="${escaped(name)}">${value(is)}</define-${kind}-event>`;
  });
  return mef([...lines, ...leaves].join('\n'));
}

const basic = fc.oneof(fc.double({ min: 0, max: 1, noNaN: true }), fc.boolean(), fc.constant(undefined));

describe('both notations', () => {
  it('give back the tree that was written', () => {
    fc.assert(
      fc.property(faultTrees(basic), made => {
        // The format names no top: a tree of which one gate is used by no other.
        const used = new Set([...made.gates.values()].flatMap(({ inputs }) => inputs));
        fc.pre([...made.gates.keys()].filter(name => !used.has(name)).length === 1);
        expect(read(readMef(written(made)))).toEqual(made);
        const events = [...made.events].map(([name, is]) => [name, is ?? null]);
        const json = { top: made.top, gates: Object.fromEntries(made.gates), basic: Object.fromEntries(events) };
        expect(read(readJsonTree(JSON.parse(JSON.stringify(json))))).toEqual(made);
      }),
    );
  });

  it('never throw, whatever comes', () => {
    fc.assert(fc.property(fc.anything(), raw => void readJsonTree(raw)));
    const piece = fc.constantFrom(
      '<',
      '>',
      '/',
      '"',
      '&',
      '<!--',
      '-->',
      '<or>',
      '</or>',
      'name',
      '=',
      ' ',
      '<opsa-mef>',
      '<define-gate name="a">',
      'x',
    );
    fc.assert(fc.property(fc.array(piece, { maxLength: 30 }), pieces => void readMef(pieces.join(''))));
  });
});

describe('JSON', () => {
  it('tells all that is wrong at once, each with its path', () => {
    const found = readJsonTree({
      top: 'tpo',
      gates: {
        top: { op: 'or', inputs: ['a', 'bb', 'two'] },
        two: { op: 'atleast', k: 3, inputs: ['a', 'c'] },
        none: { op: 'and', inputs: [] },
        a: { op: 'or', inputs: ['c'], k: 1 },
      },
      basic: { a: 0.1, bbb: 1.5, c: '0.2' },
    });
    expect(wrong(found)).toEqual([
      'gates/a/k: k beside "atleast" only, got k 1 beside "or"',
      'basic/a: "a" defined once, got a second one; the first stands at gates/a',
      'gates/top: inputs of gate "top" that are defined, got "bb"',
      'gates/two: a whole number from 1 to the 2 inputs of gate "two", got 3',
      'gates/none: at least one input of gate "none", got none',
      'basic/bbb: a chance of "bbb" from 0 to 1, got 1.5',
      'basic/c: a chance of "c" from 0 to 1, got "0.2"',
      'top: a top that is defined, got "tpo"',
    ]);
    expect(remedies(found)).toContain('did you mean "bbb"? Else define it as a gate or an event');
    expect(remedies(found).at(-1)).toMatch(/^did you mean "top"/);
  });

  it('says where the shape is another', () => {
    const found = readJsonTree({ top: 'a', gates: { a: { op: 'xor', inputs: 'b' } } });
    expect(wrong(found).map(each => each.split(':')[0])).toEqual(['gates/a/op', 'gates/a/inputs', 'basic']);
    expect(wrong(found)[0]).toBe('gates/a/op: one of "and", "or", "atleast", got "xor"');
  });

  it('shows the way round that gates make', () => {
    const found = readJsonTree({
      top: 'a',
      gates: {
        a: { op: 'or', inputs: ['b', 'x'] },
        b: { op: 'or', inputs: ['c'] },
        c: { op: 'and', inputs: ['a', 'x'] },
      },
      basic: { x: 0.1 },
    });
    expect(wrong(found)).toEqual(['gates/a: gates that do not come about by way of themselves, got a > b > c > a']);
  });

  it('refuses what is larger than any kart, and looks no further', () => {
    const names = Array.from({ length: LIMITS.events + 1 }, (_, n) => `e${n}`);
    const found = readJsonTree({
      top: 'g',
      gates: { g: { op: 'or', inputs: names } },
      basic: Object.fromEntries(names.map(n => [n, 2])),
    });
    expect(wrong(found)).toEqual([`the whole tree: at most ${LIMITS.events} events, got ${names.length}`]);
  });

  it('holds the first of many undefined names against the others, and counts the rest', () => {
    const inputs = Array.from({ length: 500 }, (_, n) => `input ${n}`);
    const found = readJsonTree({ top: 'g', gates: { g: { op: 'or', inputs } }, basic: {} });
    expect(wrong(found)).toHaveLength(21);
    expect(wrong(found).at(-1)).toBe('the whole tree: inputs that are defined, got 480 more that are not');
  });
});

describe('XML', () => {
  it('takes formulas inside each other, references without a gate, data apart, comments, labels and a constant', () => {
    const tree = read(
      readMef(`\uFEFF<?xml version="1.0" encoding="UTF-8"?>
        <!-- a tree --><opsa-mef>
          <define-fault-tree name="t">
            <define-gate name="top"><label>Brakes &amp; hubs</label>
              <and><or><event name="a"/><constant value="false"/></or><gate name="b"/></and></define-gate>
            <define-gate name='b'><basic-event name='c &lt; d'/></define-gate>
            <define-house-event name="a"><constant value="true"/></define-house-event>
          </define-fault-tree>
          <model-data><define-basic-event name="c &#60; d"><float value="1.5e-3"/></define-basic-event></model-data>
        </opsa-mef>`),
    );
    expect(tree.top).toBe('top');
    expect(tree.gates.get('top')).toEqual({ op: 'and', inputs: ['top input 1', 'b'] });
    expect(tree.gates.get('top input 1')).toEqual({ op: 'or', inputs: ['a', 'top input 1 input 2'] });
    expect(Object.fromEntries(tree.events)).toEqual({ a: true, 'c < d': 0.0015, 'top input 1 input 2': false });
  });

  it('tells all that is wrong with a tree at once, each with its line', () => {
    const found = readMef(
      mef(
        [
          gate('top', or('x', 'y', 'side')),
          gate('side', '<not><event name="x"/></not>'),
          gate('other', '<atleast min="two"><event name="x"/><event name="x"/></atleast>'),
          event('x', '1.2'),
          event('x', '0.1'),
          '<define-basic-event name="y"><exponential/></define-basic-event>',
          '<define-house-event name="z"/>',
          '<define-CCF-group name="g"/>',
          gate('', or('x')),
          gate('text', 'or'),
        ].join('\n'),
      ),
    );
    expect(wrong(found)).toEqual([
      'line 4: and, or or atleast in gate "side", got <not>',
      'line 8: a chance as <float value="…"/>, got <exponential>',
      'line 9: <constant value="true"/> or <constant value="false"/>, got <define-house-event> with ""',
      'line 10: <define-gate>, <define-basic-event>, <define-house-event>, got <define-CCF-group>',
      'line 11: a name of <define-gate>, got none',
      'line 12: elements inside <define-gate>, got "or"',
      'line 12: a formula in gate "text", got none',
      'line 7: "x" defined once, got a second one; the first stands at line 6',
      'line 5: a whole number from 1 to the 2 inputs of gate "other", got none',
      'line 5: each input of gate "other" once, got the same one again',
      'line 6: a chance of "x" from 0 to 1, got "1.2"',
      'the whole tree: one gate that no other uses, the top, got 3: top, other, ',
    ]);
  });

  it.each([
    ['a document type', '<!DOCTYPE a [<!ENTITY b "c">]><opsa-mef/>', 'line 1: an element, got "<!DOCTYPE a [<!ENTIT"'],
    ['an entity of its own', mef(event('&b;', '0.1')), 'line 3: one of &amp; &lt; &gt; &quot; &apos;, got "&b;"'],
    ['an instruction', mef('<?x y?>'), 'line 3: an element, got "<?x y?>"'],
    ['an element left open', '<opsa-mef>\n<or>', 'line 2: </or>, opened in line 2, got the end of the file'],
    ['another one closed', '<opsa-mef>\n</or>', 'line 2: </opsa-mef>, opened in line 1, got </or>'],
    ['more than one document', '<opsa-mef/><opsa-mef/>', 'line 1: nothing after the first element, got "<opsa-mef/>"'],
    ['a bare value', '<opsa-mef name=t/>', 'line 1: the value of name in quotes, got "t/>"'],
    ['an attribute given again', '<a b="1" b="2"/>', 'line 1: the attribute b once, got a second one'],
    ['nothing', '', 'line 1: an element, got the end of the file'],
    ['another document', '<html/>', 'line 1: <opsa-mef> around the whole tree, got <html>'],
    [
      'a thousand elements inside each other',
      '<or>'.repeat(1000),
      'line 1: at most 100 elements inside each other, got more',
    ],
    ['more elements than a tree has', mef('<a/>'.repeat(100_001)), 'line 3: at most 100000 elements, got more'],
    ['more text than a tree has', ' '.repeat(4_000_001), 'line 1: at most 4000000 characters, got 4000001'],
  ])('refuses %s', (_, text, expected) => {
    expect(wrong(readMef(text))[0]).toBe(expected);
  });
});
