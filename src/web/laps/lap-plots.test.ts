import { expect, test } from 'vitest';
import { roundSteps } from '../drawing/plot.tsx';
import { drawnOf } from './lap-plots.tsx';

const x = [0, 100, 200];
const gap = (y: readonly number[]) =>
  drawnOf({ title: '', unit: 's', least: 0.1, zero: true, traces: [{ name: '', look: 'plain', x, y }] }).axes.y;

test('two laps that are the same have an axis of tenths around 0, not of what the arithmetic left over', () => {
  for (const left of [0, 1e-12]) {
    const [low, high] = gap([0, left, -left]);
    expect(low).toBeCloseTo(-0.06, 9);
    expect(high).toBeCloseTo(0.06, 9);
    expect(roundSteps(low, high, 6).map(String)).toEqual(['-0.06', '-0.04', '-0.02', '0', '0.02', '0.04', '0.06']);
  }
});

test('an axis holds every value, and 0 where it is told to', () => {
  const [low, high] = gap([0.2, 0.35, 0.31]);
  expect(low).toBeLessThanOrEqual(0);
  expect(high).toBeGreaterThanOrEqual(0.35);
});
