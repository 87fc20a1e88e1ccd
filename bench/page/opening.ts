/** How soon the first step can be ticked: on a device that has nothing, and on one that was here before. */
import type { Browser, Page } from 'playwright-core';
import type { Served } from '../../test/journeys/served.ts';
import type { Figure } from '../measure.ts';
import { atRest, openPhone, type Phone, type Took, usable } from './browser.ts';
import { figure, middleOf } from './took.ts';

const RUNS = 5;

export async function openings(browser: Browser, { url }: Pick<Served, 'url'>): Promise<readonly Figure[]> {
  const [empty, cold, again, read]: [Took[], Took[], Took[], Took[]] = [[], [], [], []];
  for (let run = 0; run < RUNS; run++) {
    const phone = await openPhone(browser);
    const { page } = phone;
    await page.goto('about:blank');
    empty.push(await loaded(phone, () => page.goto(`${url}api/book/ends`), bareLoad));
    await phone.close();

    const other = await openPhone(browser);
    cold.push(await loaded(other, () => other.page.goto(`${url}#/work`), usable));
    await atRest(other.page);
    await reopened(other); // the browser keeps compiled what it has run twice
    again.push(await reopened(other));
    read.push(await bareRead(other));
    await other.close();
  }
  const emptyOnes = middleOf(empty);
  const readOnes = middleOf(read);
  const facts = 'every fact of the same book read and nothing else';
  return [
    figure('an answer of the same server shown as text', empty, undefined),
    figure('bench page with nothing on the device, until its step can be ticked', cold, 1500, [emptyOnes, 'that text']),
    figure(`${facts}`, read, undefined),
    figure('bench page from its service worker', again, 500, [readOnes, 'that reading']),
  ];
}

/** Loads the page anew on a device that has it; what came before has come to rest. */
export async function reopened(phone: Phone): Promise<Took> {
  const { page } = phone;
  const took = await loaded(phone, () => page.reload({ waitUntil: 'commit' }), usable);
  await atRest(page);
  return took;
}

async function loaded(phone: Phone, go: () => Promise<unknown>, when: (page: Page) => Promise<number>): Promise<Took> {
  const before = await phone.cpu();
  await go();
  const wall = await when(phone.page);
  const after = await phone.cpu();
  return { wall, cpu: after < before ? after : after - before }; // counted anew where the browser took another process
}

const bareLoad = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    await new Promise(done => requestAnimationFrame(() => setTimeout(done)));
    return performance.now();
  });

/** The least that a page which keeps its book must do. */
export async function bareRead(phone: Phone): Promise<Took> {
  const before = await phone.cpu();
  const wall = await phone.page.evaluate(async () => {
    const from = performance.now();
    const asked = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((done, failed) => {
        request.onsuccess = () => done(request.result);
        request.onerror = () => failed(request.error);
      });
    const name = localStorage.getItem('kartwright.book') ?? 'kartwright';
    const book = await asked(indexedDB.open(name));
    await asked(book.transaction('facts').objectStore('facts').getAll());
    book.close();
    return performance.now() - from;
  });
  return { wall, cpu: (await phone.cpu()) - before };
}
