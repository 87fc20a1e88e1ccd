import { expect, test } from 'vitest';
import { payloadOf } from '../../../test/journeys/served.ts';
import { createApp } from '../../app/index.ts';
import { demoText, kartReader, libraryFiles } from '../../host/index.ts';
import type { Plan } from '../../prep/index.ts';
import { memoryStore } from '../../store/memory/index.ts';
import { finished } from './finished.ts';
import { nextStep } from './next-step.ts';

test('the step that stands there after a tick can be done by the plan made anew too, and mostly is the one which that offers', async () => {
  let id = 0;
  const app = createApp({
    store: memoryStore(),
    clock: { now: () => new Date() },
    ids: { next: () => `id-${id++}`, salt: () => 'a'.repeat(32) },
    reader: kartReader(libraryFiles()),
    device: 'phone',
  });
  const kart = (await app.seedDemo(demoText())) ?? '';
  let plan = await app.plan(kart);
  let same = 0;
  for (let n = 0; n < 25; n++) {
    const step = nextStep(plan);
    if (step === undefined) throw new Error('the demo must have so many steps');
    const done = await app.record(kart, [payloadOf(step, await app.kart(kart))], { by: 'R. Vale', sure: true });
    expect(done.kind).toBe('recorded');
    const shown = finished(plan, step.key);
    plan = await app.plan(kart);
    const next = nextStep(shown);
    expect(plan.steps.some(({ key, state }) => key === next?.key && state === 'ready')).toBe(true);
    expect(shown.steps.map(({ n }) => n)).toEqual(shown.steps.map((_, i) => i + 1));
    if (next?.key === nextStep(plan)?.key) same++;
  }
  expect(same).toBeGreaterThanOrEqual(20);
});

test('a step that is no longer in the plan leaves it as it is', async () => {
  const plan = { minutes: 0, steps: [] } as unknown as Plan;
  expect(finished(plan, 'gone')).toBe(plan);
});
