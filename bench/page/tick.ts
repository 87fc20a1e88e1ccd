/** From the tap that records a step to the next step on the screen, beside one bare write that is on the disk. */
import type { Browser, Page } from 'playwright-core';
import type { Served } from '../../test/journeys/served.ts';
import type { Figure } from '../measure.ts';
import { atRest, openPhone, type Took, usable } from './browser.ts';
import { figure, middleOf } from './took.ts';

const TICKS = 9;

export async function ticks(browser: Browser, { url }: Pick<Served, 'url'>): Promise<readonly Figure[]> {
  const phone = await openPhone(browser);
  const { page } = phone;
  await page.goto(`${url}#/work`);
  await usable(page);
  await atRest(page);
  const [taken, written, painted]: [Took[], Took[], Took[]] = [[], [], []];
  for (let n = 0; n < TICKS; n++) {
    await toPlainStep(page);
    await atRest(page);
    for (const [list, work] of [
      [taken, tick],
      [written, bareWrite],
      [painted, bareWord],
    ] as const) {
      const before = await phone.cpu();
      const wall = await work(page);
      list.push({ wall, cpu: (await phone.cpu()) - before });
      await atRest(page);
    }
  }
  await phone.close();
  const [write, word] = [middleOf(written), middleOf(painted)];
  return [
    figure('one record written with strict durability and nothing else', written, undefined),
    figure('one word of the page changed and painted, and nothing else', painted, undefined),
    figure('tick to the next step', taken, 50, [{ wall: write.wall + word.wall, cpu: write.cpu + word.cpu }, 'both']),
  ];
}

/** A step that asks for nothing but the tap: the first of the list that is one. */
async function toPlainStep(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const painted = (): Promise<void> => new Promise(done => requestAnimationFrame(() => setTimeout(done)));
    const asksMore = (): boolean => document.querySelector(':not(.beneath) > .step form :is(input, textarea)') !== null;
    const hrefs = [...document.querySelectorAll<HTMLAnchorElement>('ol.steps a')].map(({ hash }) => hash);
    for (const hash of hrefs) {
      if (!asksMore()) return;
      location.hash = hash;
      await painted();
      await painted();
    }
  });
}

/** ms from the tap until another step, with its answers, is painted. */
const tick = (page: Page): Promise<number> =>
  page.evaluate(
    () =>
      new Promise<number>((done, failed) => {
        // The one that comes next lies beneath it already, out of sight.
        const card = (): Element | null => document.querySelector(':not(.beneath) > .step');
        const shown = (): string => `${card()?.getAttribute('aria-label')} ${card()?.querySelector('h1')?.textContent}`;
        const before = shown();
        const late = setTimeout(() => failed(new Error(`bench: no other step came after ${before}`)), 10_000);
        const from = performance.now();
        const watch = new MutationObserver(() => {
          if (shown() === before || card()?.querySelector('.answers .main') == null) return;
          watch.disconnect();
          clearTimeout(late);
          requestAnimationFrame(() => setTimeout(() => done(performance.now() - from)));
        });
        watch.observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
        card()?.querySelector<HTMLButtonElement>('.answers .main')?.click();
      }),
  );

/** ms until one other word is painted where the step stands. */
const bareWord = (page: Page): Promise<number> =>
  page.evaluate(
    () =>
      new Promise<number>((done, failed) => {
        const word = document.querySelector(':not(.beneath) > .step header span')?.firstChild;
        if (!(word instanceof Text))
          return failed(new Error('bench: the step must have its number in words, got none'));
        const [before, from] = [word.data, performance.now()];
        const watch = new MutationObserver(() => {
          watch.disconnect();
          requestAnimationFrame(() =>
            setTimeout(() => {
              done(performance.now() - from);
              word.data = before;
            }),
          );
        });
        watch.observe(document, { subtree: true, childList: true, characterData: true, attributes: true });
        word.data = '…';
      }),
  );

/** ms until one small record is said to be on the disk. */
const bareWrite = (page: Page): Promise<number> =>
  page.evaluate(async () => {
    const book = await new Promise<IDBDatabase>((done, failed) => {
      const opening = indexedDB.open('bench', 1);
      opening.onupgradeneeded = () => opening.result.createObjectStore('facts', { autoIncrement: true });
      opening.onsuccess = () => done(opening.result);
      opening.onerror = () => failed(opening.error);
    });
    const from = performance.now();
    await new Promise((done, failed) => {
      const writing = book.transaction('facts', 'readwrite', { durability: 'strict' });
      writing.oncomplete = done;
      writing.onabort = () => failed(writing.error);
      writing.objectStore('facts').add({ kind: 'note', text: 'one' });
    });
    const took = performance.now() - from;
    book.close();
    return took;
  });
