/** What goes wrong between a phone and its server while both run: the person is told in a sentence, and each fact is there once. */
import { cp, rm } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import type { Fact } from '../../src/book/index.ts';
import { phoneAt, word } from './bench-phone.ts';
import { axe, browserPages, sent } from './pages.ts';
import { type Served, startBuilt } from './served.ts';

const pages = browserPages();
let served: Served;
// Its pages are still open, and a server that is asked to stop waits for them.
afterEach(async () => {
  await served?.kill();
  await served?.stop();
});

const notes = async (): Promise<readonly string[]> =>
  (await served.get<{ facts: { fact: Fact }[] }>('/api/karts/41/facts')).facts.flatMap(({ fact }) =>
    fact.kind === 'note' ? [fact.text] : [],
  );

async function note(page: Page, text: string): Promise<void> {
  await page.goto(`${served.url}#/record`);
  await page.getByRole('button', { name: 'A note' }).click();
  await page.getByLabel('What to remember', { exact: true }).fill(text);
  await page.getByRole('button', { name: 'Write it down' }).click();
  await page.getByText(`Written: Note: ${text}`).waitFor();
}

test('a server that was restored from an older backup gets what it lost, once, and the person reads so', async () => {
  served = await startBuilt();
  const page = await phoneAt(pages, `${served.url}#/today`, 'R. Vale');
  await served.kill();
  const backup = `${served.folder}-backup`;
  await cp(served.folder, backup, { recursive: true });
  try {
    await served.again();
    await note(page, 'after the backup');
    await page.reload(); // a line that was cut is tried again by and by; nobody waits for that here
    await sent(page);
    expect(await notes()).toContain('after the backup');
    await served.kill();
    await rm(served.folder, { recursive: true });
    await cp(backup, served.folder, { recursive: true });
    await served.again();
    expect(await notes()).not.toContain('after the backup');
    await page.goto(`${served.url}#/device`);
    await page.getByRole('button', { name: 'Meet the server now' }).click();
    await page.getByText('The server had lost 1 fact that it held before').waitFor();
    expect(await axe(page)).toEqual([]);
    await page.goto(`${served.url}#/work`); // where no sentence comes between a thumb and the step
    await page.locator('.title-block').getByText('server was set back').click();
    await expect.poll(async () => (await notes()).includes('after the backup')).toBe(true);
    expect((await notes()).filter(text => text === 'after the backup').length).toBe(1);
    await page.getByRole('button', { name: 'I have read it' }).click();
    await page.getByText('The server had lost').waitFor({ state: 'detached' });
    await sent(page);
  } finally {
    await rm(backup, { recursive: true, force: true });
  }
});

test.each([
  ['ahead of', -1],
  ['behind', 1],
] as const)(
  'a phone whose clock is a day %s the server says so, and what it writes is there once',
  async (how, days) => {
    served = await startBuilt(['start'], 'dist/cli.js', { NODE_OPTIONS: `--import ${clockOff(days)}` });
    const page = await pages.open(`${served.url}#/device`, 'R. Vale');
    await word(page, 'check the clock').waitFor();
    await page.getByText(new RegExp(`^ ?The clock of this device is .* ${how} the server's`)).waitFor();
    expect(await axe(page)).toEqual([]);
    await note(page, 'by a wrong clock');
    await expect.poll(notes, { timeout: 20_000 }).toContain('by a wrong clock');
    expect((await notes()).filter(text => text === 'by a wrong clock').length).toBe(1);
  },
);

/** Put before the server's program: its clock is so many days off, and so is the time it answers with. */
const clockOff = (days: number): string =>
  `data:text/javascript,${encodeURIComponent(`
import { ServerResponse } from 'node:http';
const Right = Date;
const now = () => Right.now() + ${days} * 86_400_000;
globalThis.Date = class extends Right {
  constructor(...of) { if (of.length === 0) super(now()); else super(...of); }
  static now() { return now(); }
};
const { writeHead } = ServerResponse.prototype;
ServerResponse.prototype.writeHead = function (...said) {
  this.setHeader('date', new Date().toUTCString());
  return writeHead.apply(this, said);
};`)}`;
