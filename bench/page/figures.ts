/** The page at the bench in a real browser: how soon it is there, how long a tick takes. Each beside a reference of the same run. */
import { loadavg } from 'node:os';
import { startBuilt } from '../../test/journeys/served.ts';
import type { Figure } from '../measure.ts';
import { SLOWER, withBrowser } from './browser.ts';
import { firstLoad } from './first-load.ts';
import { longBook } from './long-book.ts';
import { openings } from './opening.ts';
import { planned } from './planned.ts';
import { ticks } from './tick.ts';

export async function pages(): Promise<readonly Figure[]> {
  const load = (): string =>
    loadavg()
      .map(one => one.toFixed(1))
      .join(' ');
  const before = load();
  const served = await startBuilt(['serve', '--demo']);
  try {
    return await withBrowser(async browser => [
      {
        what: `the thread of the page ${SLOWER} × slower; wall, (processor of the page), load at the start`,
        value: before,
      },
      firstLoad(),
      ...(await openings(browser, served)),
      ...(await ticks(browser, served)),
      ...(await planned(browser)),
      ...(await longBook(browser)),
      { what: 'load at the end', value: load() },
    ]);
  } finally {
    await served.stop();
  }
}
