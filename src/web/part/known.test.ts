import { expect, test } from 'vitest';
import { item, smallKart } from '../../../test/small-kart.ts';
import type { Mark, State } from '../../book/index.ts';
import type { Due } from '../../prep/index.ts';
import { partKnown, readAbout } from './known.ts';

const mark = (pos: number, minutes = 0): Mark => ({
  pos,
  fact: `f${pos}`,
  at: '2026-10-12T12:00:00.000Z',
  by: 'R. Vale',
  minutes,
  laps: 0,
});
const kart = smallKart(item('hub/crack', []));
const stateOf = (said: object): State =>
  ({ minutes: 600, laps: 0, parts: {}, items: {}, joints: {}, defects: [], ...said }) as unknown as State;
const due = [
  { item: 'hub/crack', part: 'hub' },
  { item: 'wheel/rim', part: 'wheel' },
] as unknown as readonly Due[];

test('a part that no fact mentions is on, as old as the kart, and nothing says since when', () => {
  expect(partKnown(kart, stateOf({}), [], 'hub')).toMatchObject({
    on: true,
    age: { minutes: 600 },
    due: [],
    finds: [],
  });
  expect(partKnown(kart, stateOf({}), [], 'hub')?.since).toBeUndefined();
});

test('what is due, its joints with their state, and finds that are not mended are its own alone', () => {
  const hub = { on: true, off: mark(3), back: mark(4), ageMinutes: 0, ageLaps: 0, sinceMinutes: 540, sinceLaps: 0 };
  const defects = [
    { ...mark(5), part: 'hub', defect: 'nick' },
    { ...mark(6), part: 'hub', defect: 'burr', mended: mark(7) },
    { ...mark(8), part: 'wheel', defect: 'dent' },
  ];
  const known = partKnown(kart, stateOf({ parts: { hub }, defects }), due, 'hub');
  expect(known?.age.minutes).toBe(60);
  expect(known?.since?.pos).toBe(4);
  expect(known?.due).toHaveLength(1);
  expect(known?.finds.map(({ defect }) => defect)).toEqual(['nick']);
  expect(known?.joints).toMatchObject([{ joint: { id: 'hub/bolts' }, opened: { pos: 3 } }]);
  expect(known?.items.map(one => [one.item.id, one.due !== undefined])).toEqual([
    ['hub/track', false],
    ['hub/crack', true],
  ]);
});

test('a part the kart does not have is not known', () => {
  expect(partKnown(kart, stateOf({}), [], 'wing')).toBeUndefined();
});

test('the address of a label names kart and part, also where the kart has a stroke in its name', () => {
  expect(readAbout('41/rear hub left', ['41', '7'])).toEqual({ kart: '41', name: 'rear hub left' });
  expect(readAbout('club/41/hub', ['club', 'club/41'])).toEqual({ kart: 'club/41', name: 'hub' });
  expect(readAbout('9/hub', ['41'])).toEqual({ kart: '9', name: 'hub' });
  expect(readAbout('hub', ['41'])).toEqual({ kart: '', name: 'hub' });
});
