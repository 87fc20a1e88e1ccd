/** What the journeys over the pages of the laps share: one invented kart, its logs, and files dropped as a hand does it. */
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { LAPTOP, type Pages, PHONE } from './pages.ts';
import { type Served, startBuilt } from './served.ts';

export const LOGS = 'test/fixtures/laps';
export const LOOKS = [
  { viewport: PHONE, colorScheme: 'light' } as const,
  { viewport: LAPTOP, colorScheme: 'dark' } as const,
];

/** The program with kart 7 in its book, and these teeth in its box. */
export async function servedWithKart(pages: Pages, rear: string): Promise<Served> {
  const served = pages.behind(await startBuilt(['serve']));
  const text = `kart: 1\nname: "7"\ntemplate: six-speed gearbox\nbox: { front sprockets: [17], rear sprockets: [${rear}] }\n`;
  const { status } = await served.post('/api/karts/7/facts', {
    by: 'R. Vale',
    payloads: [{ kind: 'kart filed', text }],
  });
  expect(status).toBe(201);
  return served;
}

/** Files dropped onto the page. */
export async function drop(
  page: Page,
  files: readonly { readonly name: string; readonly content: string }[],
): Promise<void> {
  const transfer = await page.evaluateHandle(all => {
    const data = new DataTransfer();
    for (const { name, content } of all) data.items.add(new File([content], name));
    return data;
  }, files);
  await page.locator('.put-down').dispatchEvent('drop', { dataTransfer: transfer });
}
export const content = async (name: string) => ({ name, content: await readFile(`${LOGS}/${name}`, 'utf8') });

/** The laps of the logs on the table. */
export const rows = (page: Page) => page.locator('.log .lap-table tbody th[scope=row]');
export const log = (page: Page, name: string) => page.getByRole('region', { name, exact: true });

/** Laps of an invented driver, seeded: 52.3 s, a track that gains 2 ms a lap, 60 ms from lap to lap. */
function driven(order: string, effect: number, seed = 2): readonly string[] {
  let state = seed;
  const even = (): number => {
    state = (state + 0x6d2b79f5) >>> 0;
    let t = Math.imul(state ^ (state >>> 15), state | 1);
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61);
    return ((t ^ (t >>> 14)) >>> 0) / 2 ** 32;
  };
  const normal = (): number => Math.sqrt(-2 * Math.log(1 - even())) * Math.cos(2 * Math.PI * even());
  let lap = 0;
  return [...order].map(letter =>
    Array.from({ length: 8 }, () =>
      (52.3 + (letter === 'B' ? effect : 0) - 0.002 * lap++ + 0.06 * normal()).toFixed(2),
    ).join(' '),
  );
}

/** One session after the other, the set-up changed between them and written down. */
export async function testDay(
  served: Served,
  test: {
    readonly day: string;
    readonly setting: string;
    readonly values: readonly [a: string, b: string];
    readonly effect: number;
    readonly order: string;
    readonly seed?: number;
  },
): Promise<void> {
  const {
    day,
    setting,
    values: [a, b],
    effect,
    order,
    seed,
  } = test;
  const at = (minute: number) => new Date(Date.parse(`${day}T09:00:00Z`) + minute * 60_000).toISOString();
  for (const [n, times] of driven(order, effect, seed).entries()) {
    const is = order[n] === 'B' ? b : a;
    if (n === 0 || order[n] !== order[n - 1])
      await served.post('/api/karts/7/facts', {
        ...{ by: 'R. Vale', at: at(20 * n), payloads: [{ kind: 'set-up', changes: { [setting]: is } }] },
      });
    const { status } = await served.post('/api/karts/7/laps', {
      ...{ by: 'R. Vale', at: at(20 * n + 12), times, track: 'Hollow Lane', session: `Run ${n + 1}` },
    });
    expect(status).toBe(201);
  }
}
