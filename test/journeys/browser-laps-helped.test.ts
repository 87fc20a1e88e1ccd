/** Whether a change helped, before and after the test, in a real browser. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { content, drop, rows, servedWithKart, testDay } from './laps-page.ts';
import { axe, browserPages, LAPTOP, PHONE, smallTargets } from './pages.ts';
import type { Served } from './served.ts';

const pages = browserPages();
let served: Served;
beforeAll(async () => {
  served = await servedWithKart(pages, '23, 24');
});
afterAll(() => served?.stop());

describe('did the change help', () => {
  const answer = (page: Page) => page.getByRole('region', { name: 'Answer' });
  const helped = (device = {}) => pages.open(`${served.url}#/laps/helped`, 'R. Vale', device);
  beforeAll(async () => {
    await testDay(served, {
      day: '2026-05-02',
      setting: 'rear track',
      values: ['1390 mm', '1400 mm'],
      effect: 0.12,
      order: 'ABBA',
    });
    await testDay(served, {
      day: '2026-05-09',
      setting: 'rear sprocket',
      values: ['23 teeth', '24 teeth'],
      effect: 0,
      order: 'ABBAABBA',
    });
  });

  test('23 or 24 teeth: level; the wider rear cost 0.11 ± 0.10 s a lap, and a tick otherwise is another answer', async () => {
    const page = await helped();
    const day = page.getByLabel('Which day');
    await day.selectOption({ label: '9 May 2026, Hollow Lane, 8 runs' });
    await page.getByLabel('Too small to matter').fill('0.10');
    await answer(page)
      .getByText(/rear sprocket 24 teeth makes no practical difference: [−0.]+\d+ ± 0\.0\d s a lap\./)
      .first()
      .waitFor();
    await day.selectOption({ label: '2 May 2026, Hollow Lane, 4 runs' });
    const words = await answer(page).locator('.verdict-words').textContent();
    const [, cost = '', within = ''] = /rear track 1400 mm cost (\S+) ± (\S+) s a lap\./.exec(words ?? '') ?? [];
    expect(Math.abs(Number(cost) - 0.12)).toBeLessThan(Number(within));
    expect(Number(within)).toBeLessThan(0.15);
    await answer(page)
      .getByText(/shows an effect of 0\.\d\d s 4 times of 5/)
      .waitFor();

    // One run with, one without, as if the record were behind: then nobody can tell.
    await page.getByLabel('rear track 1400 mm in run 2').uncheck();
    await page.getByLabel('rear track 1400 mm in run 3').uncheck();
    await answer(page).getByText('Cannot tell.').waitFor();
    await page.getByLabel('rear track 1400 mm in run 4').check();
    await answer(page)
      .getByText(/Cannot separate rear track 1400 mm from the track/)
      .waitFor();
  });

  test('before a test it says how many runs in which order; the page is read by everybody, and prints', async () => {
    for (const viewport of [PHONE, LAPTOP])
      for (const colorScheme of ['light', 'dark'] as const) {
        const page = await helped({ viewport, colorScheme });
        const before = page.getByRole('region', { name: 'Before a test' });
        await before.getByLabel('An effect worth finding').fill('0.25');
        await before.getByText(/^A-B.*laps that count each run: \d+ laps in all/).waitFor();
        await before.getByLabel('An effect worth finding').fill('0.001');
        await before.getByText('No test of one day').waitFor();
        expect(await axe(page)).toEqual([]);
        expect(await smallTargets(page)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
      }
    const page = await helped({ viewport: LAPTOP });
    await page.emulateMedia({ media: 'print' });
    await page.locator('.print-title').getByText('Did it help?').waitFor();
    expect(await page.getByLabel('Which day').isVisible()).toBe(false);
    expect((await page.pdf({ format: 'A4' })).subarray(0, 5).toString()).toBe('%PDF-');
  });
});

describe('from a log dropped on the page', () => {
  test('to hours on the parts, to 23 or 24 teeth: level, and to what the wider rear cost', async () => {
    const own = await servedWithKart(pages, '19, 23, 24, 28');
    try {
      await testDay(own, {
        day: '2026-05-02',
        setting: 'rear track',
        values: ['1390 mm', '1400 mm'],
        effect: 0.12,
        order: 'ABBA',
        seed: 5,
      });
      const page = await pages.open(`${own.url}#/laps`, 'R. Vale');
      await drop(page, [await content('K1_10hz.csv')]);
      await rows(page).nth(7).waitFor();
      await page.getByRole('combobox', { name: 'Track' }).fill('Hollow Lane');
      await page.getByRole('button', { name: 'Write 8 laps into the book' }).click();
      await page.getByRole('heading', { name: 'The parts are 6 min and 8 laps older' }).waitFor();
      await page.getByText('Hours of each part').click();
      await page.locator('tr', { hasText: 'brake pedal' }).first().getByText('34 min').waitFor();

      await page.getByRole('link', { name: 'Predict' }).click();
      await page.getByText('23 or 24 teeth: level').waitFor();
      await page.getByRole('link', { name: 'Did it help?' }).click();
      await page.getByText('rear track 1400 mm cost 0.12 ± 0.09 s a lap.').first().waitFor();
    } finally {
      await own.stop();
    }
  });
});
