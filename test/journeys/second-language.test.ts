/** In another language no English of the page remains: what stands outside its words was said by the kart, its kinds or the core. */
import { readFile, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Plan } from '../../src/prep/index.ts';
import { builtInMadeUp } from './made-up-language.ts';
import { browserPages } from './pages.ts';
import { type Served, startBuilt } from './served.ts';

const pages = browserPages();
let folder: string;
let served: Served;
beforeAll(async () => {
  folder = await builtInMadeUp();
  served = await startBuilt(['serve', '--demo'], join(folder, 'dist/cli.js'));
});
afterAll(async () => {
  await served?.stop();
  if (folder) await rm(folder, { recursive: true, force: true });
});

test('Today, Work and a step say nothing in English but what the kart, its kinds and the core said', async () => {
  const page = await pages.bare(served.url);
  const name = page.getByRole('dialog').locator('input');
  await name.fill('R. Vale');
  await name.press('Enter');
  await page.locator('main h1').first().waitFor();
  const { steps } = await served.get<Plan>('/api/karts/41/plan');
  const step = steps.find(({ state, unit }) => state === 'ready' && unit !== null)?.key ?? '';
  const said = await saidByOthers();
  const left: string[] = [];
  for (const hash of ['#/today', '#/work', `#/work/${encodeURIComponent(step)}`]) {
    await page.goto(`${served.url}${hash}`);
    await page.locator('main h1:visible').first().waitFor();
    await page.waitForFunction(() => document.querySelector('main .loading') === null);
    const texts = await textsOn(page);
    expect(texts.filter(text => text.includes('⟦')).length).toBeGreaterThan(30);
    for (const text of texts) if (ours(text, said)) left.push(`${hash}  ${text}`);
  }
  expect([...new Set(left)]).toEqual([]);
});

/** All that a person reads or hears on the page. */
const textsOn = (page: Page): Promise<string[]> =>
  page.evaluate(() => {
    const texts: string[] = [];
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walk.nextNode())
      if (!walk.currentNode.parentElement?.closest('script, style, noscript'))
        texts.push(walk.currentNode.textContent ?? '');
    for (const name of ['aria-label', 'aria-description', 'title', 'placeholder', 'alt'])
      for (const element of document.querySelectorAll(`[${name}]`)) texts.push(element.getAttribute(name) ?? '');
    return texts;
  });

/** Every text in the answers of the server and in the shipped kinds, whole and in the pieces between its marks. */
async function saidByOthers(): Promise<ReadonlySet<string>> {
  const said = new Set<string>();
  const take = (value: unknown): void => {
    if (typeof value === 'string') for (const one of [plain(value), ...piecesOf(value)]) said.add(one);
    else if (typeof value === 'object' && value !== null)
      for (const [key, one] of Object.entries(value)) {
        said.add(plain(key));
        take(one);
      }
  };
  for (const path of ['', '/plan', '/fitness', '/facts', '/due']) take(await served.get(`/api/karts/41${path}`));
  take(JSON.parse(await readFile(join(folder, 'dist/library.json'), 'utf8')));
  return said;
}

/** Days in figures or named are one: the page names them in its own words. */
const DAY = /(?:⟦\p{L}+⟧ )?\b\d{1,2} ⟦\p{L}+⟧(?: \d{4})?|\b\d{4}-\d\d-\d\d\b/gu;
const plain = (text: string): string => text.replace(DAY, '#').trim().toLowerCase();
const piecesOf = (text: string): readonly string[] =>
  plain(text)
    .split(/[⟧|·,:;()/–]|\.(?=[\s|]|$)/)
    .map(one => one.trim());
/** Sentences that the core makes for the page, and for no answer of the server. */
const BY_THE_CORE = /^(.* is off|.* opened and not made|as late as the others allow)$/;
/** A number with its unit is no language. */
const MEASURE = /^[\d.,± ×-]*\s*(mm|kg|min|h|hPa|°c|bar|n·m|km\/h|rpm|l|ml|%)?$/i;

/** What stands outside all brackets, and nobody else said. */
function ours(text: string, said: ReadonlySet<string>): boolean {
  let outside = text.replace(DAY, '#');
  for (let less = ''; less !== outside; ) [less, outside] = [outside, outside.replace(/⟦[^⟦⟧]*⟧/g, '|')];
  if (said.has(plain(outside))) return false;
  return piecesOf(outside).some(
    piece => /\p{L}{2}/u.test(piece) && !MEASURE.test(piece) && !BY_THE_CORE.test(piece) && !said.has(piece),
  );
}
