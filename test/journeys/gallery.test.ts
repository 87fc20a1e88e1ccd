/**
 * Every sheet on a phone in the dark and on a laptop in the light, and every printed one on A4 and Letter: looked over for what
 * a stranger would trip on, and kept as pictures. `UPDATE_PICTURES=1` puts them into the guide; they change with the day.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { PLACES } from '../../src/web/place.ts';
import { axe, browserPages, LAPTOP, PHONE, smallTargets } from './pages.ts';
import { type Served, startBuilt } from './served.ts';

const pages = browserPages();
const pictures = process.env.UPDATE_PICTURES ? 'docs/guide' : '.kartwright/pictures';
let served: Served;
beforeAll(async () => {
  for (const folder of ['sheets', 'paper']) mkdirSync(join(pictures, folder), { recursive: true });
  served = pages.behind(await startBuilt(['serve', '--demo']));
});
afterAll(() => served?.stop());

type Shown = {
  readonly hash: string;
  /** How a heading begins that is there once the sheet has worked out what it shows. */
  readonly ready: string;
  /** A picture of the page at its best: what is pressed first. */
  readonly first?: (page: Page) => Promise<void>;
  /** Most pages of A4 that it may take; missing where nobody prints it. */
  readonly paper?: number;
};

const STEP = '#/work/measure%20rear%20hub%20right%2Frear%20track';
const SHOWN: Readonly<Record<string, Shown>> = {
  today: { hash: '#/today', ready: 'Brakes' },
  work: { hash: STEP, ready: '', paper: 6, first: page => page.getByText('Gap from bearing to hub').first().waitFor() },
  kart: { hash: '#/kart', ready: 'The kart from above' },
  track: { hash: '#/track', ready: 'The numbers', paper: 2 },
  record: { hash: '#/record', ready: 'The record' },
  fit: { hash: '#/fit', ready: 'Is it fit', paper: 4 },
  numbers: {
    hash: '#/numbers/rear-track',
    ready: 'Rear track',
    first: async page => {
      await page.getByRole('button', { name: 'Try the example' }).click();
      await page.getByRole('heading', { name: 'Answer' }).evaluate(h => h.scrollIntoView());
    },
    paper: 3,
  },
  setup: { hash: '#/setup', ready: 'As it stands', paper: 2 },
  laps: { hash: '#/laps', ready: 'Laps' },
  weak: { hash: '#/weak', ready: 'Which second retention', paper: 4 },
  lives: { hash: '#/lives', ready: 'Most likely to fail first', paper: 2 },
  spares: { hash: '#/spares', ready: 'Carry', paper: 3 },
  device: { hash: '#/device', ready: 'What the browser keeps' },
  devices: { hash: '#/devices', ready: 'Devices' },
  part: { hash: '#/part/41%2Frear%20hub%20left', ready: 'How it is held' },
  box: { hash: '#/box/41%2Fchain', ready: 'Chain' },
  labels: {
    hash: '#/labels',
    ready: 'Labels with a code',
    first: page => page.locator('.labels svg').first().waitFor(), // the codes are fetched when asked
    paper: 8,
  },
  search: {
    hash: '#/search',
    ready: 'Search',
    first: async page => {
      await page.getByRole('searchbox').fill('hub');
      await page.getByRole('heading', { name: /^Parts/ }).waitFor();
    },
  },
  drawing: { hash: '#/drawing/rear%20axle', ready: 'Rear axle', paper: 1 },
  joints: { hash: '#/joints/brakes', ready: 'How it is held', paper: 3 },
  start: { hash: '#/start', ready: 'What kind of kart' },
  build: { hash: '#/build', ready: 'Build kart' },
  file: { hash: '#/file', ready: 'Kart file of' },
  'type-in': { hash: '#/type-in', ready: 'As it will be written' },
};

test('every sheet there is has its picture', () => {
  expect(Object.keys(SHOWN).toSorted()).toEqual([...PLACES].toSorted());
});

/** As far as the sheet is there and has worked out what it shows. */
async function show(page: Page, { hash, ready, first }: Shown): Promise<void> {
  await page.goto(`${served.url}${hash}`);
  await page
    .locator('main')
    .getByRole('heading', { name: new RegExp(`^${ready}`) })
    .first()
    .waitFor();
  await page.waitForFunction(() => document.querySelector('main .loading') === null);
  await first?.(page);
}

/** Everything that can be asked of any sheet; all at once, so that one run shows all that is wrong. */
async function faultsOf(page: Page): Promise<string[]> {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  return [
    ...(await axe(page)).map(String),
    ...(await smallTargets(page)).map(target => `small: ${target}`),
    ...(wide > 0 ? [`wider than the screen by ${wide} px`] : []),
  ];
}

describe.each([
  ['phone', PHONE, 'dark'],
  ['laptop', LAPTOP, 'light'],
] as const)('on a %s', (size, viewport, colorScheme) => {
  test(`axe finds nothing wrong in the ${colorScheme}, nothing is wider than the screen, no target is small`, async () => {
    const page = await pages.open(served.url, 'R. Vale', { viewport, colorScheme });
    const faults: Record<string, string[]> = {};
    for (const [sheet, shown] of Object.entries(SHOWN)) {
      await show(page, shown).catch((error: unknown) => {
        throw new Error(`${sheet} did not come up as it should`, { cause: error });
      });
      writeFileSync(join(pictures, 'sheets', `${size}-${sheet}.png`), await page.screenshot());
      const found = await faultsOf(page);
      if (found.length > 0) faults[sheet] = found;
    }
    expect(faults).toEqual({});
  });
});

const sheetsOf = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;

test('every sheet that is printed fits A4 and Letter and says which page of how many it is', async () => {
  const page = await pages.open(served.url, 'R. Vale', { viewport: LAPTOP });
  const long: Record<string, number> = {};
  for (const [sheet, shown] of Object.entries(SHOWN)) {
    if (shown.paper === undefined) continue;
    await show(page, shown);
    for (const format of ['A4', 'Letter'] as const) {
      const pdf = await page.pdf({ format, preferCSSPageSize: false });
      if (format === 'A4') writeFileSync(join(pictures, 'paper', `${sheet}.pdf`), pdf);
      const count = sheetsOf(pdf);
      if (count === 0 || count > shown.paper) long[`${sheet} on ${format}`] = count;
    }
  }
  expect(long).toEqual({});
});
