/** The spares box on the page: a budget, how likely the weekend is finished then, what to buy, and what lies there already. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { SparesAnswer } from '../../src/app/index.ts';
import { browserPages, LAPTOP, PHONE } from './pages.ts';
import { type Served, startBuilt } from './served.ts';

const AXE = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const pages = browserPages();
let served: Served;
beforeAll(async () => {
  served = pages.behind(await startBuilt());
});
afterAll(() => served?.stop());

async function axe(page: Page): Promise<unknown[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
    };
    return (await axe.run()).violations.map(({ id, nodes }) => `${id}: ${nodes.map(n => n.html).join(' ')}`);
  });
}
const boxFor = async (query: string) => {
  const { box } = await served.get<SparesAnswer>(`/api/karts/41/spares${query}`);
  if (!box) throw new Error('the demo must have an event ahead');
  return box;
};

describe('the spares box on the page', () => {
  test('for so much money it says what to buy and how likely the weekend is finished, as the server does', async () => {
    const box = await boxFor('?money=150');
    const page = await pages.open(`${served.url}#/weak`, 'R. Vale');
    await page.getByRole('link', { name: 'Spares box' }).click();
    await page.getByLabel('Money there is').fill('150');
    await page.getByText(`${box.money} of money`, { exact: true }).waitFor();
    expect(await page.locator('.shopping tbody tr').count()).toBe(box.buy.length);
    await page.locator('.cell', { hasText: 'With what is carried below' }).getByText(box.finish.chosen.words).waitFor();
    expect(box.buy.length).toBeGreaterThan(0);
    await page.reload();
    await page.getByText(`${box.money} of money`, { exact: true }).waitFor();
  });

  test('what is counted in the box need not be bought', async () => {
    const [first] = (await boxFor('?money=150')).buy;
    if (!first) throw new Error('there must be something to buy');
    const page = await pages.open(`${served.url}#/spares`, 'R. Vale');
    await page.getByLabel('Money there is').fill('150');
    await page.getByRole('button', { name: `Count ${first.name} in the box` }).click();
    await page.getByRole('spinbutton').fill(String(first.count));
    await page.getByRole('button', { name: 'Counted' }).click();
    await page.getByText(`${first.count} in the box`).first().waitFor();
    const after = await boxFor('?money=150');
    expect(after.buy.filter(({ name }) => name === first.name)).toEqual([]);
    expect(after.finish.chosen.chance).toBeGreaterThanOrEqual((await boxFor('?money=0')).finish.chosen.chance);
    await page.getByText(`${after.money} of money`, { exact: true }).waitFor();
  });

  test('axe finds nothing wrong, nothing is wider than the screen, and the shopping list prints', async () => {
    for (const viewport of [PHONE, LAPTOP])
      for (const colorScheme of ['light', 'dark'] as const) {
        const page = await pages.open(`${served.url}#/spares`, 'R. Vale', { viewport, colorScheme });
        await page.locator('.piles li').first().waitFor();
        for (const summary of await page.locator('main summary').all()) await summary.click();
        await page.getByText('All of these', { exact: true }).waitFor();
        expect(await axe(page)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
      }
    const page = await pages.open(`${served.url}#/spares`, 'R. Vale', { viewport: LAPTOP });
    await page.locator('.shopping').waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.locator('.print-title').getByText('Spares box').waitFor();
    expect(await page.getByLabel('Money there is').isVisible()).toBe(false);
    expect(await page.locator('.shopping').isVisible()).toBe(true);
    expect((await page.pdf({ format: 'A4' })).subarray(0, 5).toString()).toBe('%PDF-');
  });
});
