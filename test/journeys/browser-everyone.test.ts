/** For everyone: at 400 % zoom, without movement, by ear. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Kart } from '../../src/kart/index.ts';
import type { Plan, Step } from '../../src/prep/index.ts';
import { axeInBothThemes, browserPages, LAPTOP, PHONE } from './pages.ts';
import { goodReading, type Served, startBuilt } from './served.ts';
import { BENEATH, SHEETS, show } from './sheets.ts';

const pages = browserPages();
let served: Served;
beforeAll(async () => {
  served = await startBuilt();
});
afterAll(async () => {
  await served?.kill();
  await served?.stop();
});

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
  for (const sheet of [...Object.values(SHEETS), ...BENEATH]) {
    await show(page, served.url, sheet);
    await expect.poll(() => page.locator('main .loading').count(), { timeout: 60_000 }).toBe(0);
    const found = [...(await beyond(page)), ...(await moving(page))];
    if (found.length > 0) wrong[sheet.hash] = found;
  }
  expect(wrong).toEqual({});
  await page.evaluate(() => {
    const breach = document.createElement('p');
    breach.style.cssText = 'width: 600px; transition: left 1s';
    document.getElementById('sheet')?.append(breach);
  });
  expect([(await beyond(page)).length, (await moving(page)).length]).toEqual([1, 1]); // both looks see what is wrong
});

test('how the book stands with the server stays in sight however far a sheet is scrolled, and nothing lies over it', async () => {
  const page = await pages.open(`${served.url}#/today`, 'R. Vale', { viewport: PHONE });
  for (const sheet of Object.values(SHEETS)) {
    await show(page, served.url, sheet);
    await page.evaluate(() => window.scrollTo(0, document.documentElement.scrollHeight));
    const word = page.locator('.title-block a[href="#/device"]');
    expect(
      await word.evaluate(link => {
        const { left, top, width, height } = link.getBoundingClientRect();
        return document.elementFromPoint(left + width / 2, top + height / 2)?.closest('a') === link;
      }),
      sheet.hash,
    ).toBe(true);
  }
});

/** What can be pressed or typed in and is in sight; of a choice of one of several the keyboard stops at one. */
const markReachable = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const all = document.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary, [tabindex]');
    const some = [...all].filter(e => {
      const isOneOfSeveral = e instanceof HTMLInputElement && e.type === 'radio' && !e.checked;
      return e.tabIndex >= 0 && e.checkVisibility() && !e.matches(':disabled, [inert] *') && !isOneOfSeveral;
    });
    for (const e of some) e.dataset.toReach = '';
  });
const MOST_STOPS = 500; // a trap of the keyboard would never end

/** Whether the page has the focus, after marking what has it and is seen to have it. */
const seenAt = (page: Page): Promise<boolean> =>
  page.evaluate(() => {
    const at = document.activeElement as HTMLElement | null;
    if (at === null || at === document.body) return false;
    const { outlineStyle, outlineWidth } = getComputedStyle(at.closest('label:has(input[type=file])') ?? at);
    const drawn = outlineStyle !== 'none' && Number.parseFloat(outlineWidth) > 0;
    const around = at.closest('.file-text') !== null; // the frame of the text shows it
    if (drawn || around) delete at.dataset.toReach;
    return true;
  });

/** Once around the page with Tab: how many stops, and what was not reached or not seen to be. */
async function walk(page: Page): Promise<{ readonly stops: number; readonly missed: readonly string[] }> {
  await markReachable(page);
  await page.locator('.skip').focus();
  let stops = 0;
  for (; stops < MOST_STOPS && (await seenAt(page)); stops++) await page.keyboard.press('Tab');
  await page.keyboard.press('Tab'); // around to where it began
  await seenAt(page);
  const left = page.locator('[data-to-reach]');
  return { stops, missed: await left.evaluateAll(all => all.slice(0, 5).map(e => e.outerHTML.slice(0, 140))) };
}

