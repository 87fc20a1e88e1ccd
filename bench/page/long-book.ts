/** A book of many seasons on the device: opened again, and for the first time. */
import type { Browser } from 'playwright-core';
import { startBuilt } from '../../test/journeys/served.ts';
import { inventBook } from '../facts.ts';
import { benchKart } from '../kart.ts';
import type { Figure } from '../measure.ts';
import { openPhone, type Took, usable } from './browser.ts';
import { bareRead, reopened } from './opening.ts';
import { figure, middleOf } from './took.ts';

const FACTS = 20_000;
const RUNS = 3;
const BATCH = 500; // as many as the server takes at once

export async function longBook(browser: Browser): Promise<readonly Figure[]> {
  const served = await startBuilt(['serve']);
  try {
    const kart = benchKart();
    const facts = inventBook(kart, FACTS);
    const text = `kart: 1\nname: ${kart.name}\ntemplate: six-speed gearbox\n`;
    const filed = await served.post(`/api/karts/${kart.name}/facts`, {
      by: 'A. Bench',
      payloads: [{ kind: 'kart filed', text }],
    });
    if (filed.status !== 201) throw new Error(`bench: the kart must be filed, got ${filed.status}`);
    for (let from = 0; from < facts.length; from += BATCH) {
      const { status } = await served.post('/api/book/take', { facts: facts.slice(from, from + BATCH) });
      if (status !== 200) throw new Error(`bench: facts must be taken, got ${status}`);
    }
    const phone = await openPhone(browser);
    await phone.slow(1);
    await phone.page.goto(`${served.url}#/work`);
    await usable(phone.page);
    // Only then does the device have them all, and know what it opens with.
    await phone.page.locator('.title-block a', { hasText: 'all sent' }).waitFor({ timeout: 120_000 });
    await phone.page.waitForTimeout(3000);
    await phone.slow(4);
    const [again, read]: [Took[], Took[]] = [[], []];
    await reopened(phone);
    for (let run = 0; run < RUNS; run++) {
      again.push(await reopened(phone));
      read.push(await bareRead(phone));
    }
    await phone.close();
    return [
      figure(`${FACTS} facts read from the device and nothing else`, read, undefined),
      figure(`a book of ${FACTS} facts opens`, again, 1000, [middleOf(read), 'that reading']),
    ];
  } finally {
    await served.stop();
  }
}
