/** Pages of a real browser, each a device of its own, and everything that they complained of. */
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { chromiumFlags, ensureChromium } from '../../scripts/chromium.mjs';

export const PHONE = { width: 390, height: 844 };
export const LAPTOP = { width: 1280, height: 800 };
export type Device = { readonly viewport?: typeof PHONE; readonly colorScheme?: 'light' | 'dark' };

/** Starts a browser for this file's tests; `open` gives a page that is already named. */
export function browserPages(): { open(url: string, who: string, device?: Device): Promise<Page> } {
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
  return {
    async open(url, who, device = {}) {
      const context = await browser.newContext({ viewport: PHONE, ...device });
      contexts.push(context);
      const page = await context.newPage();
      page.on('pageerror', error => faults.push(error.message));
      page.on('console', message => {
        // A refused answer is shown on the page; the browser notes the status of each as well.
        if (message.type() === 'error' && !message.text().startsWith('Failed to load resource'))
          faults.push(message.text());
      });
      await page.goto(url);
      await page.getByRole('dialog').getByLabel('Your name').fill(who);
      await page.getByRole('button', { name: 'That is me' }).click();
      await page.locator('main h1').waitFor();
      return page;
    },
  };
}
