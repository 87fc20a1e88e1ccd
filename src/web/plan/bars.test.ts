import { expect, test } from 'vitest';
import { demoApp } from '../../../test/demo.ts';
import { barsOf } from './bars.ts';

const plan = await (await demoApp()).plan('41', { people: 2 });
const [step] = plan.steps.filter(({ state, action }) => state !== 'done' && action !== 'posture');
if (step === undefined) throw new Error('the plan must hold a step to do');
const row = (n: number, people: readonly number[], start: number, end: number) => ({ ...step, n, people, start, end });
const of = (steps: readonly ReturnType<typeof row>[]) =>
  barsOf({ ...plan, steps, people: 2, span: 60, window: null, windows: [], closeBy: null });

test('who waits for another has a line from the end of the one step to the beginning of the next', () => {
  const { bars, waits } = of([row(1, [1], 0, 10), row(2, [2], 0, 30), row(3, [1, 2], 30, 60)]);
  const at = (key: string) => {
    const bar = bars.find(one => one.key === key);
    if (bar === undefined) throw new Error(`a bar must be drawn: ${key}`);
    return bar;
  };
  const first = at('1 1');
  expect(waits).toHaveLength(1); // of the first person alone: the second has no gap
  expect(waits[0]).toMatchObject({ lane: 0, top: first.top + first.height });
  expect((waits[0]?.top ?? 0) + (waits[0]?.height ?? 0)).toBeCloseTo(at('3 1').top, 9);
  expect(waits[0]?.height).toBeCloseTo(2 * first.height, 9); // twenty minutes beside ten
});

test('of the plan of the demo no wait lies over work of the same person, and each gap has its wait', () => {
  const { bars, waits } = barsOf(plan);
  expect(waits.length).toBeGreaterThan(0);
  for (const lane of [0, 1]) {
    const own = [...bars, ...waits].filter(one => one.lane === lane).toSorted((a, b) => a.top - b.top);
    for (const [i, one] of own.slice(1).entries()) {
      const before = own[i] as (typeof own)[number];
      const gap = one.top - before.top - before.height;
      expect(gap).toBeGreaterThan(-1e-6);
      expect(gap).toBeLessThanOrEqual(2.000001); // thinner than a line
    }
  }
});
