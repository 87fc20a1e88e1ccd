/** At the track, with no network: a log is read, written, asked and sent later. */
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Kept } from '../../src/app/index.ts';
import { phoneAt, word } from './bench-phone.ts';
import { LOGS, servedWithKart } from './laps-page.ts';
import { browserPages, sent } from './pages.ts';
import type { Served } from './served.ts';

const pages = browserPages();
let served: Served;
beforeEach(async () => {
  served = await servedWithKart(pages, '21, 22, 23, 24, 25, 28');
});
// Its pages are still open, and a server that is asked to stop waits for them.
afterEach(async () => {
  await served?.kill();
  await served?.stop();
});

test('a log is imported, its laps compared, a lap predicted and a number asked with the server gone; later it is sent once', async () => {
  const page = await phoneAt(pages, `${served.url}#/laps`, 'R. Vale');
  await served.kill();
  await page.reload();
  await word(page, /^no server since/).waitFor();
  await page.locator('#logs').setInputFiles(`${LOGS}/K1_10hz.csv`);
  await page.getByRole('button', { name: 'Write 8 laps into the book' }).click();
  await page.getByRole('heading', { name: 'The parts are 6 min and 8 laps older' }).waitFor();

  await page.goto(`${served.url}#/laps/compare`);
  await page.getByText(/^The second lap was 0\.\d\d s faster than the first\.$/).waitFor();

  await page.goto(`${served.url}#/laps/predict`);
  const teeth = page.getByLabel('Teeth that were on, front/rear');
  await teeth.fill('17/23');
  await teeth.press('Enter');
  const box = page.getByRole('region', { name: 'Sprockets in the box' });
  await box.waitFor();
  expect(await box.locator('tbody tr').count()).toBe(6);

  await page.goto(`${served.url}#/numbers/rear-track`);
  await page.getByRole('button', { name: 'Try the example' }).click();
  await page.getByRole('heading', { name: 'Figures' }).waitFor();

  await served.again();
  await page.goto(`${served.url}#/device`);
  await page.getByRole('button', { name: 'Meet the server now' }).click();
  await sent(page);
  const { facts } = await served.get<{ facts: Kept[] }>('/api/karts/7/facts?after=0');
  expect(facts.map(({ fact }) => fact.kind)).toEqual(['kart filed', 'ran', 'laps']);
});
