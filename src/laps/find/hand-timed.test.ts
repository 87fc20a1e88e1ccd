import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { handTimedLaps } from './index.ts';

const times = (text: string) => handTimedLaps(text).map(each => (each.kind === 'lap' ? each.time : each.remedy));

describe('a lap time typed in', () => {
  test('is read in every way a stopwatch shows it', () => {
    expect(times('52.31')).toEqual([52.31]);
    expect(times('52,3')).toEqual([52.3]);
    expect(times('0:52.31')).toEqual([52.31]);
    expect(times('1:02')).toEqual([62]);
    expect(times('1:02,5')).toEqual([62.5]);
    expect(times('1.02,5')).toEqual([62.5]);
    expect(times('1.02.5')).toEqual([62.5]);
    expect(times('1\'02.31"')).toEqual([62.31]);
    expect(times('62')).toEqual([62]);
  });
  test('comes one by one or many at once, with every wrong one named', () => {
    expect(times('52.31 0:52.31; 1.02,5\n\n51,9')).toEqual([52.31, 52.31, 62.5, 51.9]);
    expect(times('')).toEqual([]);
    expect(times('1:75 52.31 abc')).toEqual(['write 52.31 or 1:02.5', 52.31, 'write 52.31 or 1:02.5']);
  });
  test('that could be minutes and seconds is asked about, not guessed', () => {
    expect(times('1.02')).toEqual(['write minutes with a colon, as in 1:02.5']);
    expect(times('9999')).toEqual(['write minutes with a colon, as in 1:02.5']);
  });
  test('goes out and in again as the same number', () => {
    fc.assert(
      fc.property(fc.integer({ min: 10_00, max: 29 * 60_00 }), hundredths => {
        const [minutes, rest] = [Math.floor(hundredths / 60_00), hundredths % 60_00];
        const text = `${minutes}:${(rest / 100).toFixed(2).padStart(5, '0')}`;
        expect(times(text)).toEqual([Number((hundredths / 100).toFixed(2))]);
      }),
    );
  });
  test('is less sure than one from a log, and less so without digits', () => {
    const spread = (text: string): number => {
      const [lap] = handTimedLaps(text);
      return lap?.kind === 'lap' ? lap.spread : Number.NaN;
    };
    expect(spread('52.31')).toBeCloseTo(0.1415, 3);
    expect(spread('52')).toBeGreaterThan(3 * spread('52.31') - 0.01);
  });
});
