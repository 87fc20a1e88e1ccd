/** Pages of a real browser, each a device of its own, and everything that they complained of. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { chromiumFlags, ensureChromium } from '../../scripts/chromium.mjs';
import type { Served } from './served.ts';

export const PHONE = { width: 390, height: 844 };
export const LAPTOP = { width: 1280, height: 800 };
export type Device = {
  readonly viewport?: typeof PHONE;
  readonly colorScheme?: 'light' | 'dark';
  readonly extraHTTPHeaders?: Record<string, string>;
  readonly hasTouch?: boolean;
  readonly reducedMotion?: 'reduce';
};

export type Pages = {
  /** A page that is already named. */
  open(url: string, who: string, device?: Device): Promise<Page>;
  /** A page as it comes, nobody named yet. */
  bare(url: string, device?: Device): Promise<Page>;
  /** The same server, asked only when it has everything that the open pages wrote. */
  behind(served: Served): Served;
};

/** All that was written on this page is at the server. */
export const sent = (page: Page): Promise<void> =>
  page.locator('.title-block').getByText('all sent').waitFor({ timeout: 20_000 });

/** Starts a browser for this file's tests. */
export function browserPages(): Pages {
  let browser: Browser;
  const contexts: BrowserContext[] = [];
  const faults: string[] = [];
  beforeAll(async () => {
    browser = await chromium.launch({ executablePath: await ensureChromium(), args: [...chromiumFlags] });
  });
  afterEach(async () => {
    for (const context of contexts.splice(0)) await context.close();
    expect(faults.splice(0)).toEqual([]); // nothing the page complained of, refused scripts and styles included
  });
  afterAll(() => browser?.close());
  const allSent = async (): Promise<void> => {
    for (const page of contexts.flatMap(context => context.pages())) if (page.url() !== 'about:blank') await sent(page);
  };
  const bare = async (url: string, device: Device = {}): Promise<Page> => {
    const context = await browser.newContext({ viewport: PHONE, locale: 'en-GB', ...device });
    contexts.push(context);
    const page = await context.newPage();
    page.on('pageerror', error => faults.push(error.message));
    page.on('console', message => {
      // A refused answer is shown on the page; the browser notes the status of each as well.
      if (message.type() === 'error' && !message.text().startsWith('Failed to load resource'))
        faults.push(message.text());
    });
    await page.goto(url);
    return page;
  };
  return {
    behind: served => ({
      ...served,
      async get(path) {
        await allSent();
        return served.get(path);
      },
      async post(path, body) {
        await allSent();
        return served.post(path, body);
      },
    }),
    bare,
    async open(url, who, device) {
      const page = await bare(url, device);
      await page.getByRole('dialog').getByLabel('Your name').fill(who);
      await page.getByRole('button', { name: 'That is me' }).click();
      await page.locator('main h1').first().waitFor();
      return page;
    },
  };
}

const AXE = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

/** What axe finds wrong, each with the element; WCAG 2.2's size of targets is off in it unless asked for. */
export async function axe(page: Page): Promise<unknown[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(how: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
    };
    // Rows that are laid out only when they are scrolled to lie over what follows until then.
    const later = [...document.querySelectorAll<HTMLElement>('main *')].filter(
      one => getComputedStyle(one).contentVisibility === 'auto',
    );
    for (const one of later) one.style.contentVisibility = 'visible';
    // A bar at the edge of the window lies over whatever is half scrolled under it, and a thumb scrolls on.
    const bars = [...document.querySelectorAll<HTMLElement>('main *')].filter(
      one => getComputedStyle(one).position === 'sticky',
    );
    for (const one of bars) one.style.position = 'static';
    const { violations } = await axe.run({ rules: { 'target-size': { enabled: true } } });
    for (const one of later) one.style.contentVisibility = '';
    for (const one of bars) one.style.position = '';
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(n => n.html).join(' ')}`);
  });
}

/** In the sun and in the garage. */
export async function axeInBothThemes(page: Page): Promise<unknown[]> {
  const found: unknown[] = [];
  for (const colorScheme of ['light', 'dark'] as const) {
    await page.emulateMedia({ colorScheme });
    found.push(...(await axe(page)));
  }
  await page.emulateMedia({ colorScheme: null });
  return found;
}

/** What a gloved hand would miss. */
export const smallTargets = (page: Page) =>
  page.locator('main').evaluate(main =>
    [...main.querySelectorAll('button, a.button, input, select, summary')].flatMap(target => {
      const { width, height } = (target.closest('label') ?? target).getBoundingClientRect();
      return height === 0 || (height >= 56 && width >= 56)
        ? []
        : [`${target.outerHTML.slice(0, 90)} ${width}×${height}`];
    }),
  );
