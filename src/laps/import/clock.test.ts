import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { clockOf, dateOf, dayOf, dayText, momentOf } from './clock.ts';

describe('a day', () => {
  test('is the one that the language itself counts, from 1900 to 2200', () => {
    fc.assert(
      fc.property(fc.integer({ min: -25_567, max: 84_005 }), day => {
        const text = dayText(day);
        expect(text).toBe(new Date(day * 86_400_000).toISOString().slice(0, 10));
        expect(dateOf(text)).toBe(day);
        expect(dateOf(text.split('-').toReversed().join('.'))).toBe(day);
      }),
    );
  });
  test('that is in no calendar is none', () => {
    for (const [year, month, day] of [
      [2025, 2, 29],
      [1900, 2, 29],
      [2025, 13, 1],
      [2025, 0, 1],
      [2025, 4, 31],
      [2025, 1, 0],
    ] as const)
      expect(dayOf(year, month, day)).toBeUndefined();
    expect(dayOf(2000, 2, 29)).toBe(11_016);
  });
  test('with month or day first, nobody knows which, is not guessed at', () => {
    expect(dateOf('06/07/2025')).toBeUndefined();
  });
});

describe('a moment', () => {
  test('is the same in every zone', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: 0, max: 4_000_000_000 }),
        fc.integer({ min: -14 * 60, max: 14 * 60 }),
        (seconds, zone) => {
          const local = new Date((seconds + zone * 60) * 1000).toISOString().slice(0, 19);
          const [hours, minutes] = [Math.floor(Math.abs(zone) / 60), Math.abs(zone) % 60].map(each =>
            String(each).padStart(2, '0'),
          );
          const moment = momentOf(`${local}.25${zone < 0 ? '-' : '+'}${hours}:${minutes}`);
          expect(moment && moment.day * 86_400 + moment.seconds).toBe(seconds + 0.25);
        },
      ),
    );
  });
  test('is told from what is none', () => {
    expect(momentOf('2025-06-14T24:00:00Z')).toEqual({ day: 20_254, seconds: 0, zoned: true });
    for (const text of [
      '',
      '2025-06-14',
      '2025-06-14T25:00:00Z',
      '2025-06-14T10:61:00Z',
      '2025-02-30T10:00:00Z',
      '10:00:00',
    ])
      expect(momentOf(text)).toBeUndefined();
  });
});

test('a clock may show hours or not', () => {
  expect(clockOf('10:00:00.812')).toBe(36_000.812);
  expect(clockOf('1:02,5')).toBe(62.5);
  for (const text of ['', '12', '1:2:3', 'a:bb']) expect(clockOf(text)).toBeNaN();
});
