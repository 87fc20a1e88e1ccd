/** The kart file as text: read while it is typed, and nothing is filed while there is an error. */
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { axe, browserPages, LAPTOP, PHONE, smallTargets } from './pages.ts';
import { type Served, startBuilt } from './served.ts';

const pages = browserPages();
let served: Served;
beforeAll(async () => {
  served = await startBuilt();
});
afterAll(async () => {
  await served?.kill(); // its pages are still open
  await served?.stop();
});

const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).click();
/** At once, as a paste: letter by letter a long text takes the browser half a minute. */
const put = (field: Locator, text: string) =>
  field.evaluate((area, value) => {
    (area as HTMLTextAreaElement).value = value;
    area.dispatchEvent(new Event('input', { bubbles: true }));
  }, text);
const change = (page: Page) => page.getByRole('region', { name: 'What the change does' });
const looksRight = async (page: Page, width: number): Promise<void> => {
  expect(await axe(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
};

test('the file is typed as text: errors stand at their line with what to do, are walked by key, and nothing is filed over them', async () => {
  for (const [viewport, colorScheme] of [
    [LAPTOP, 'dark'],
    [PHONE, 'light'],
  ] as const) {
    const page = await pages.open(`${served.url}#/file`, 'R. Vale', { viewport, colorScheme });
    const field = page.getByLabel('The file', { exact: true });
    await page.getByText('No error').waitFor();
    await looksRight(page, viewport.width);
    const whole = await field.inputValue();
    const lineOf = (text: string): number => text.slice(0, text.indexOf('xheelbase')).split('\n').length;
    const wrong = whole
      .replace('wheelbase: 1045 mm', 'xheelbase: 1045')
      .replace('hub length left: 75 mm', 'hub length left: 75');
    await field.fill(wrong);
    await page.getByText('2 errors', { exact: false }).first().waitFor();
    await page
      .getByRole('button', { name: `Line ${lineOf(wrong)}, column` })
      .first()
      .waitFor();
    expect(await page.getByRole('button', { name: /^File it/ }).count()).toBe(0);
    await looksRight(page, viewport.width);
    const caretLine = () =>
      field.evaluate(
        area =>
          (area as HTMLTextAreaElement).value.slice(0, (area as HTMLTextAreaElement).selectionStart).split('\n').length,
      );
    await field.evaluate(area => (area as HTMLTextAreaElement).setSelectionRange(0, 0));
    await field.press('F8');
    expect(await caretLine()).toBe(lineOf(wrong));
    await field.press('F8');
    expect(await caretLine()).toBeGreaterThan(lineOf(wrong));
    await field.press('Shift+F8');
    expect(await caretLine()).toBe(lineOf(wrong));
    await page.reload(); // what was typed is kept
    expect(await field.inputValue()).toBe(wrong);
    await page.getByText('2 errors', { exact: false }).first().waitFor();

    const circle = whole.replace(
      /^parts:$/m,
      'parts:\n  side box left: { behind: [side box right] }\n  side box right: { behind: [side box left] }',
    );
    const long = `kart: 1\n${'# a long line of words that says nothing at all\n'.repeat(4200)}`; // 200 kB
    for (const [text, says] of [
      ['', 'Expected a map of keys'],
      ['parts: [', 'Expected YAML'],
      [whole.replace('name: "41"', 'name: "42"'), 'Write the name as it was'],
      [circle, 'Expected a way to take it off'],
      [long, 'Expected a kart of at least one part'],
    ] as const) {
      await put(field, text);
      await page.locator('main').getByText(says, { exact: false }).first().waitFor();
      expect(await page.getByRole('button', { name: /^File it/ }).count()).toBe(0);
    }
    await field.fill(`# ${colorScheme}\n${whole}`);
    await change(page).getByText('The kart stays the same').waitFor();
    await press(page, 'Leave all changes');
    expect(await field.inputValue()).toBe(whole);
  }
});
