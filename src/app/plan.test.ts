import { describe, expect, test } from 'vitest';
import { smallBench } from '../../test/fixtures/small-bench.ts';
import type { PlanAsk } from './plan.ts';

describe('times to work in', () => {
  const at = (hour: number, minutes: number) => ({ minutes, from: `2026-04-30T${hour}:00:00.000Z` });
  const planned = async (...windows: NonNullable<PlanAsk['windows']>) =>
    (await smallBench()).app.plan('small', { windows }).then(
      plan => plan.windows.length,
      error => error.problems,
    );

  test('that overlap are refused, with the time at which the later one may begin', async () => {
    expect(await planned(at(18, 180), at(20, 60))).toMatchObject([
      { code: 'times overlap', where: 'windows[1]', message: expect.stringContaining('2026-04-30T21:00:00.000Z') },
    ]);
  });
  test('that come in another order than they are given are refused', async () => {
    expect(await planned(at(20, 60), at(18, 60))).toMatchObject([{ code: 'times overlap', where: 'windows[1]' }]);
  });
  test('that follow each other are planned with, also where one does not say when it begins', async () => {
    expect(await planned(at(18, 120), at(20, 60))).toBe(2);
    expect(await planned({ minutes: 60 }, at(20, 60))).toBe(2);
  });
  test('without a beginning begin when the one before is over', async () => {
    expect(await planned(at(18, 60), { minutes: 90 }, at(20, 60))).toMatchObject([{ where: 'windows[2]' }]);
  });
});
