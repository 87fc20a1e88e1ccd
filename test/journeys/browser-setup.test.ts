import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { SetupSheet } from '../../src/prep/index.ts';
import { browserPages, LAPTOP, PHONE } from './pages.ts';
import { type Served, startBuilt } from './served.ts';

const AXE = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

const pages = browserPages();
let served: Served;
beforeAll(async () => {
  served = pages.behind(await startBuilt());
});
afterAll(() => served?.stop());

const sheetOf = (query = ''): Promise<SetupSheet> => served.get(`/api/karts/41/setup${query}`);
const row = (page: Page, name: string) => page.locator('.settings tr', { has: page.getByText(name, { exact: true }) });
const change = (page: Page, name: string) => page.locator('.changes li', { hasText: new RegExp(`^${name}`) });

async function axe(page: Page): Promise<unknown[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
    };
    return (await axe.run()).violations.map(({ id, nodes }) => `${id}: ${nodes.map(n => n.html).join(' ')}`);
  });
}

describe('the set-up sheet on the page', () => {
  test('a change written on the record stands on the sheet with its difference, what is said of it and who said it', async () => {
    const page = await pages.open(`${served.url}#/kart`, 'R. Vale');
    await page.getByRole('link', { name: /^Set-up/ }).click();
    await row(page, 'caster').getByText('18°').waitFor();
    expect(await change(page, 'caster').count()).toBe(0);
    await page.getByRole('button', { name: 'Write a change' }).click();
    await page.getByLabel('What', { exact: true }).fill('caster');
    await page.getByLabel('To what', { exact: true }).fill('16°');
    await page.getByLabel('Why', { exact: true }).fill('front bites too hard');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText(/Written: Set-up: caster 16°/).waitFor();
    await page.goto(`${served.url}#/setup`);
    await row(page, 'caster').getByText('16°').waitFor();
    expect(await row(page, 'caster').textContent()).toContain('R. Vale');
    expect(await change(page, 'caster').textContent()).toMatch(/18°\s*→\s*16°[\s\S]*−2/);
    const { hints } = await sheetOf();
    const said = hints.find(({ change }) => change === 'caster less');
    const hint = page.locator('.said-list li', { has: page.getByRole('heading', { name: 'caster less' }) });
    await hint.getByText(said?.source ?? 'no source', { exact: true }).waitFor();
    await hint.getByText(said?.disagreement ?? 'no disagreement', { exact: true }).waitFor();
    const showed = page.getByRole('region', { name: /What this kart showed/ });
    await showed.locator('li', { hasText: 'caster 18° → 16°' }).getByText('nothing ran after it').waitFor();
  });

  test('it is held against a session or a day, answers as the server does, and keeps the choice over a reload', async () => {
    const { sessions } = await sheetOf();
    const heat = sessions.findLast(({ label }) => label.endsWith('Heat 1'));
    const page = await pages.open(`${served.url}#/setup`, 'R. Vale');
    await page.getByLabel('Hold it against').selectOption(heat?.fact ?? '');
    await page.getByText(`Against ${heat?.label}`).waitFor();
    const shown = async () =>
      (await page.locator('.changes li > div').allInnerTexts()).map(t => t.split('\n')[0]?.toLowerCase());
    const { differences } = await sheetOf(`?against=${encodeURIComponent(heat?.at ?? '')}`);
    expect(differences.length).toBeGreaterThan(0);
    expect(await shown()).toEqual(differences.map(({ name }) => name.toLowerCase()));
    await page.reload();
    await page.getByText(`Against ${heat?.label}`).waitFor();
    await page.getByLabel('Hold it against').selectOption({ label: 'a day …' });
    await page.getByText('Nothing differs.').waitFor();
    await page.getByLabel('As it stood at the end of').fill(heat?.at.slice(0, 10) ?? '');
    await page.getByText(/Against the evening of/).waitFor();
    await change(page, 'caster').waitFor();
  });

  test('axe finds nothing wrong, nothing is wider than the screen, and it prints with its title block', async () => {
    for (const viewport of [PHONE, LAPTOP])
      for (const colorScheme of ['light', 'dark'] as const) {
        const page = await pages.open(`${served.url}#/setup`, 'R. Vale', { viewport, colorScheme });
        await page.getByRole('heading', { name: 'caster less' }).waitFor();
        expect(await axe(page)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
        const shots = process.env.SETUP_PICTURES;
        if (shots)
          await page.screenshot({ path: `${shots}/setup-${viewport.width}-${colorScheme}.png`, fullPage: true });
      }
    const page = await pages.open(`${served.url}#/setup`, 'R. Vale', { viewport: LAPTOP });
    await page.getByRole('heading', { name: 'caster less' }).waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.locator('.print-title').getByText('Set-up sheet').waitFor();
    expect(await page.getByLabel('Hold it against').isVisible()).toBe(false);
    expect(await row(page, 'caster').isVisible()).toBe(true);
    for (const format of ['A4', 'Letter']) {
      const pdf = await page.pdf({ format, preferCSSPageSize: false });
      expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    }
    const shots = process.env.SETUP_PICTURES;
    if (shots) await page.screenshot({ path: `${shots}/setup-print.png`, fullPage: true });
  });
});
