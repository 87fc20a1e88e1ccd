import { expect, test } from 'vitest';
import { item, smallKart } from '../../../test/small-kart.ts';
import type { FactLine } from '../../app/index.ts';
import type { Fact } from '../../book/index.ts';
import { lastDone } from './last-done.ts';

const kart = smallKart(item('frame/weld', []));
let n = 0;
const line = (said: object, more: object = {}): FactLine =>
  ({
    fact: { id: `f${++n}`, at: '2026-10-12T12:00:00.000Z', by: 'R. Vale', ...said } as unknown as Fact,
    struck: null,
    ...more,
  }) as FactLine;
const weld = { kind: 'checked', item: 'frame/weld', result: 'pass', reading: { text: '7 mm' } };

test('the last three of this person are named, newest first, without what came of them', () => {
  const lines = [
    line(weld),
    line({ kind: 'made', joint: 'hub/bolts', reading: { text: '20.7 N·m' } }),
    line({ ...weld, by: 'J. Moor' }),
    line({ kind: 'note', text: 'tea' }),
    line({ kind: 'fitted', part: 'hub' }),
    line({ kind: 'taken off', part: 'wheel' }),
  ];
  const done = lastDone(lines, kart, 'R. Vale');
  expect(done.map(({ did, on }) => `${did}: ${on}`)).toEqual([
    'Checked: weld, frame',
    'Made: bolts, hub',
    'Put back: hub',
  ]);
  expect(JSON.stringify(done)).not.toMatch(/mm|N·m|pass/);
});

test('what was struck was not done, and a run or a release ends what was going on', () => {
  const struck = { struck: { by: 'R. Vale', why: 'slip' } };
  const lines = [
    line(weld, struck),
    line({ kind: 'fitted', part: 'hub' }),
    line({ kind: 'ran', minutes: 9 }),
    line(weld),
  ];
  expect(lastDone(lines, kart, 'R. Vale').map(({ did }) => did)).toEqual(['Put back']);
});

test('an item the kart no longer has is named by its id', () => {
  expect(lastDone([line({ kind: 'set', item: 'gone/gap' })], kart, 'R. Vale')).toMatchObject([{ on: 'gone/gap' }]);
});
