import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { everyDay } from './index.ts';

const MINUTE = 60_000;
let done: string[] = [];
let told: string[] = [];
let full = false;
let stop = (): void => undefined;
const daily = (): void => {
  stop = everyDay({
    now: () => new Date(),
    last: async () => done.at(-1),
    work: async () => {
      if (full) throw new Error('the disk is full');
      done.push(new Date().toISOString());
    },
    failed: error => told.push(String(error)),
  });
};
beforeEach(() => {
  [done, told, full] = [[], [], false];
  vi.useFakeTimers({ now: new Date('2026-05-01T08:00:00Z') });
});
afterEach(() => {
  stop();
  vi.useRealTimers();
});

test('is done a minute after the first start, and then once a day', async () => {
  daily();
  await vi.advanceTimersByTimeAsync(59_000);
  expect(done).toEqual([]);
  await vi.advanceTimersByTimeAsync(72 * 60 * MINUTE);
  expect(done.length).toBe(3);
  expect(done[0]).toBe('2026-05-01T08:01:00.000Z');
});

test('is done at once when the machine slept over the hour, and not again because it was started again', async () => {
  done = ['2026-05-01T07:00:00.000Z'];
  daily();
  await vi.advanceTimersByTimeAsync(60 * MINUTE);
  expect(done.length).toBe(1);
  vi.setSystemTime(new Date('2026-05-03T09:00:00Z'));
  await vi.advanceTimersByTimeAsync(15 * MINUTE);
  expect(done.length).toBe(2);
});

test('what fails is told and tried again; a clock set back by a year does not stop it', async () => {
  full = true;
  daily();
  await vi.advanceTimersByTimeAsync(20 * MINUTE);
  expect(told).toEqual(['Error: the disk is full', 'Error: the disk is full']);
  full = false;
  await vi.advanceTimersByTimeAsync(15 * MINUTE);
  expect(done.length).toBe(1);
  vi.setSystemTime(new Date('2025-05-01T09:00:00Z'));
  await vi.advanceTimersByTimeAsync(15 * MINUTE);
  expect(done.length).toBe(2);
});
