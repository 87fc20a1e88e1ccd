/** No network at all: the server is really ended, not only hidden from the page. */
import { cp, mkdtemp, readFile, rm, symlink, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Fact } from '../../src/book/index.ts';
import { phoneAt, press as pressStep, type Readings, readingsOf, word } from './bench-phone.ts';
import { axe, browserPages, PHONE, sent, smallTargets } from './pages.ts';
import { type Served, startBuilt } from './served.ts';
import { BENEATH, SHEETS, show } from './sheets.ts';
import { done, heading, readingField } from './step.ts';

const pages = browserPages();
let served: Served;
beforeEach(async () => {
  served = await startBuilt();
});
// Its pages are still open, and a server that is asked to stop waits for them.
afterEach(async () => {
  await served?.kill();
  await served?.stop();
});

const facts = async (): Promise<readonly Fact[]> =>
  (await served.get<{ facts: { fact: Fact }[] }>('/api/karts/41/facts')).facts.map(({ fact }) => fact);

/** A phone that has been here once. */
const phone = (who: string, hash = '#/work'): Promise<Page> => phoneAt(pages, `${served.url}${hash}`, who);
let readings: Readings = new Map();
const press = (page: Page, reading?: string): Promise<void> => pressStep(page, readings, reading);
async function learnReadings(): Promise<void> {
  readings = await readingsOf(served, '41');
}

describe('with the server gone', () => {
  test('the page loads, every sheet opens, steps are worked and a killed tab goes on; when it is back each fact is there once', async () => {
    await learnReadings();
    const page = await phone('R. Vale');
    const before = (await facts()).length;
    await served.kill();
    await page.reload();
    await heading(page).waitFor();
    await word(page, /no server since \d\d:\d\d$/).waitFor();
    await press(page);
    await press(page);
    await word(page, /no server since \d\d:\d\d, [2-9] to send/).waitFor();
    const where = await heading(page).textContent();
    const context = page.context();
    await page.close({ runBeforeUnload: false });

    const after = await context.newPage();
    await after.goto(served.url);
    await after.getByRole('button', { name: /I touched it/ }).click();
    await heading(after).waitFor();
    expect(await heading(after).textContent()).toBe(where);
    await press(after);
    for (const shown of [...Object.values(SHEETS), ...BENEATH]) {
      await show(after, served.url, shown);
      expect(await after.getByText('could not be fetched').count(), shown.hash).toBe(0);
    }

    await served.again();
    await sent(after);
    const now = await facts();
    expect(new Set(now.map(({ id }) => id)).size).toBe(now.length);
    expect(now.length).toBeGreaterThanOrEqual(before + 3);
    expect(now.slice(before).every(({ by }) => by === 'R. Vale')).toBe(true);
  });

  test('two tabs of one phone write at the same moment, and never take the same number', async () => {
    await learnReadings();
    const first = await phone('R. Vale');
    const second = await first.context().newPage();
    await second.goto(`${served.url}#/record`);
    await second.locator('main h1').first().waitFor();
    for (const page of [first, second]) await sent(page); // each has the book, not only how it stood
    await served.kill();
    await first.goto(`${served.url}#/record`);
    const write = async (page: Page, text: string): Promise<void> => {
      await page.getByRole('button', { name: 'A note' }).click();
      await page.getByLabel('What to remember', { exact: true }).fill(text);
      await page.getByRole('button', { name: 'Write it down' }).click();
      await page.getByText(`Written: Note: ${text}`).waitFor();
    };
    // What is being written down is remembered for all tabs: one that came to the sheet later would find it begun.
    for (const page of [first, second]) await page.getByRole('button', { name: 'A note' }).waitFor();
    for (let round = 0; round < 4; round++)
      await Promise.all([write(first, `left ${round}`), write(second, `right ${round}`)]);
    await served.again();
    await sent(first);
    await sent(second);
    const notes = (await facts()).filter(fact => fact.kind === 'note' && /^(left|right) \d/.test(fact.text));
    expect(notes.length).toBe(8);
    expect(new Set(notes.map(({ device }) => device)).size).toBe(1);
    const numbers = notes.map(({ seq }) => seq).toSorted((a, b) => a - b);
    expect(numbers).toEqual(numbers.map((_, i) => (numbers[0] ?? 0) + i));

    await second.getByRole('button', { name: /^Your name: R\. Vale/ }).click();
    await second.getByLabel('Your name', { exact: true }).fill('J. Moor');
    await second.getByRole('button', { name: 'That is me' }).click();
    await first.getByRole('button', { name: /^Your name: J\. Moor/ }).waitFor(); // and what it writes says so
    await write(first, 'from the other hand');
    await sent(first);
    expect((await facts()).at(-1)).toMatchObject({ text: 'from the other hand', by: 'J. Moor' });
  });
});

