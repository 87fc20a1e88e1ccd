/** For everyone: at 400 % zoom, and without movement. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { browserPages } from './pages.ts';
import { type Served, startBuilt } from './served.ts';

const pages = browserPages();
let served: Served;
beforeAll(async () => {
  served = await startBuilt();
});
afterAll(async () => {
  await served?.kill();
  await served?.stop();
});

const SHEETS = ['today', 'work', 'kart', 'track', 'record', 'fit', 'numbers', 'numbers/bolt', 'setup', 'device'].concat(
  ['devices', 'search', 'type-in', 'labels', 'laps', 'laps/compare', 'laps/predict', 'laps/helped', 'laps/season'],
  ['weak', 'lives', 'spares', 'drawing', 'start'],
);
/** 1280 CSS px at 400 % (WCAG 2.2, success criterion 1.4.10). */
const ZOOMED = { width: 320, height: 256 };

/** What lies beyond the right edge of the page and cannot be scrolled by itself. */
const beyond = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const width = document.documentElement.clientWidth;
    const scrolls = (e: Element | null): boolean =>
      e !== null && (/auto|scroll/.test(getComputedStyle(e).overflowX) || scrolls(e.parentElement));
    const unseen = (e: Element): boolean => e.closest('.unseen, .skip, .only-print') !== null;
    const over = [...document.body.querySelectorAll('*')].filter(
      e =>
        e.getBoundingClientRect().right > width + 1 &&
        e.getClientRects().length > 0 &&
        !unseen(e) &&
        !scrolls(e.parentElement) &&
        e.closest('svg') === (e.tagName === 'svg' ? e : null),
    );
    const scroll =
      document.documentElement.scrollWidth > width ? [`the page is ${document.documentElement.scrollWidth} wide`] : [];
    return [...scroll, ...over.slice(0, 4).map(e => e.outerHTML.slice(0, 160))];
  });

/** What moves by itself, or would when touched. */
const moving = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const long = (times: string): boolean => times.split(',').some(time => Number.parseFloat(time) > 0.01);
    const set = [...document.body.querySelectorAll('*')].filter(e => {
      const style = getComputedStyle(e);
      return (
        long(style.transitionDuration) ||
        (style.animationName !== 'none' && long(style.animationDuration)) ||
        style.scrollBehavior === 'smooth' ||
        /^animate/.test(e.tagName)
      );
    });
    return [...set.slice(0, 4).map(e => e.outerHTML.slice(0, 120)), ...document.getAnimations().map(String)];
  });

test('at 400 % no sheet scrolls in two directions, and nothing moves for who wants none of it', async () => {
  const page = await pages.open(`${served.url}#/today`, 'R. Vale', { viewport: ZOOMED, reducedMotion: 'reduce' });
  const wrong: Record<string, readonly string[]> = {};
  for (const sheet of SHEETS) {
    await page.goto(`${served.url}#/${sheet}`);
    await page.locator('main h1').first().waitFor();
    await page.locator('main .loading').waitFor({ state: 'detached', timeout: 60_000 });
    const found = [...(await beyond(page)), ...(await moving(page))];
    if (found.length > 0) wrong[sheet] = found;
  }
  expect(wrong).toEqual({});
});
