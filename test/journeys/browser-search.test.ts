/** One search over everything, reached from every page. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe, browserPages, LAPTOP, PHONE, smallTargets } from './pages.ts';
import { type Served, startBuilt } from './served.ts';
import { heading } from './step.ts';

const pages = browserPages();
let served: Served;
beforeAll(async () => {
  served = await startBuilt();
});
afterAll(() => served?.stop());

test('a slash on a keyboard leads to the search from any page, and is typed where something is typed', async () => {
  const page = await pages.open(`${served.url}#/kart`, 'R. Vale', { viewport: LAPTOP });
  await page.keyboard.press('/');
  const field = page.getByLabel('Search everything');
  await field.waitFor();
  await page.keyboard.type('5/8');
  expect(await field.inputValue()).toBe('5/8');
});

test('whatever the kart and the book hold is found by its words and opens', async () => {
  for (const [viewport, colorScheme] of [
    [PHONE, 'light'],
    [LAPTOP, 'dark'],
  ] as const) {
    const page = await pages.open(`${served.url}#/today`, 'R. Vale', { viewport, colorScheme });
    await page.getByRole('link', { name: 'Search', exact: true }).click();
    const field = page.getByLabel('Search everything');
    const open = async (words: string, group: string, name: RegExp): Promise<void> => {
      await page.goto(`${served.url}#/search`);
      await field.fill(words);
      const section = page.locator('section', { has: page.getByRole('heading', { name: group }) });
      await section.getByRole('link', { name }).first().click();
    };
    await field.fill('hub left');
    await page.getByText(/^\d+ found$/).waitFor();
    expect(await axe(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
    await open('tie rod', 'Parts', /^tie rod left/);
    await page.getByRole('heading', { name: 'Tie rod left' }).waitFor();
    await open('pinch left', 'Joints', /^pinch bolts/);
    await page.getByRole('heading', { name: 'Rear hub left' }).waitFor();
    await open('pad thickness', 'Steps of the plan', /Pad thickness/);
    await heading(page).filter({ hasText: 'Pad thickness' }).waitFor();
    await open('premix', 'Numbers', /./);
    await page.waitForURL(/#\/numbers\/premix/);
    await open('ran', 'Sessions', /^Ran /);
    await page.waitForURL(/#\/laps\/session/);
    await open('taken off', 'Entries of the record', /rear hub left taken off/);
    await page.getByRole('heading', { name: 'Rear hub left' }).waitFor();
    await page.goto(`${served.url}#/search`);
    await field.fill('zeppelin');
    await page.getByText('Nothing is called so').waitFor();
  }
});
