/** Logs put down on the page of one invented kart: read, their track drawn and gate set, and what a person sees of it. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { content, drop, LOGS, log, rows, servedWithKart } from './laps-page.ts';
import { axe, browserPages, LAPTOP, PHONE, smallTargets } from './pages.ts';
import type { Served } from './served.ts';

const pages = browserPages();
let served: Served;
beforeAll(async () => {
  served = await servedWithKart(pages, '21, 22, 23, 24, 25, 28');
});
afterAll(() => served?.stop());

const open = (device = {}) => pages.open(`${served.url}#/laps`, 'R. Vale', device);

describe('a log dropped on the page', () => {
  test('shows its laps by the gate that is proposed; one that is no log says what to do, and the next is read', async () => {
    const page = await open();
    await drop(page, [{ name: 'page.csv', content: '<!doctype html><html></html>' }, await content('K1_10hz.csv')]);
    await log(page, 'page.csv').getByText('got a web page').waitFor();
    await rows(page).nth(7).waitFor();
    expect(await rows(page).count()).toBe(8);
    await log(page, 'K1_10hz.csv').getByText('Nothing of the file was passed over.').waitFor();
    // Another sheet, and back: what lies on the table is still there.
    await page.getByRole('link', { name: 'Today' }).click();
    await page.getByRole('link', { name: /^Laps: what it did/ }).click();
    await rows(page).nth(7).waitFor();
    expect(await rows(page).count()).toBe(8);
  });

  test('says what was passed over, counted and named', async () => {
    const page = await open();
    await drop(page, [await content('edge_midnight_damage.nmea')]);
    await rows(page).first().waitFor();
    await page.getByText('Passed over').click();
    await page.getByText(/sentences whose checksum is wrong/).waitFor();
    await page.getByText('hole inside', { exact: false }).first().waitFor();
  });

  test('whose columns are not clear asks which is which, once for its header', async () => {
    const page = await open();
    const { content: text } = await content('K1_05hz.csv');
    const unclear = text.replace(/^time_s/, 'moment');
    await drop(page, [{ name: 'a.csv', content: unclear }]);
    expect(await page.getByRole('button', { name: /^Still to choose: time/ }).isDisabled()).toBe(true);
    await page.getByLabel('Time', { exact: true }).selectOption('moment');
    await page.getByLabel('Time: unit').selectOption('s');
    expect(await axe(page)).toEqual([]);
    await page.getByRole('button', { name: 'Read it so' }).click();
    await rows(page).nth(7).waitFor();
    await drop(page, [{ name: 'b.csv', content: unclear }]);
    await page.getByText('This very file lies on the table already, as a.csv.').waitFor();
  });

  test('that takes long shows how far it is, and is gone when cancelled', async () => {
    const page = await open();
    const { content: text } = await content('K1_25hz.csv');
    const [header, ...lines] = text.trimEnd().split('\n');
    // Made long inside the page: 8,000 fixes said 60 times over are read and passed over.
    await page.evaluate(
      ([first = '', body = '']) => {
        const data = new DataTransfer();
        data.items.add(new File([`${first}\n`, ...Array.from({ length: 60 }, () => `${body}\n`)], 'long.csv'));
        document
          .querySelector('.put-down')
          ?.dispatchEvent(new DragEvent('drop', { dataTransfer: data, bubbles: true, cancelable: true }));
      },
      [header, lines.join('\n')],
    );
    await page.getByRole('progressbar').waitFor();
    await page.getByRole('button', { name: 'Cancel long.csv' }).click();
    await log(page, 'long.csv').waitFor({ state: 'detached' });
    expect(await page.locator('.log').count()).toBe(0);
  });
});

describe('the gate', () => {
  test('is moved by large buttons and by taps, splits the lap into sectors, and the laps follow', async () => {
    const page = await open();
    await page.locator('#logs').setInputFiles(`${LOGS}/K1_10hz.csv`);
    await rows(page).nth(7).waitFor();
    const out = page.locator('.log .lap-table tr.soft').first();
    const before = await out.textContent();
    await page.getByText('Move it, add sectors').click();
    await page.getByRole('button', { name: '10 m ▸ on' }).press('Enter');
    await expect.poll(() => out.textContent()).not.toBe(before);
    await page.getByRole('button', { name: 'Add a sector' }).click();
    await page.getByRole('columnheader', { name: 'S2' }).waitFor();
    await page.getByText('Best sectors together').waitFor();
    // One tap on the map puts the chosen gate across the track there.
    await page.getByRole('button', { name: 'Start and finish' }).click();
    await page.getByRole('button', { name: 'As proposed' }).click();
    await expect.poll(() => out.textContent()).toBe(before);
    await page.getByRole('button', { name: 'Tap its place' }).click();
    const map = page.locator('.track-map');
    const box = await map.boundingBox();
    await map.click({ position: { x: (box?.width ?? 0) * 0.45, y: (box?.height ?? 0) * 0.9 } });
    await expect.poll(() => out.textContent()).not.toBe(before);
    expect(await rows(page).count()).toBeGreaterThanOrEqual(7);
  });

  test('a lap that met traffic does not count, and is no best', async () => {
    const page = await open();
    await page.getByLabel('Choose logs').setInputFiles(`${LOGS}/K1_10hz.csv`);
    await page.getByText('Put down: K1_10hz.csv').waitFor();
    await page.getByText('best, lap 6').waitFor();
    await page.getByLabel('Lap 6 counts').uncheck();
    await page.getByText(/best, lap [^6]/).waitFor();
    await page.getByText('Does not count').waitFor();
  });
});

test('axe finds nothing wrong, nothing is wider than the screen, and no target is small', async () => {
  for (const viewport of [PHONE, LAPTOP])
    for (const colorScheme of ['light', 'dark'] as const) {
      const page = await open({ viewport, colorScheme });
      await page.locator('#logs').setInputFiles([`${LOGS}/K1_10hz.csv`, `${LOGS}/edge_midnight_damage.nmea`]);
      await page.locator('.log .lap-table').nth(1).waitFor();
      await page.locator('main').evaluate(main => {
        for (const details of main.querySelectorAll('details')) details.open = true;
      });
      await page.getByRole('button', { name: 'Add a sector' }).first().click();
      await page.getByText('Best sectors together').first().waitFor();
      expect(await axe(page)).toEqual([]);
      expect(await smallTargets(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
    }
});
