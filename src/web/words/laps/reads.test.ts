import { describe, expect, test } from 'vitest';
import type { Lap } from '../../../laps/index.ts';
import { bestsOf } from '../../laps/sectors.ts';
import { lapText, momentIn, within } from './reads.ts';

describe('a lap time reads', () => {
  test('with no more digits than its spread bears, and minutes apart from seconds', () => {
    expect(lapText(39.8428)).toBe('39.84');
    expect(lapText(39.8428, 0.001)).toBe('39.843');
    expect(lapText(62.3149)).toBe('1:02.31');
    expect(lapText(59.999)).toBe('1:00.00');
    expect(lapText(125.5, 2)).toBe('2:05.5');
    expect(within(0.03)).toBe('± 0.06');
  });

  test('in the day of the log, where it names one', () => {
    expect(momentIn({ kind: 'day', day: '2025-06-14' }, 36_000.5)).toBe('2025-06-14T10:00:00.500Z');
    expect(momentIn({ kind: 'no date' }, 5)).toBeUndefined();
  });
});

describe('best and ideal', () => {
  const lap = (number: number, sectors: readonly number[], doubts: Lap['doubts'] = []): Lap => {
    const at = { time: 0, fix: 0, speed: 20, left: 0, over: 0.1 };
    const time = sectors.reduce((sum, each) => sum + each, 0);
    return { ...{ number, outing: 1, time, spread: 0.02, start: at, end: at, sectors, holes: [], doubts } };
  };
  test('are the quickest lap, and the best of each sector put together', () => {
    const bests = bestsOf([lap(1, [10, 20]), lap(2, [11, 18]), lap(3, [9.5, 21])]);
    expect(bests.lap?.number).toBe(2);
    expect(bests.ideal).toBeCloseTo(27.5);
    expect(bests.sectors.map(best => best?.number)).toEqual([3, 2]);
  });

  test('leave out a lap whose time is a guess, and say no ideal where there is one sector', () => {
    expect(bestsOf([lap(1, [8, 9], ['hole at the gate']), lap(2, [11, 18])]).lap?.number).toBe(2);
    expect(bestsOf([lap(1, [30])]).ideal).toBeUndefined();
    expect(bestsOf([])).toEqual({ sectors: [] });
  });
});
