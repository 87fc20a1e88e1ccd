import { expect, test } from 'vitest';
import { keepIn, keepOf } from '../place.ts';
import { createAway } from './away.ts';

const MINUTE = 60_000;

/** A page whose sight and time are said by the test. */
function bench(keep = keepIn(undefined)) {
  let now = Date.parse('2026-11-26T18:00:00Z');
  let listen = (): void => undefined;
  let tick = (): void => undefined;
  const page = {
    visibilityState: 'visible' as DocumentVisibilityState,
    addEventListener: ((_: string, heard: () => void) => {
      listen = heard;
    }) as Document['addEventListener'],
  };
  const clock = {
    now: () => now,
    every: (_: number, on: () => void) => {
      tick = on;
    },
  };
  const away = createAway(page, keep, clock);
  return {
    away,
    keep,
    wait(ms: number) {
      now += ms;
    },
    tick: () => tick(),
    turn(state: DocumentVisibilityState) {
      page.visibilityState = state;
      listen();
    },
  };
}

test('two minutes out of sight are let pass, more are not, and once touched again work goes on', () => {
  const { away, wait, turn } = bench();
  away.worked('41');
  turn('hidden');
  wait(2 * MINUTE);
  turn('visible');
  expect(away.asks('41')).toBeUndefined();
  turn('hidden');
  wait(14 * MINUTE);
  turn('visible');
  expect(away.asks('41')).toEqual({ minutes: 14 });
  away.back('41');
  expect(away.asks('41')).toBeUndefined();
});

test('a device that slept without saying so is noticed by its clock', () => {
  const { away, wait, tick } = bench();
  away.worked('41');
  for (let i = 0; i < 40; i++) {
    wait(15_000);
    tick();
  }
  expect(away.asks('41')).toBeUndefined(); // ten minutes of looking at the step are no absence
  wait(3 * MINUTE);
  tick();
  expect(away.asks('41')).toEqual({ minutes: 3 });
});

test('a page that is opened anew in the middle asks; one on which nothing was done, or not today, does not', () => {
  const first = bench();
  expect(bench(first.keep).away.asks('41')).toBeUndefined();
  first.away.worked('41');
  expect(bench(first.keep).away.asks('41')).toEqual({ minutes: null });
  const later = keepIn(undefined);
  keepOf(later, '41').set('worked', String(Date.parse('2026-11-25T18:00:00Z')));
  expect(bench(later).away.asks('41')).toBeUndefined();
  keepOf(later, '41').set('worked', 'no time at all');
  expect(bench(later).away.asks('41')).toBeUndefined();
});

test('who did nothing yet is not asked, however long they were away', () => {
  const { away, wait, turn } = bench();
  turn('hidden');
  wait(60 * MINUTE);
  turn('visible');
  expect(away.asks('41')).toBeUndefined();
});

test('whoever listens hears of it', () => {
  const { away, wait, tick } = bench();
  let heard = 0;
  const leave = away.onChange(() => heard++);
  away.worked('41');
  wait(5 * MINUTE);
  tick();
  leave();
  away.back('41');
  expect(heard).toBe(1);
});

test('each kart is come back to by itself, and what is done after coming back goes on by itself', () => {
  const { away, wait, turn } = bench();
  away.worked('41');
  away.worked('77');
  turn('hidden');
  wait(5 * MINUTE);
  turn('visible');
  away.back('41');
  expect(away.asks('41')).toBeUndefined();
  expect(away.asks('77')).toEqual({ minutes: 5 });
  away.worked('77');
  expect(away.asks('77')).toBeUndefined();
  expect(away.asks('99')).toBeUndefined();
});
