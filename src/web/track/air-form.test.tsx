// @vitest-environment happy-dom
import { expect, test, vi } from 'vitest';
import { demoApp, snapshotOf } from '../../../test/demo.ts';
import { drawn } from '../../../test/dom.ts';
import { slowBook } from '../../../test/slow-book.ts';
import { keepIn } from '../place.ts';
import { AirNow } from './air-form.tsx';

test('air that is half typed is gone on with, and once the book has it the reading stands there, not an empty form', async () => {
  const app = await demoApp();
  const air = { kind: 'weather', celsius: 21, humidity: 0.55, pascal: 100_100, pressureIs: 'station' };
  expect(await app.record('41', [air], { by: 'A. Sample' })).toMatchObject({ kind: 'recorded' });
  const snapshot = await snapshotOf(app, '41');
  const { session, takes } = slowBook();
  const keep = keepIn(undefined);
  const form = () => <AirNow {...{ snapshot, session, keep }} track={undefined} onWritten={vi.fn()} />;
  const [page, later] = [drawn(), drawn()];
  await page.show(form());
  await page.press(/Read it again/);
  await page.type('#air-celsius', '23');
  await page.submit();
  await page.show(null); // a look at another sheet
  await later.show(form());
  expect(later.value('#air-celsius')).toBe('23');
  await takes();
  await later.show(form());
  expect(later.button(/Read it again/)).toBe('ready');
});
