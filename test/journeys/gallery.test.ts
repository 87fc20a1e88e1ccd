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
import { BENEATH, SHEETS, type Shown, show } from './sheets.ts';

const pages = browserPages();
const pictures = process.env.UPDATE_PICTURES ? 'docs/guide' : '.kartwright/pictures';
let served: Served;
beforeAll(async () => {
  for (const folder of ['sheets', 'paper']) mkdirSync(join(pictures, folder), { recursive: true });
  served = pages.behind(await startBuilt(['serve', '--demo']));
});
afterAll(() => served?.stop());

test('every sheet there is has its picture', () => {
  expect(Object.keys(SHEETS).toSorted()).toEqual([...PLACES].toSorted());
});

/** Cells of the title block with a press in them that a glove at the corner would not give. */
const cellsMissed = (page: Page): Promise<string[]> =>
  page.locator('.title-block').evaluate(block => {
    block.scrollIntoView();
    return [...block.children].flatMap(cell => {
      const press = cell.matches('a') ? cell : cell.querySelector('a, button');
      const { left, top, width, height } = cell.getBoundingClientRect();
      const met = document.elementFromPoint(left + 4, top + 4)?.closest('a, button') ?? null;
      return press === null || (met === press && width >= 56 && height >= 56) ? [] : [`${cell.outerHTML.slice(0, 90)}`];
    });
  });

/** Everything that can be asked of any sheet; all at once, so that one run shows all that is wrong. */
async function faultsOf(page: Page): Promise<string[]> {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth);
  return [
    ...(await axe(page)).map(String),
    ...(await smallTargets(page)).map(target => `small: ${target}`),
    ...(await cellsMissed(page)).map(cell => `title block, not pressed at its corner: ${cell}`),
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
    for (const [sheet, shown] of Object.entries(SHEETS)) {
      await show(page, served.url, shown).catch((error: unknown) => {
        throw new Error(`${sheet} did not come up as it should`, { cause: error });
      });
      writeFileSync(join(pictures, 'sheets', `${size}-${sheet}.png`), await page.screenshot());
      const found = await faultsOf(page);
      if (found.length > 0) faults[sheet] = found;
    }
    for (const shown of BENEATH) {
      await show(page, served.url, shown);
      const found = await faultsOf(page);
      if (found.length > 0) faults[shown.hash] = found;
    }
    expect(faults).toEqual({});
  });
});

const sheetsOf = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;

/** What is printed in a colour; a printer with one ink loses what only that colour says. */
const coloured = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const isGrey = (paint: string): boolean =>
      [...paint.matchAll(/rgba?\(([^)]+)\)/g)].every(([, parts = '']) => {
        const [r = 0, g = 0, b = 0, alpha = 1] = parts.split(/[ ,/]+/).map(Number);
        return alpha === 0 || Math.max(r, g, b) - Math.min(r, g, b) < 24; // paper and ink are a little warm
      });
    return [...document.body.querySelectorAll('*')].flatMap(one => {
      if (one.getClientRects().length === 0) return [];
      const { color, backgroundColor, fill, stroke, borderTopColor, borderBottomColor, borderLeftColor } =
        getComputedStyle(one);
      const paints = [color, backgroundColor, fill, stroke, borderTopColor, borderBottomColor, borderLeftColor];
      return paints.every(isGrey) ? [] : [`${one.outerHTML.slice(0, 80)} ${paints.filter(p => !isGrey(p))}`];
    });
  });

test('paper needs one ink: nothing that is printed has a colour', async () => {
  const page = await pages.open(served.url, 'R. Vale', { viewport: LAPTOP });
  const found: Record<string, readonly string[]> = {};
  for (const [sheet, shown] of Object.entries(SHEETS)) {
    if (shown.paper === undefined) continue;
    await page.emulateMedia({ media: 'screen' });
    await show(page, served.url, shown);
    await page.emulateMedia({ media: 'print' });
    await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
    await page.evaluate(() => new Promise(done => requestAnimationFrame(() => setTimeout(done))));
    const inks = await coloured(page);
    if (inks.length > 0) found[sheet] = inks.slice(0, 4);
  }
  expect(found).toEqual({});
  await page.emulateMedia({ media: 'screen' });
  await show(page, served.url, SHEETS.today as Shown);
  expect((await coloured(page)).length).toBeGreaterThan(0); // the screen has its signal colour, and the look sees it
});

test('every sheet that is printed fits A4 and Letter and says which page of how many it is', async () => {
  const page = await pages.open(served.url, 'R. Vale', { viewport: LAPTOP });
  const long: Record<string, number> = {};
  for (const [sheet, shown] of Object.entries(SHEETS)) {
    if (shown.paper === undefined) continue;
    await show(page, served.url, shown);
    for (const format of ['A4', 'Letter'] as const) {
      const pdf = await page.pdf({ format, preferCSSPageSize: false });
      if (format === 'A4') writeFileSync(join(pictures, 'paper', `${sheet}.pdf`), pdf);
      const count = sheetsOf(pdf);
      if (count === 0 || count > shown.paper) long[`${sheet} on ${format}`] = count;
    }
  }
  expect(long).toEqual({});
});
