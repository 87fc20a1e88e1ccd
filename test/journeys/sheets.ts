/** Every sheet there is, the pages beneath them, and how each is known to be there. */
import type { Page } from 'playwright-core';

export type Shown = {
  readonly hash: string;
  /** How a heading begins that is there once the sheet has worked out what it shows. */
  readonly ready: string;
  /** A picture of the page at its best: what is pressed first. */
  readonly first?: (page: Page) => Promise<void>;
  /** Most pages of A4 that it may take; missing where nobody prints it. */
  readonly paper?: number;
};

const STEP = '#/work/measure%20rear%20hub%20right%2Frear%20track';
export const SHEETS: Readonly<Record<string, Shown>> = {
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

/** Pages that a sheet leads to, each of a kind of its own; no two in a row that begin alike. */
export const BENEATH: readonly Shown[] = [
  { hash: '#/drawing/front%20end', ready: 'Front end' },
  { hash: '#/laps/compare', ready: 'Laps' },
  { hash: '#/lives/seat', ready: 'When to replace it' },
  { hash: '#/weak/cut%20the%20engine', ready: 'What alone is enough' },
  { hash: '#/laps/predict', ready: 'Laps' },
  { hash: '#/numbers/bolt', ready: 'How this was worked out' },
  { hash: '#/laps/helped', ready: 'Did it help' },
  { hash: '#/laps/session', ready: 'Conditions' },
  { hash: '#/laps/season', ready: 'Best laps' },
];

/** As far as the sheet is there and has worked out what it shows. */
export async function show(page: Page, url: string, { hash, ready, first }: Shown): Promise<void> {
  await page.goto(`${url}${hash}`);
  await page
    .locator('main')
    .getByRole('heading', { name: new RegExp(`^${ready}`) })
    .first()
    .waitFor();
  await page.waitForFunction(() => document.querySelector('main .loading') === null);
  await first?.(page);
}
