import { expect, test, vi } from 'vitest';
import { demoApp, snapshotOf } from '../../../test/demo.ts';
import { createPlanner } from './planner.ts';
import type { Job } from './search.ts';

test('again, and for other times, it is planned from now, not from when the answers were given', async () => {
  const answers = await snapshotOf(await demoApp(), '41');
  const { at } = answers.fitness;
  const jobs: Omit<Job, 'facts'>[] = [];
  const crew = { people: 2, names: [], times: [{ minutes: 180, from: at }] };
  const planner = createPlanner(
    job => {
      jobs.push(job);
      return () => undefined;
    },
    () => crew,
    () => undefined,
  );
  planner.arrived(answers);
  const later = new Date(Date.parse(at) + 2 * 3_600_000).toISOString();
  vi.useFakeTimers({ toFake: ['Date'], now: new Date(later) });
  try {
    planner.again();
    planner.setCrew({ ...crew, people: 3 });
  } finally {
    vi.useRealTimers();
  }
  expect(jobs).toHaveLength(3);
  for (const { now, ask } of jobs.slice(1)) {
    expect(now).toBe(later);
    expect(ask.windows).toEqual([{ minutes: 60, from: later }]); // of three hours two are over
  }
});
