import { expect, test } from 'vitest';
import { item, smallKart } from '../../../test/small-kart.ts';
import type { Step } from '../../prep/index.ts';
import { parseQuantity } from '../../quantity/index.ts';
import { keepIn } from '../place.ts';
import { linesOf } from './lines.ts';
import { keepPrinted, printedLists } from './printed.ts';

const mm = (text: string) => {
  const read = parseQuantity(text, 'length');
  if (!read.ok) throw new Error(read.remedy);
  return read.value;
};
const kart = smallKart(
  item('frame/gap', [], { action: 'measure', measure: { unit: 'mm', min: mm('140 mm'), max: mm('144 mm') } }),
  item('frame/weld', []),
);
const step = (n: number, key: string, more: Partial<Step>): Step =>
  ({
    n,
    key,
    action: 'look',
    title: key,
    item: null,
    joint: null,
    part: 'frame',
    unit: null,
    mends: null,
    state: 'ready',
    writes: 'checked',
    posture: 'any',
    grade: 'safety',
    fresh: false,
    ...more,
  }) as unknown as Step;
const steps = [
  step(1, 'take-off hub', { action: 'take-off', part: 'hub', writes: 'taken off' }),
  step(2, 'measure frame/gap', { action: 'measure', item: 'frame/gap', unit: 'mm', title: 'Gap' }),
  step(3, 'look frame/weld', { item: 'frame/weld', title: 'Weld' }),
  step(4, 'look done', { state: 'done', item: 'frame/weld' }),
  step(5, 'mend f1', { action: 'mend', mends: 'f1', item: 'frame/weld', title: 'Mend: nick' }),
];
// On the paper the numbers were one higher.
const list = steps.map(({ n, key }) => ({ n: n + 1, key }));
const typed = (text: string) => linesOf(text, { list, steps, kart });
const written = (text: string) =>
  typed(text).flatMap((line): unknown[] => (line.ok ? [...line.drafts] : [line.says as unknown]));

test('a number and a value are the step of the paper with its reading, in the unit of the step or in another', () => {
  expect(written('3 142.5')).toEqual([{ kind: 'checked', item: 'frame/gap', result: 'pass', reading: '142.5 mm' }]);
  expect(written('3. 5 5/8 in')).toMatchObject([{ reading: '5 5/8 in' }]);
  expect(written('3 142; 143')).toMatchObject([{ reading: '142; 143 mm' }]);
});

test('a number alone is done where nothing is read, and asks for its value where something is measured', () => {
  expect(written('2')).toEqual([{ kind: 'taken off', part: 'hub' }]);
  expect(written('4')).toMatchObject([{ kind: 'checked', item: 'frame/weld', result: 'pass' }]);
  expect(written('3')).toEqual(['needs its value in mm']);
});

test('what fails, cannot be done or comes later needs its words', () => {
  expect(written('4 fails: crack at the lug')).toMatchObject([{ result: 'fail', why: 'crack at the lug' }]);
  expect(written('3 139 failed bent')).toMatchObject([{ result: 'fail', why: 'bent', reading: '139 mm' }]);
  expect(written('4 not no such part')).toMatchObject([{ result: 'not possible', why: 'no such part' }]);
  expect(written('4 later no light')).toMatchObject([{ result: 'not possible', why: 'put off: no light' }]);
  expect(written('2 later no stand')).toMatchObject([{ kind: 'note', part: 'hub' }]);
  expect(written('6 new pin')).toEqual([{ kind: 'mended', found: 'f1', how: 'new pin' }]);
  for (const short of ['4 fails', '4 not', '4 later', '6', '2 not reached', '2 fails bent'])
    expect(
      typed(short).every(({ ok }) => ok),
      short,
    ).toBe(false);
});

test('a line that no step answers to says what is wrong with it, and the others stand', () => {
  const lines = typed('3 142\nhello\n\n99\n5\n3 143\n4 12 mm\n3 about a hand');
  expect(lines.map(({ line, ok }) => [line, ok])).toEqual([
    [1, true],
    [2, false],
    [4, false],
    [5, false],
    [6, false],
    [7, false],
    [8, false],
  ]);
  expect(lines[1]?.says).toContain('begin with the number');
  expect(lines[2]?.says).toContain('no step of this list');
  expect(lines[3]?.says).toBe('is done already');
  expect(lines[4]?.says).toBe('stands in another line too');
  expect(lines[5]?.says).toBe('nothing is read at this step');
});

test('the lists that were printed are kept, newest first, with what stood on them', () => {
  const keep = keepIn(undefined);
  expect(printedLists(keep, '41')).toEqual([]);
  keepPrinted(keep, '41', steps, '2026-11-26T18:00:00.000Z');
  keepPrinted(keep, '41', steps.slice(1), '2026-11-26T19:00:00.000Z');
  expect(printedLists(keep, '41').map(({ at, steps: of }) => [at.slice(11, 13), of.length])).toEqual([
    ['19', 3],
    ['18', 4],
  ]);
  expect(printedLists(keep, '7')).toEqual([]);
  keep.set('printed lists 41', 'torn');
  expect(printedLists(keep, '41')).toEqual([]);
});