test('a new version waits until a person takes it over, never under an open step, and what was not sent is still there', async () => {
  await learnReadings();
  const page = await phone('R. Vale');
  const before = (await facts()).length;
  await served.kill();
  await press(page);
  const field = readingField(page);
  const step = `${served.url}#/work/${encodeURIComponent('measure brake pads rear/thickness')}`;
  await page.goto(step);
  await field.fill('7.5'); // half typed
  const folder = await mkdtemp(join(tmpdir(), 'kartwright-next-'));
  try {
    for (const part of ['package.json', 'dist', 'data']) await cp(part, join(folder, part), { recursive: true });
    await symlink(resolve('node_modules'), join(folder, 'node_modules'));
    const index = join(folder, 'dist/web/index.html');
    await writeFile(index, (await readFile(index, 'utf8')).replace('<title>Kartwright', '<title>Kartwright, the next'));
    const worker = join(folder, 'dist/web/sw.js');
    await writeFile(worker, (await readFile(worker, 'utf8')).replace(/(version\\":\\")\w/, '$1next'));
    await served.again(join(folder, 'dist/cli.js'));
    await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.ready;
      await registration.update();
      while (!registration.waiting) await new Promise(done => setTimeout(done, 20));
    });
    expect(await field.inputValue()).toBe('7.5');
    expect(await page.getByText('A new version of this page is here').count()).toBe(0);
    await word(page, /^all sent$/).waitFor();
    await served.kill(); // what is said from here on is on this device alone
    await page.locator('ol.steps a').first().click();
    await press(page);
    await word(page, /no server since .*, 1 to send/).waitFor();
    await page.goto(`${served.url}#/lives`); // a part that this version fetches only now
    await page.locator('main h1').first().waitFor();
    await page.getByText('A new version of this page is here').waitFor();
    expect(await page.title()).toBe('Kartwright');
    await page.getByRole('button', { name: 'Show it' }).click();
    await page.waitForFunction(() => document.title === 'Kartwright, the next');
    await word(page, /1 to send/).waitFor();
    await page.locator('main h1').first().waitFor(); // an address set while it starts is not yet looked at
    await page.goto(step);
    await page.getByRole('button', { name: /I touched it/ }).click(); // a page opened anew asks for the last one first
    expect(await field.inputValue()).toBe('7.5');
    await served.again(join(folder, 'dist/cli.js'));
    await sent(page);
    expect((await facts()).length).toBe(before + 2);
  } finally {
    await served.kill();
    await rm(folder, { recursive: true, force: true });
  }
});

test('events and what is due before each are a calendar file, made without the server as the server makes it', async () => {
  const page = await phone('R. Vale', '#/today');
  const theirs = await (await fetch(new URL('/api/karts/41/calendar', served.url))).text();
  await served.kill();
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: 'Calendar file' }).click();
  await page.getByRole('link', { name: 'Save the file' }).click();
  const download = await saved;
  expect(download.suggestedFilename()).toBe('kart-41.ics');
  const ours = await readFile(await download.path(), 'utf8');
  const undated = (text: string): string => text.replace(/^DTSTAMP.*/gm, '');
  expect(ours).toContain('BEGIN:VTODO');
  expect(undated(ours)).toBe(undated(theirs));
});

test('the sheet of this device says how the two books stand, gives the book as a file, and is fit for everyone', async () => {
  const page = await phone('R. Vale', '#/device');
  await page.getByText('The server has everything').waitFor();
  await page.getByText('opens without the server').waitFor();
  expect(await axe(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(PHONE.width);
  await page.getByRole('button', { name: 'Export the book' }).click();
  const saved = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Save the file' }).click();
  const text = await readFile(await (await saved).path(), 'utf8');
  expect(text).toBe(await (await fetch(new URL('/api/export', served.url))).text());
  await served.kill();
  await page.getByRole('button', { name: 'Meet the server now' }).click();
  await page.getByText('goes to the server by itself').waitFor();
});

test('a phone without room says so in one sentence, and what was said stays to be said again', async () => {
  await learnReadings();
  const page = await phone('R. Vale');
  const before = (await facts()).length;
  // As a full device does it (Indexed Database API 3.0, QuotaExceededError); Chromium's own limit cannot be made this small.
  const keeper = page.workers().find(one => one.url().includes('book-worker'));
  if (keeper === undefined) throw new Error('the worker that keeps the book must run, found none');
  await keeper.evaluate(() => {
    const { add } = IDBObjectStore.prototype;
    Object.assign(globalThis, { makeRoom: () => Object.assign(IDBObjectStore.prototype, { add }) });
    IDBObjectStore.prototype.add = () => {
      throw new DOMException('the quota is used up', 'QuotaExceededError');
    };
  });
  const said = await heading(page).textContent();
  const field = readingField(page);
  if ((await field.count()) > 0) await field.fill('1 mm');
  await done(page).click();
  await page.getByRole('alert').getByText('no room left').waitFor();
  expect(await heading(page).textContent()).toBe(said);
  await keeper.evaluate(() => (globalThis as unknown as { makeRoom(): void }).makeRoom());
  await press(page);
  await sent(page);
  expect((await facts()).length).toBeGreaterThan(before);
});
