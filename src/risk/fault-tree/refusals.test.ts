/** What the readers of trees say to a person: whole texts, and the edges of what is taken. */
import { describe, expect, it } from 'vitest';
import { readJsonTree } from './json.ts';
import { readMef } from './mef.ts';
import { LIMITS } from './model.ts';

const mef = (inside: string): string => `<opsa-mef><define-fault-tree>${inside}</define-fault-tree></opsa-mef>`;
const gate = (name: string, formula: string): string => `<define-gate name="${name}">${formula}</define-gate>`;
const AB = '<event name="a"/><event name="b"/>';
const top = gate('top', `<or>${AB}</or>`);
const chance = (name: string, inside = ''): string =>
  `<define-basic-event name="${name}">${inside}</define-basic-event>`;
const sound = mef(top + chance('a', '<float value="0.1"/>') + chance('b', '<int value="1"/>'));

const said = (text: string): readonly string[] => {
  const found = readMef(text);
  return found.kind === 'tree'
    ? []
    : found.problems.map(({ path, expected, got, remedy }) => `${path}: ${expected}, got ${got}: ${remedy}`);
};
const saidOfJson = (raw: unknown): readonly string[] => {
  const found = readJsonTree(raw);
  return found.kind === 'tree'
    ? []
    : found.problems.map(({ expected, got, remedy }) => `${expected}, got ${got}: ${remedy}`);
};
const chances = (text: string) => {
  const found = readMef(text);
  return found.kind === 'tree' ? Object.fromEntries(found.tree.events) : said(text);
};

describe('XML that is no tree', () => {
  it.each([
    ['<html/>', '<opsa-mef> around the whole tree, got <html>: write it as the format has it'],
    ['<opsa-mef/><a/>', 'nothing after the first element, got "<a/>": keep one document in a file'],
    ['<opsa-mef>', '</opsa-mef>, opened in line 1, got the end of the file: close it; the file may be cut short'],
    ['<a></b>', '</a>, opened in line 1, got </b>: close elements in the order they were opened'],
    ['<a></', 'the name of an element, got the end of the file: names are letters, digits, "_", "-" and "."'],
    ['<1/>', 'the name of an element, got "1/>": names are letters, digits, "_", "-" and "."'],
    ['<a></a', '">" after </a, got the end of the file: correct the markup'],
    ['<a /', '">" after <a, got "/": correct the markup'],
    ['<a b>', '"=" after the attribute b, got ">": correct the markup'],
    ['<a b=c>', 'the value of b in quotes, got "c>": write key="value"'],
    ['<a b="1" b="2"/>', 'the attribute b once, got a second one: take one of them out'],
    ['<a ="1"/>', 'an attribute or the end of <a, got "="1"/>": names are letters, digits, "_", "-" and "."'],
    ['<!-- no end', 'the end of a comment, "-->", got the end of the file: close the comment'],
    ['<!-->', 'the end of a comment, "-->", got the end of the file: close the comment'],
    [
      '<!DOCTYPE a><a/>',
      'an element, got "<!DOCTYPE a><a/>": document types, entities and instructions are not read here: take them out',
    ],
    ['<or>'.repeat(101), 'at most 100 elements inside each other, got more: give inner gates their own names'],
    [mef('<a/>'.repeat(100_001)), 'at most 100000 elements, got more: split the tree'],
    [' '.repeat(4_000_001), 'at most 4000000 characters, got 4000001: split the tree'],
  ])('%.40j is refused with what to do', (text, expected) => {
    expect(said(text)[0]).toBe(`line 1: ${expected}`);
  });

  it.each(['&x;', '&amp', '&#31;', '&#x110000;', '&#;', '&#65', '&#xg;', '&;', '&x#65;'])(
    'takes no %j for a character',
    bad => {
      expect(said(mef(gate(`a${bad}`, AB)))[0]).toBe(
        `line 1: one of &amp; &lt; &gt; &quot; &apos;, got "${bad}": write the character itself; entities are not read here`,
      );
    },
  );

  it('takes numbered characters from the space to the last there is', () => {
    const names = {
      '&#32;': ' ',
      '&#x20;': ' ',
      '&#x10FFFF;': '\u{10FFFF}',
      '&#1114111;': '\u{10FFFF}',
      '&#x4a;': 'J',
      '&quot;&apos;&gt;': '"\'>',
    };
    for (const [written, read] of Object.entries(names))
      expect(Object.keys(chances(mef(gate('top', `<event name="${written}"/>`) + chance(written))))).toEqual([read]);
  });

  it('passes comments and space over wherever they stand between elements', () => {
    expect(chances(`<!-- -->\n <!-- a > b --> ${sound}\n<!----> `)).toEqual({ a: 0.1, b: 1 });
    expect(chances(sound.replace('<or>', '<or> <!-- first <not> --> '))).toEqual({ a: 0.1, b: 1 });
    expect(chances(`${' '.repeat(4_000_000 - sound.length)}${sound}`)).toEqual({ a: 0.1, b: 1 }); // as long as is taken
  });
});

