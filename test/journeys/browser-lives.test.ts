/** Lives of parts on the page: which fails first, its life drawn, and two answers that change the number. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
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

describe('lives of parts on the page', () => {
  test('from what would hurt us to a part, and two answers about its kind make another number', async () => {
    const page = await pages.open(`${served.url}#/weak`, 'R. Vale');
    await page.getByRole('link', { name: 'Lives of parts' }).click();
    await page.locator('.lives a', { hasText: 'chain' }).first().click();
    await page.getByText(/^Of 100 weekends like this one with a part this old/).waitFor();
    await page.getByText('mostly our starting guess', { exact: false }).first().waitFor();
    const half = page.locator('.cell', { hasText: 'Half gone by' });
    const before = await half.textContent();
    await page.getByLabel('1 in 10 of them is gone by, hours').fill('30');
    await page.getByLabel('Half of them are gone by, hours').fill('20');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page
      .getByRole('alert')
      .getByText(/Expected 1 in 10 to be gone before half are/)
      .waitFor();
    await page.getByLabel('Half of them are gone by, hours').fill('60');
    await page.getByLabel('From what you know it').fill('three seasons');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('Written: the numbers above follow it.').waitFor();
    await page.getByText(/half gone by 60 h, 1 in 10 gone by 30 h, said by R. Vale/).waitFor();
    expect(await half.textContent()).not.toBe(before);
  });

  test('a kind nobody guessed has no number, and no drawing', async () => {
    const page = await pages.open(`${served.url}#/lives/seat`, 'R. Vale');
    await page.getByText('Not known how likely it fails.').waitFor();
    expect(await page.locator('.plate').count()).toBe(0);
    await page.getByLabel('Half of them are gone by, hours').waitFor();
  });

  test('axe finds nothing wrong, nothing is wider than the screen, and it prints', async () => {
    for (const [hash, seen] of [
      ['lives', '.lives li'],
      ['lives/rear%20sprocket', '.plate'],
    ] as const)
      for (const viewport of [PHONE, LAPTOP])
        for (const colorScheme of ['light', 'dark'] as const) {
          const page = await pages.open(`${served.url}#/${hash}`, 'R. Vale', { viewport, colorScheme });
          await page.locator(seen).first().waitFor();
          for (const summary of await page.locator('main summary').all()) await summary.click();
          expect(await axe(page)).toEqual([]);
          expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
        }
    const page = await pages.open(`${served.url}#/lives/chain`, 'R. Vale', { viewport: LAPTOP });
    await page.locator('.plate').first().waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.locator('.print-title').getByText('Life of chain').waitFor();
    expect((await page.pdf({ format: 'A4' })).subarray(0, 5).toString()).toBe('%PDF-');
  });
});
