/** A measuring step on the page: what the reading shows while it is typed, and the instrument kept for the next. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Kart } from '../../src/kart/index.ts';
import type { Plan } from '../../src/prep/index.ts';
import { browserPages } from './pages.ts';
import { payloadOf, type Served, startBuilt } from './served.ts';

const KEY = 'measure rear hub left/rear track';
const pages = browserPages();
let served: Served;
beforeAll(async () => {
  served = pages.behind(await startBuilt());
});
afterAll(() => served?.stop());

test('a gap that is too small says live which way the hub moves, and the instrument is remembered', async () => {
  const kart = await served.get<Kart>('/api/karts/41');
  const { steps } = await served.get<Plan>('/api/karts/41/plan');
  const before = steps.slice(
    0,
    steps.findIndex(step => step.key === KEY),
  );
  for (const step of before.filter(one => one.state !== 'done')) {
    const by = step.action === 'second-look' ? 'C. Third' : 'A. Bench';
    const { status, body } = await served.post('/api/karts/41/facts', { payloads: [payloadOf(step, kart)], by });
    expect({ step: step.key, status, body }).toMatchObject({ status: 201 });
  }
  const page = await pages.open(`${served.url}#/work/${encodeURIComponent(KEY)}`, 'B. Other', {});
  await page.getByLabel('Read with').selectOption('tape');
  await page.getByLabel('What you read').fill('5 1/2 in');
  const shown = page.locator('output.judged');
  await expect.poll(() => shown.textContent()).toContain('Move the left hub out 1/8 in.');
  await page.getByLabel('What you read').fill('142.5; 142.6; 142.4');
  await expect.poll(() => shown.textContent()).toContain('3 readings: mean 142.5 mm');
  await page.reload();
  await expect.poll(() => page.getByLabel('Read with').inputValue()).toBe('tape');
});
