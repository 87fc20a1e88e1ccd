import { expect, test } from 'vitest';
import type { Mark, State } from '../../book/index.ts';
import type { Item } from '../../kart/index.ts';
import { pastOf, pastSaid } from './past.ts';

const item = { id: 'axle/gap', part: 'axle' } as Item;
const mark = (pos: number): Mark => ({
  pos,
  fact: `f${pos}`,
  at: `2026-10-${String(pos + 10)}T12:00:00.000Z`,
  by: 'R. Vale',
  minutes: 0,
  laps: 0,
});
const read = (pos: number, millimetres: number) => ({
  ...mark(pos),
  reading: { text: `${millimetres} mm`, si: millimetres / 1000, unit: 'mm' },
});
const stateWith = (readings: readonly ReturnType<typeof read>[], fresh?: Mark): State =>
  ({ items: { 'axle/gap': { readings } }, parts: { axle: { fresh } } }) as unknown as State;
const past = (state: State, unit = 'mm') => pastOf(item, state, unit, 'length');

test('the last five readings are shown, oldest first, in the unit that is asked for', () => {
  const state = stateWith([1, 2, 3, 4, 5, 6, 7].map(n => read(n, 140 + n)));
  expect(past(state).map(one => one.text)).toEqual(['143 mm', '144 mm', '145 mm', '146 mm', '147 mm']);
  expect(past(state, 'in').at(-1)?.text).toBe('5.787 in'); // 147 / 25.4 = 5.7874
});

test('what another part read in its place is left out', () => {
  expect(past(stateWith([read(1, 141), read(3, 143)], mark(2))).map(one => one.fact)).toEqual(['f3']);
});

test('the words say the last, and what came and went over those that are shown', () => {
  const said = (...readings: ReturnType<typeof read>[]): string => pastSaid(past(stateWith(readings)), 'mm', 'length');
  expect(said()).toBe('Not read before.');
  expect(said(read(1, 142.6))).toBe('Last read 142.6 mm on 11 Oct 2026.');
  expect(said(read(1, 142.2), read(2, 142.6))).toBe('Last read 142.6 mm on 12 Oct 2026. Over 2 readings: +0.4 mm.');
  expect(said(read(1, 142.6), read(2, 142.2))).toContain('−0.4 mm');
  expect(said(read(1, 142.6), read(2, 142.6))).toContain('no change');
});

test('a rise of temperature is a difference', () => {
  const warmer = [283.15, 288.15].map((si, i) => ({ ...past(stateWith([read(1, 1), read(2, 2)]))[i], si, text: '' }));
  expect(pastSaid(warmer as never, '°C', 'temperature')).toContain('+5 °C');
});
