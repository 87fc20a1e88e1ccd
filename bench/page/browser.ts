/** A real Chromium whose page runs at a quarter of its speed, as a phone some years old does; times taken inside the page. */
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { chromiumFlags, ensureChromium } from '../../scripts/chromium.mjs';

/** Slows the thread of the page, not its workers nor the disk. */
export const SLOWER = 4;

/** Wall [ms], and what the page's thread worked meanwhile [ms of its processor time]. */
export type Took = { readonly wall: number; readonly cpu: number };

export type Phone = {
  readonly page: Page;
  /** The thread of the page as fast as it can, or slowed again. */
  slow(times: number): Promise<void>;
  /** Processor time of the page's thread since it was opened [ms]. */
  cpu(): Promise<number>;
  close(): Promise<void>;
};

export async function withBrowser<T>(work: (browser: Browser) => Promise<T>): Promise<T> {
  const browser = await chromium.launch({ executablePath: await ensureChromium(), args: [...chromiumFlags] });
  try {
    return await work(browser);
  } finally {
    await browser.close();
  }
}

/** A device of its own with nothing kept, whose owner gave a name. */
export async function openPhone(browser: Browser): Promise<Phone> {
  const context: BrowserContext = await browser.newContext({ viewport: { width: 390, height: 844 } });
  await context.addInitScript(watchForStep);
  const page = await context.newPage();
  const line = await context.newCDPSession(page);
  const slow = async (rate: number): Promise<void> => {
    await line.send('Emulation.setCPUThrottlingRate', { rate });
  };
  await slow(SLOWER);
  await line.send('Performance.enable', { timeDomain: 'threadTicks' });
  return {
    page,
    slow,
    async cpu() {
      const { metrics } = await line.send('Performance.getMetrics');
      return (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN) * 1000;
    },
    close: () => context.close(),
  };
}

/** Waits inside the page, where nothing else of the bench runs; ms from the start of its loading to when it was painted. */
export const usable = (page: Page): Promise<number> =>
  page.evaluate(() => (globalThis as unknown as Watched).benchUsable);

/** The page and its service worker have come to rest, so that what comes next is measured alone. */
export async function atRest(page: Page): Promise<void> {
  await page.evaluate(async () => {
    await navigator.serviceWorker?.ready;
    for (let quiet = 0; quiet < 3; ) {
      const from = performance.now();
      await new Promise(done => setTimeout(done, 200));
      quiet = performance.now() - from < 260 ? quiet + 1 : 0;
    }
  });
}

export type Watched = { readonly benchUsable: Promise<number> };

/** Runs in the page before its own script: tells when the first step can be ticked and that has been painted. */
function watchForStep(): void {
  try {
    localStorage.setItem('kartwright.name', 'R. Vale');
  } catch {
    return; // a page that is no page of ours
  }
  const painted = (done: (at: number) => void): void => {
    requestAnimationFrame(() => setTimeout(() => done(performance.now())));
  };
  const benchUsable = new Promise<number>(done => {
    const look = (): void => {
      const tick = document.querySelector<HTMLButtonElement>('.step .answers .main');
      if (tick === null || tick.disabled) return;
      watch.disconnect();
      painted(done);
    };
    const watch = new MutationObserver(look);
    watch.observe(document, { subtree: true, childList: true });
  });
  Object.assign(globalThis, { benchUsable });
}