describe('a tree in XML', () => {
  it.each([
    [
      '<define-CCF-group name="g"/>',
      '<define-gate>, <define-basic-event>, <define-house-event>',
      '<define-CCF-group>',
      'take it out: only fault trees are read here',
    ],
    [gate('x', ''), 'a formula in gate "x"', 'none', 'add and, or or atleast with its inputs'],
    [
      gate('x', '<not/>'),
      'and, or or atleast in gate "x"',
      '<not>',
      'a failure never helps in these trees: say it with and, or, atleast',
    ],
    [gate('x', `<or>${AB}</or><and>${AB}</and>`), 'one element inside <define-gate>', '2', 'keep or join them'],
    [gate('x', `<or>${AB} and</or>`), 'elements inside <or>', '"and"', 'take the text out'],
    [gate('x', `<or>${AB}${'y'.repeat(50)}</or>`), 'elements inside <or>', `"${'y'.repeat(40)}"`, 'take the text out'],
    [
      chance('x', '<exponential/>'),
      'a chance as <float value="…"/>',
      '<exponential>',
      'work it out first: rates and times are not read here',
    ],
    [
      '<define-house-event name="x"><constant value="maybe"/></define-house-event>',
      '<constant value="true"/> or <constant value="false"/>',
      '<constant> with "maybe"',
      'say which of the two it is',
    ],
    [
      '<define-house-event name="x"><float value="true"/></define-house-event>',
      '<constant value="true"/> or <constant value="false"/>',
      '<float> with "true"',
      'say which of the two it is',
    ],
    ['<define-gate><or/></define-gate>', 'a name of <define-gate>', 'none', 'add name="…"'],
    [
      chance('x', '<float value="1.01"/>'),
      'a chance of "x" from 0 to 1',
      '"1.01"',
      'a chance of 3 in 100 is 0.03; leave it open where nobody knows it',
    ],
    [
      chance('x', '<float value="-0.01"/>'),
      'a chance of "x" from 0 to 1',
      '"-0.01"',
      'a chance of 3 in 100 is 0.03; leave it open where nobody knows it',
    ],
    [
      chance('x', '<float/>'),
      'a chance of "x" from 0 to 1',
      '""',
      'a chance of 3 in 100 is 0.03; leave it open where nobody knows it',
    ],
    [
      chance('x', `<float value="${'9'.repeat(50)}"/>`),
      'a chance of "x" from 0 to 1',
      `"${'9'.repeat(40)}"`,
      'a chance of 3 in 100 is 0.03; leave it open where nobody knows it',
    ],
    [chance('a'), '"a" defined once', 'a second one; the first stands at line 1', 'give one of them another name'],
    [
      gate('x', '<or></or>'),
      'at least one input of gate "x"',
      'none',
      'add what brings it about, or take the gate out',
    ],
    [
      gate('x', `<atleast min="3">${AB}</atleast>`),
      'a whole number from 1 to the 2 inputs of gate "x"',
      '3',
      'say how many of them it takes',
    ],
    [
      gate('x', `<atleast min="0">${AB}</atleast>`),
      'a whole number from 1 to the 2 inputs of gate "x"',
      '0',
      'say how many of them it takes',
    ],
    [
      gate('x', `<atleast>${AB}</atleast>`),
      'a whole number from 1 to the 2 inputs of gate "x"',
      'none',
      'say how many of them it takes',
    ],
    [
      gate('x', `<atleast min="1x">${AB}</atleast>`),
      'a whole number from 1 to the 2 inputs of gate "x"',
      'none',
      'say how many of them it takes',
    ],
    [
      gate('x', `<atleast min="x1">${AB}</atleast>`),
      'a whole number from 1 to the 2 inputs of gate "x"',
      'none',
      'say how many of them it takes',
    ],
    [
      gate('x', '<atleast min="1"><event name="a"/><event name="a"/></atleast>'),
      'each input of gate "x" once',
      'the same one again',
      'what counts double is two events',
    ],
    [
      gate('x', '<and><gate name="x"/></and>'),
      'gates that do not come about by way of themselves',
      'x > x',
      'take one of these inputs out',
    ],
    [
      gate('x', '<or><event name="nowhere"/></or>'),
      'inputs of gate "x" that are defined',
      '"nowhere"',
      'define it as a gate or an event',
    ],
  ])('%.60j is told with what to do', (more, expected, got, remedy) => {
    expect(said(sound.replace('</define-fault-tree>', `${more}</define-fault-tree>`))).toContain(
      `line 1: ${expected}, got ${got}: ${remedy}`,
    );
  });

  it('takes "at least" with space around its number, a gate that is another, and chances of 0 and 1', () => {
    const found = readMef(
      mef(
        gate('top', '<and><gate name="two"/><gate name="same"/></and>') +
          gate(
            'two',
            `<atleast min=" 12 ">${Array.from({ length: 12 }, (_, n) => `<event name="e${n}"/>`).join('')}</atleast>`,
          ) +
          gate('same', '<event name="e0"/>') +
          Array.from({ length: 12 }, (_, n) => chance(`e${n}`, `<float value="${n % 2}"/>`)).join(''),
      ),
    );
    const gates = found.kind === 'tree' ? [...found.tree.gates.values()] : found.problems;
    expect(gates).toMatchObject([{ op: 'and' }, { op: 'atleast', k: 12 }, { op: 'or', inputs: ['e0'] }]);
  });

  it('takes no gate in the data beside the trees', () => {
    expect(said(`<opsa-mef><model-data>${top}</model-data></opsa-mef>`)[0]).toBe(
      'line 1: <define-basic-event>, <define-house-event>, got <define-gate>: take it out: only fault trees are read here',
    );
  });

  it('has one top, and names those that could be, a few of many', () => {
    const many = (n: number) =>
      Array.from({ length: n }, (_, i) => gate(`g${i}`, '<or><event name="a"/></or>')).join('');
    const last = (n: number) => said(mef(many(n) + chance('a'))).at(-1);
    const saying = (got: string) =>
      `the whole tree: one gate that no other uses, the top, got ${got}: keep one tree in a file, and take out gates that nothing uses`;
    expect(last(0)).toBe(saying('none'));
    expect(last(8)).toBe(saying('8: g0, g1, g2, g3, g4, g5, g6, g7'));
    expect(last(9)).toBe(saying('9: g0, g1, g2, g3, …, g6, g7, g8'));
  });
});

