import { expect, test } from 'vitest';
import { Gather } from './gather.ts';
import { Tally } from './tally.ts';

const said = { speed: Number.NaN, heading: Number.NaN, rotation: Number.NaN, height: Number.NaN, accuracy: Number.NaN };
const fix = (time: number, more: object = {}) => ({
  line: time + 1,
  time,
  lat: 45,
  lon: 9 + time * 1e-4,
  ...said,
  ...more,
});

test('no more than so many fixes are held, and the rest is counted', () => {
  const tally = new Tally();
  const gather = new Gather(tally, 30);
  for (let n = 0; n < 50; n++) gather.take(fix(n));
  expect(gather.recording({ kind: 'no date' })?.trace.time.length).toBe(30);
  expect(tally.list()).toEqual([
    { reason: 'too many', say: expect.any(String), count: 20, lines: [31, 32, 33, 34, 35] },
  ]);
});

test('a column that one row has is there, with no number for the others', () => {
  const gather = new Gather(new Tally());
  gather.take(fix(0));
  gather.take(fix(1, { rotation: 900 }));
  const { trace, lines } = gather.recording({ kind: 'no date' }) ?? {};
  expect(trace?.rotation).toEqual(Float64Array.of(Number.NaN, 900));
  expect(trace?.speed).toBeUndefined();
  expect(trace?.lat[0]).toBeCloseTo(Math.PI / 4, 15);
  expect(lines).toEqual(Float64Array.of(1, 2));
});

test('fewer than two fixes are no recording', () => {
  const gather = new Gather(new Tally());
  gather.take(fix(0));
  expect(gather.recording({ kind: 'no date' })).toBeUndefined();
});
