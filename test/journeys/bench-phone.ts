/** A phone at the bench: it has been here once, so page, book and library are on it, and a person presses what the step asks. */
import type { Page } from 'playwright-core';
import type { Kart } from '../../src/kart/index.ts';
import type { Plan } from '../../src/prep/index.ts';
import { type Device, type Pages, sent } from './pages.ts';
import { goodReading, type Served } from './served.ts';
import { done, readingField, stepCard } from './step.ts';

export type Readings = ReadonlyMap<string, string>;

/** What each step of the plan reads when it holds, asked while the server is there. */
export async function readingsOf(served: Served, kart: string): Promise<Readings> {
  const [file, { steps }] = await Promise.all([
    served.get<Kart>(`/api/karts/${kart}`),
    served.get<Plan>(`/api/karts/${kart}/plan`),
  ]);
  return new Map(steps.map(step => [step.key, goodReading(step, file) ?? '']));
}

export const word = (page: Page, text: string | RegExp) => page.locator('.title-block').getByText(text);

/** Opens the page and waits until it needs the server no more. */
export async function phoneAt(pages: Pages, url: string, who: string, device: Device = {}): Promise<Page> {
  const page = await pages.open(url, who, device);
  await sent(page);
  await page.evaluate(async () => {
    const moment = () => new Promise(done => setTimeout(done, 20));
    await navigator.serviceWorker.ready;
    while (navigator.serviceWorker.controller === null) await moment();
    const asked = <T>(request: IDBRequest<T>): Promise<T> =>
      new Promise((done, failed) => {
        request.onsuccess = () => done(request.result);
        request.onerror = () => failed(request.error);
      });
    const name = localStorage.getItem('kartwright.book') || 'kartwright';
    const db = await asked(indexedDB.open(name));
    while ((await asked(db.transaction('own').objectStore('own').get('library'))) === undefined) await moment();
    db.close();
  });
  return page;
}

/** Says that the step on the page is done, with the value given where one is asked. */
export async function press(page: Page, readings: Readings, reading?: string): Promise<void> {
  const said = await stepCard(page).evaluate(textOf);
  await fillIn(page, readings, reading);
  await done(page).click();
  await page.waitForFunction(old => {
    const step = document.querySelector(':not(.beneath) > .step');
    const [header, title] = [step?.querySelector('header'), step?.querySelector('h1')];
    return title && `${header?.textContent}${title.textContent}` !== old;
  }, said);
}

/** Types the value that the step asks for, if it does. */
export async function fillIn(page: Page, readings: Readings, reading?: string): Promise<void> {
  const field = readingField(page);
  if ((await field.count()) > 0) await field.fill(reading ?? readings.get(await stepOf(page)) ?? '1 mm');
}

/** What a step is called: a torque and its second look share the title. */
export const textOf = (step: Element): string =>
  `${step.querySelector('header')?.textContent}${step.querySelector('h1')?.textContent}`;

/** Key of the step that the page shows; asked of the page itself, for what the browser tells of its address comes later. */
export const stepOf = async (page: Page): Promise<string> =>
  decodeURIComponent((await page.evaluate(() => location.hash)).replace('#/work/', ''));
