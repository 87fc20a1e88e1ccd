import fc from 'fast-check';
import { expect, test } from 'vitest';
import { DAY, dayField, momentOf } from './against.ts';

const heat = {
  fact: 'f1',
  at: '2026-06-20T09:00:00.000Z',
  label: 'Round 4 › Heat 1',
  minutes: 8,
  laps: 8,
  wet: false,
  track: null,
  conditions: null,
};

test('a session is found by its fact; one that was struck leaves the baseline', () => {
  expect(momentOf('f1', [heat])).toEqual({ label: 'Round 4 › Heat 1', at: heat.at });
  expect(momentOf('f2', [heat])).toBeUndefined();
  expect(momentOf('', [heat])).toBeUndefined();
});

test('a day means its last moment where the device is, whatever the day', () => {
  fc.assert(
    fc.property(fc.date({ min: new Date(2000, 0, 1), max: new Date(2090, 0, 1), noInvalidDate: true }), moment => {
      const day = dayField(moment);
      const end = new Date(momentOf(`${DAY}${day}`, [])?.at ?? '');
      expect(end.getTime()).toBeGreaterThanOrEqual(moment.getTime());
      expect(dayField(end)).toBe(day);
      expect(dayField(new Date(end.getTime() + 1))).not.toBe(day);
    }),
  );
});

test('half a day typed leaves the baseline', () => {
  for (const text of ['', 'soon']) expect(momentOf(`${DAY}${text}`, [heat])).toBeUndefined();
});