test('the keyboard alone reaches everything on every sheet, and it is seen where it is', async () => {
  const page = await pages.open(`${served.url}#/today`, 'R. Vale', { viewport: LAPTOP });
  const wrong: Record<string, readonly string[]> = {};
  let all = 0;
  for (const sheet of [...Object.values(SHEETS), ...BENEATH]) {
    await show(page, served.url, sheet);
    await expect.poll(() => page.locator('main .loading').count(), { timeout: 60_000 }).toBe(0);
    const { stops, missed } = await walk(page);
    all += stops;
    if (missed.length > 0) wrong[sheet.hash] = missed;
  }
  console.log(`${all} stops of the keyboard over ${Object.keys(SHEETS).length + BENEATH.length} pages`);
  expect(wrong).toEqual({});
  await page.evaluate(() => {
    const breach = document.createElement('button');
    breach.style.outline = 'none';
    document.getElementById('sheet')?.append(breach);
  });
  expect((await walk(page)).missed).toHaveLength(1); // the walk sees what is wrong
});

test('axe finds nothing wrong while the name is asked for either', async () => {
  const page = await pages.bare(served.url);
  await page.getByRole('dialog').getByLabel('Your name').waitFor();
  expect(await axeInBothThemes(page)).toEqual([]);
});

test('by ear and by keyboard: a step has its name, its caution, field and answers in order; what was written is said, and the next step is gone to', async () => {
  const { steps } = await served.get<Plan>('/api/karts/41/plan');
  const step =
    steps.find(s => s.state === 'ready' && s.action === 'measure' && s.unit !== null && s.caution !== null) ??
    steps.find(s => s.state === 'ready' && s.action === 'measure' && s.unit !== null);
  const { key, n } = step as Step;
  const page = await pages.open(`${served.url}#/work/${encodeURIComponent(key)}`, 'R. Vale');
  const card = page.getByRole('article', { name: `Step ${n}` });
  const said = await card.ariaSnapshot();
  const order = [
    'heading',
    'textbox "What you read"',
    'combobox "Read with"',
    'button "It holds"',
    'button "It fails"',
    'button "Not done"',
  ].map(part => said.indexOf(part));
  expect(
    order.every(at => at >= 0),
    said,
  ).toBe(true);
  expect(order).toEqual(order.toSorted((a, b) => a - b));
  if (step?.caution) expect(said.indexOf('Caution.')).toBeLessThan(said.indexOf('textbox'));
  expect(
    await card
      .getByRole('button')
      .evaluateAll(all => all.filter(b => (b.getAttribute('aria-label') ?? b.textContent ?? '').trim() === '').length),
  ).toBe(0);

  // With the keyboard alone, from the heading on.
  await card.getByRole('heading').first().focus();
  const focused = () => page.evaluate(() => document.activeElement?.id || document.activeElement?.textContent || '');
  for (let n = 0; n < 12 && (await focused()) !== 'reading'; n++) await page.keyboard.press('Tab');
  expect(await focused()).toBe('reading');
  await page.keyboard.type('nonsense');
  await page.keyboard.press('Enter');
  await card.getByRole('alert').waitFor(); // read out by itself
  expect(await focused()).toBe('reading');
  await page.keyboard.press('Control+A');
  await page.keyboard.type(goodReading(step as Step, await served.get<Kart>('/api/karts/41')) ?? '1 mm');
  await page.keyboard.press('Enter');
  await page.getByRole('status').getByText(`Step ${n} is written.`).waitFor();
  await page.waitForFunction(() => document.activeElement?.tagName === 'H1');
  expect(await page.getByRole('article').getAttribute('aria-label')).not.toBe(`Step ${n}`);
  // And from there the keys go on to the answers of that step.
  await page.keyboard.press('Tab');
  expect(await page.evaluate(() => document.activeElement?.closest('article') !== null)).toBe(true);
});