describe('a tree in JSON', () => {
  const tree = { top: 'g', gates: { g: { op: 'or', inputs: ['a'] } }, basic: { a: 0.1 } };

  it('is as large as is taken, and no larger', () => {
    const sized = (events: number) => ({
      top: 'g',
      gates: { g: { op: 'or', inputs: ['e0'] } },
      basic: Object.fromEntries(Array.from({ length: events }, (_, n) => [`e${n}`, 0.1])),
    });
    expect(saidOfJson(sized(LIMITS.events))).toEqual([]);
    const remedy = 'split the tree, and solve each part alone';
    expect(saidOfJson(sized(LIMITS.events + 1))).toEqual([`at most 2000 events, got 2001: ${remedy}`]);
    const inputs = Array.from({ length: LIMITS.inputs + 1 }, () => 'a');
    expect(saidOfJson({ ...tree, gates: { g: { op: 'or', inputs } } })).toEqual([
      `at most 40000 inputs, got 40001: ${remedy}`,
    ]);
  });

  it('has a top of its own, and "at least" alone has a number', () => {
    expect(saidOfJson({ ...tree, top: 'quite another' })).toEqual([
      'a top that is defined, got "quite another": name a gate of the tree',
    ]);
    expect(saidOfJson({ ...tree, gates: { g: { op: 'or', inputs: ['a'], k: 1 } } })).toEqual([
      'k beside "atleast" only, got k 1 beside "or": take k out, or write "atleast"',
    ]);
    expect(saidOfJson({ ...tree, gates: { g: { op: 'atleast', k: 0.5, inputs: ['a'] } } })).toEqual([
      'a whole number from 1 to the 1 inputs of gate "g", got 0.5: say how many of them it takes',
    ]);
    expect(
      saidOfJson({
        ...tree,
        gates: { g: { op: 'or', inputs: Array.from({ length: 21 }, (_, n) => `input ${n}`) } },
      }).at(-1),
    ).toBe('inputs that are defined, got 1 more that are not: put those above right first');
  });

  it('shows what was written in place of a chance, cut where it is long', () => {
    const got = (a: unknown) =>
      saidOfJson({ ...tree, basic: { a } })[0]
        ?.split(', got ')[1]
        ?.split(': ')[0];
    expect(got('x'.repeat(50))).toBe(`"${'x'.repeat(39)}`);
    expect(got(undefined)).toBe('nothing');
    expect(saidOfJson({ ...tree, basic: { a: 0 } })).toEqual([]);
    expect(saidOfJson({ ...tree, basic: { a: 1 } })).toEqual([]);
  });
});
