import fc from 'fast-check';
import { expect, test } from 'vitest';
import { KEEP, keepRulesIn, noLongerKept } from './keep-rules.ts';

const daily = (from: string, days: number): string[] =>
  Array.from({ length: days }, (_, n) => new Date(Date.parse(from) - n * 86_400_000).toISOString());

test('of a year of daily backups stay seven days, four weeks and twelve months, as counted on a calendar by hand', () => {
  const all = daily('2026-11-26T03:00:00.000Z', 400); // a Thursday
  const gone = new Set(noLongerKept(all, KEEP));
  expect(all.filter(one => !gone.has(one)).map(one => one.slice(0, 10))).toEqual([
    ...['26', '25', '24', '23', '22', '21', '20'].map(day => `2026-11-${day}`), // 22 is the Sunday of the week before
    '2026-11-15', // Sunday
    '2026-11-08', // Sunday
    '2026-10-31',
    '2026-09-30',
    '2026-08-31',
    '2026-07-31',
    '2026-06-30',
    '2026-05-31',
    '2026-04-30',
    '2026-03-31',
    '2026-02-28',
    '2026-01-31',
    '2025-12-31',
  ]);
});

test('a machine that was off for months keeps the last ones it has, and the newest always stays', () => {
  const all = ['2026-11-26T03:00:00Z', '2026-02-01T03:00:00Z', '2025-06-01T03:00:00Z'];
  expect(noLongerKept(all, KEEP)).toEqual([]);
  expect(noLongerKept(all, { daily: 0, weekly: 0, monthly: 0 })).toEqual(all.slice(1));
});

test('made day by day or looked at once in the end, the same stay', () => {
  const day = fc.integer({ min: 0, max: 500 });
  fc.assert(
    fc.property(fc.uniqueArray(day, { maxLength: 80 }), days => {
      const all = days.sort((a, b) => a - b).map(n => new Date(Date.UTC(2025, 0, 1 + n, 3)).toISOString());
      let there: string[] = [];
      for (const one of all) {
        there.push(one);
        const gone = new Set(noLongerKept(there, KEEP));
        there = there.filter(kept => !gone.has(kept));
      }
      const gone = new Set(noLongerKept(all, KEEP));
      const atOnce = all.filter(one => !gone.has(one));
      expect(there.length).toBeLessThanOrEqual(KEEP.daily + KEEP.weekly + KEEP.monthly);
      for (const one of there) expect(all).toContain(one);
      // What is thrown away early never helps a rule later: days, weeks and months only ever lose their oldest.
      expect(there).toEqual(atOnce);
    }),
  );
});

test('rules are read from text, and anything else is none', () => {
  expect(keepRulesIn('7 daily, 4 weekly, 12 monthly')).toEqual(KEEP);
  expect(keepRulesIn('3 daily')).toEqual({ daily: 3, weekly: 0, monthly: 0 });
  for (const wrong of ['', 'seven daily', '7 days', '7 daily; 4 weekly', '-1 daily', '7.5 daily'])
    expect(keepRulesIn(wrong)).toBeUndefined();
});
