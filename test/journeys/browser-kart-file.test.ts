/** A kart built by tapping, and its file as text: what a change does is said before it is filed, and filing it is undone. */
import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Fact } from '../../src/book/index.ts';
import type { Kart } from '../../src/kart/index.ts';
import { axe, browserPages, LAPTOP, PHONE, sent, smallTargets } from './pages.ts';
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
const kart = (): Promise<Kart> => served.get<Kart>('/api/karts/41');
const newest = async (): Promise<Fact | undefined> =>
  (await served.get<{ facts: { fact: Fact }[] }>('/api/karts/41/facts')).facts.at(-1)?.fact;

test('parts, second retentions and dimensions are tapped in and out; what it does is said, filed and undone', async () => {
  const page = await pages.open(`${served.url}#/kart`, 'R. Vale', { viewport: PHONE });
  await page.getByRole('link', { name: /^Build:/ }).click();
  await page.getByLabel('Find a part').fill('brake push rod');
  await press(page, 'Take brake push rod out');
  await change(page).getByText('Safety: brake push rod goes out. It carries: stop.').waitFor();
  await change(page).getByText('“stop” has to do without brake push rod.').waitFor();
  await press(page, 'Put brake push rod in');
  await change(page)
    .getByText('nothing is changed', { exact: false })
    .or(change(page).getByText('The kart stays the same'))
    .waitFor();

  const row = page.locator('.build-parts > li', { hasText: 'Brake push rod' });
  await row.getByText('How it is held').click();
  await press(page, 'Second out: clevis pins');
  await change(page).getByText('brake push rod, clevis pins: the second retention goes').waitFor();
  await looksRight(page, PHONE.width);

  await page.getByLabel('Find a part').fill('');
  await page.getByText('Add a part', { exact: true }).click();
  await press(page, 'Add it');
  await page.getByRole('alert').getByText('Give it a name').waitFor();
  await page.getByLabel('Name', { exact: true }).fill('second chain guard');
  await press(page, 'Add it');
  await page.getByRole('alert').getByText('Choose what kind of part').waitFor();
  await page.getByLabel('Kind', { exact: true }).selectOption('chain guard');
  await press(page, 'Add it');
  await page.locator('summary', { hasText: /^Dimensions/ }).click();
  await page.getByLabel('Wheelbase').fill('about a metre');
  await page.getByLabel('Wheelbase').press('Enter');
  await page.getByText('Expected length with its unit').first().waitFor();
  expect(await page.getByRole('button', { name: /^File it/ }).count()).toBe(0);
  await press(page, 'Undo the last tap');
  await page.getByLabel('Wheelbase').fill('1047 mm');
  await page.getByLabel('Wheelbase').press('Enter');
  await change(page).getByText('wheelbase: 1045 mm before, 1047 mm after.').waitFor();
  await change(page).getByText('In: second chain guard').waitFor();
  await page.reload(); // what was tapped is kept
  await press(page, 'File it: so it is on the kart');
  await change(page).getByText('Filed: the kart goes by this file').waitFor();
  await sent(page);
  const now = await kart();
  expect(now.dimensions.wheelbase?.text).toBe('1047 mm');
  expect(now.parts).toHaveProperty('second chain guard');
  expect(now.joints['brake push rod/clevis pins']).not.toHaveProperty('second');
  const filed = await newest();
  expect(filed?.kind === 'kart filed' && filed.text).toContain('# Kart 41: invented');
  await press(page, 'Undo: back to the file before');
  await change(page).getByText('nothing is changed').waitFor();
  await sent(page);
  expect((await kart()).dimensions.wheelbase?.text).toBe('1045 mm');
});

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
