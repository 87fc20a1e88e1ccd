import { expect, test } from 'vitest';
import { facts, minute } from '../../test/random-kart.ts';
import { item, smallKart } from '../../test/small-kart.ts';
import { fold, type Payload } from '../book/index.ts';
import { coming } from './coming.ts';

const HOUR = 60;
const kart = smallKart(
  item('frame/grease', [{ on: 'hours', limit: 2 }]),
  item('frame/belt', [{ on: 'days', limit: 30 }]),
);
const event = (name: string, day: number): Payload => ({
  kind: 'event',
  event: name,
  from: minute(day * 24 * HOUR),
  until: minute(day * 24 * HOUR + 8 * HOUR),
  minutes: 90,
});
const done = (what: string): Payload => ({ kind: 'checked', item: what, result: 'pass' });

/** Worked by hand: 20 min run since; 1.5 h at each event, so 2 h are over in the second; 30 days are over before the third. */
test('what runs out is due before the event during which it would, and is said once', () => {
  const book = [
    ...['frame/grease', 'frame/belt', 'hub/bolts', 'hub/track'].map(done),
    { kind: 'ran', minutes: 20 } as const,
    event('third', 40),
    event('first', 10),
    event('second', 20),
    event('over', 0.001),
  ];
  const ahead = coming(kart, fold(facts(book)), minute(24 * HOUR));
  expect(ahead.map(({ event: { event: name } }) => name)).toEqual(['first', 'second', 'third']);
  const named = ahead.map(({ runsOut }) => runsOut.map(({ item: id }) => id).filter(id => id.startsWith('frame')));
  expect(named).toEqual([[], ['frame/grease'], ['frame/belt']]);
  expect(ahead[1]?.runsOut[0]?.why).toBe('1.8 h run by then; the 1.5 h to come would pass its 2 h.');
  const all = ahead.flatMap(({ runsOut }) => runsOut.map(({ item: id }) => id));
  expect(new Set(all).size).toBe(all.length);
});
