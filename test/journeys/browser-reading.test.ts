/** A measuring step on the page: what the reading shows while it is typed, and the instrument kept for the next. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Kart } from '../../src/kart/index.ts';
import type { Plan } from '../../src/prep/index.ts';
import { browserPages, LAPTOP } from './pages.ts';
import { payloadOf, type Served, startBuilt } from './served.ts';
import { readingField, stepCard } from './step.ts';

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
  await readingField(page).fill('5 1/2 in');
  const shown = stepCard(page).locator('output.judged');
  await expect.poll(() => shown.textContent()).toContain('Move the left hub out 1/8 in.');
  await readingField(page).fill('142.5; 142.6; 142.4');
  await expect.poll(() => shown.textContent()).toContain('3 readings: mean 142.5 mm');
  await page.reload();
  await expect.poll(() => page.getByLabel('Read with').inputValue()).toBe('tape');
});

test('sizes, pressures and the clock are written as the person chose, in the step, on the keypad, at the track and on paper', async () => {
  const { steps } = await served.get<Plan>('/api/karts/41/plan');
  expect(steps.find(step => step.key === KEY)?.state).toBe('ready');
  const page = await pages.open(`${served.url}#/device`, 'B. Other', { viewport: LAPTOP });
  await page.getByLabel('Sizes of parts').selectOption('in');
  await page.getByLabel('Pressure of tyres and fluids').selectOption('psi');
  await page.getByLabel('The time of day').selectOption('2:05 pm');
  await page.reload(); // it is kept
  await expect.poll(() => page.getByLabel('Sizes of parts').inputValue()).toBe('in');
  await page.goto(`${served.url}#/work/${encodeURIComponent(KEY)}`);
  const step = stepCard(page);
  await expect.poll(() => step.locator('dl.target').first().textContent()).toMatch(/\d in/);
  await step.getByText(/^Given as .*mm/).waitFor();
  const inches = step.getByRole('group', { name: 'Unit' }).getByRole('button').first();
  expect(await inches.textContent()).toBe('in');
  expect(await inches.getAttribute('aria-pressed')).toBe('true');
  await readingField(page).fill('142.5 mm');
  await expect.poll(() => stepCard(page).locator('output.written').textContent()).toBe('Written: 142.5 mm');
  await step.getByRole('button', { name: 'It holds' }).click();
  await page.getByText('5.61 in (typed 142.5 mm)').first().waitFor();
  await page.goto(`${served.url}#/record`);
  await page
    .getByText(/rear track: pass, 5\.61 in \(typed 142\.5 mm\)/)
    .first()
    .waitFor();
  await page
    .getByText(/\d:\d\d.[ap]m/)
    .first()
    .waitFor();
  await page.goto(`${served.url}#/work`);
  await page.emulateMedia({ media: 'print' });
  const printed = page.locator('.only-print td', { hasText: /\d in.*given as .*mm/ });
  await expect.poll(() => printed.count()).toBeGreaterThan(0);
  await page.emulateMedia({ media: 'screen' });
  await page.goto(`${served.url}#/track`);
  await expect.poll(() => page.locator('main').textContent()).toMatch(/\bpsi\b/);
});
