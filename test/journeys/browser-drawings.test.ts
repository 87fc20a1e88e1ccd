/** The drawings with dimensions and the joints of the kart, in a real browser, for everybody. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe, browserPages, PHONE, smallTargets } from './pages.ts';
import { type Served, startBuilt } from './served.ts';

const pages = browserPages();
let served: Served;
beforeAll(async () => {
  served = await startBuilt();
});
afterAll(() => served?.stop());

test('the drawings lead from the kart and from a step to the dimension it asks for, and say the same in a table', async () => {
  for (const colorScheme of ['light', 'dark'] as const) {
    const page = await pages.open(`${served.url}#/kart`, 'R. Vale', { colorScheme });
    const clean = async (): Promise<void> => {
      expect(await axe(page)).toEqual([]);
      expect(await smallTargets(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width);
    };
    await page.getByRole('link', { name: 'Rear axle with its dimensions' }).click();
    const row = page.locator('.figure-table tr', { hasText: 'gap from bearing to hub, left' });
    // By hand: (1390 - 655) / 2 - 75 - 149.95 mm.
    expect(await row.locator('.value').textContent()).toContain('142.55');
    expect(await page.locator('.dimensioned text', { hasText: '142.55 ±1' }).count()).toBe(2);
    await clean();
    await page.goto(`${served.url}#/drawing/${encodeURIComponent('rear hub left/rear track')}`);
    await row.getByText('asked by the step').waitFor();
    expect(await page.locator('.dimensioned .asked').count()).toBe(1);
    const lettering = await page
      .locator('.dimensioned')
      .evaluate(svg => 36 * (svg.getBoundingClientRect().width / 1800));
    expect(lettering).toBeGreaterThanOrEqual(12);
    await page.goto(`${served.url}#/kart`);
    await page.getByRole('link', { name: /^Joints/ }).click();
    await page.getByLabel('System').selectOption('axle and hubs');
    await page.locator('.joint-table tr', { hasText: 'rear hub left' }).first().waitFor();
    await clean();
  }
});
