import { expect, test } from 'vitest';
import { item, smallKart } from '../../test/small-kart.ts';
import type { Mark, State } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import { openOnKart, toolsNamed } from './open-on-kart.ts';

const mark = (pos: number): Mark => ({
  pos,
  fact: `f${pos}`,
  at: '2026-10-12T12:00:00.000Z',
  by: 'R. Vale',
  minutes: 0,
  laps: 0,
});
const pass = (pos: number) => ({ pass: mark(pos), readings: [] });
const bare = { parts: {}, items: {}, joints: {}, releases: [] };
const stateOf = (said: object): State => ({ ...bare, ...said }) as unknown as State;

const small = smallKart(
  item('frame/tools counted', []),
  item('frame/weld', [], { tools: ['torch'] }),
  item('frame/bend', [], { tools: ['straight edge'] }),
);
const hub = small.parts.hub as Kart['parts'][string];
const kart: Kart = {
  ...small,
  parts: { ...small.parts, hub: { ...hub, takeOff: { ...hub.takeOff, tools: ['5 mm key'] } } },
};

test('a part that is off is listed with its time and hand, and its joints are not listed beside it', () => {
  const state = stateOf({ parts: { hub: { on: false, off: mark(3) } } });
  expect(openOnKart(kart, state)).toMatchObject({
    off: [{ on: 'hub', text: 'hub is off', by: 'R. Vale' }],
    halfDone: [],
    tools: ['5 mm key'],
  });
});

test('a joint of a part that is back on is half done until it is made', () => {
  const parts = { hub: { on: true, off: mark(3), back: mark(4) } };
  const { halfDone, off } = openOnKart(kart, stateOf({ parts }));
  expect(off).toEqual([]);
  expect(halfDone).toMatchObject([{ on: 'hub/bolts' }]);
  expect(openOnKart(kart, stateOf({ parts, joints: { 'hub/bolts': { made: mark(5) } } })).halfDone).toEqual([]);
});

test('tools are out from their use until they are counted or the kart is signed for, and used again they are out again', () => {
  const used = { 'frame/weld': pass(2), 'frame/bend': { fail: mark(6), readings: [] } };
  expect(openOnKart(kart, stateOf({ items: used })).tools).toEqual(['straight edge', 'torch']);
  expect(openOnKart(kart, stateOf({ items: { ...used, 'frame/tools counted': pass(4) } })).tools).toEqual([
    'straight edge',
  ]);
  expect(openOnKart(kart, stateOf({ items: used, releases: [mark(7)] })).tools).toEqual([]);
});

test('a release names the tools in one line, and none where all are counted', () => {
  expect(toolsNamed({ off: [], halfDone: [], tools: ['torch', '5 mm key'] })).toEqual([
    'tools not counted since they were used: torch, 5 mm key',
  ]);
  expect(toolsNamed({ off: [], halfDone: [], tools: [] })).toEqual([]);
});
