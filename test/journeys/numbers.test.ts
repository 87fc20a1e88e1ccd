/** The Numbers sheet in a real browser: asked, refused beside its field, answered with what to do. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import { type Browser, type BrowserContext, chromium, type Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, describe, expect, test } from 'vitest';
import { chromiumFlags, ensureChromium } from '../../scripts/chromium.mjs';
import { subjects } from '../../src/numbers/index.ts';
import { type Served, startBuilt } from './served.ts';

const AXE = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const SMALL = { width: 360, height: 740 };
const PHONE = { width: 390, height: 844 };
const LAPTOP = { width: 1280, height: 800 };

let browser: Browser;
let served: Served;
const contexts: BrowserContext[] = [];
const faults: string[] = [];

beforeAll(async () => {
  browser = await chromium.launch({ executablePath: await ensureChromium(), args: [...chromiumFlags] });
  served = await startBuilt();
});
afterEach(async () => {
  for (const context of contexts.splice(0)) await context.close();
  expect(faults.splice(0)).toEqual([]); // nothing the page complained of, refused scripts and styles included
});
afterAll(async () => {
  await browser?.close();
  await served?.stop();
});

async function open(
  hash: string,
  options: { viewport?: typeof PHONE; colorScheme?: 'light' | 'dark' } = {},
): Promise<Page> {
  const context = await browser.newContext({ viewport: PHONE, locale: 'en-GB', ...options });
  contexts.push(context);
  const page = await context.newPage();
  page.on('pageerror', error => faults.push(error.message));
  page.on('console', message => {
    if (message.type() === 'error') faults.push(message.text());
  });
  await page.goto(`${served.url}${hash}`);
  await page.getByRole('dialog').getByLabel('Your name').fill('R. Vale');
  await page.getByRole('button', { name: 'That is me' }).click();
  await page.locator('main h1').first().waitFor();
  return page;
}

const field = (page: Page, name: string) => page.locator('form.ask').getByLabel(new RegExp(`^${name}( needed)?$`));
const ask = (page: Page) => page.getByRole('button', { name: 'Work it out' }).click();
const answer = (page: Page) => page.getByRole('region', { name: 'Answer' });

async function faultsOfAxe(page: Page): Promise<readonly string[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    type Found = { violations: { id: string; nodes: { html: string }[] }[] };
    const { axe } = globalThis as unknown as { axe: { run(): Promise<Found> } };
    return (await axe.run()).violations.map(v => `${v.id}: ${v.nodes.map(n => n.html).join(' | ')}`.slice(0, 400));
  });
}

/** Targets lower than 48 px, links within sentences apart; what is drawn over a label counts with it. */
const smallTargets = (page: Page) =>
  page.locator('main').evaluate(main =>
    [...main.querySelectorAll('a, button, input, select, summary')].flatMap(target => {
      const { height, width } = target.getBoundingClientRect();
      return height === 0 || (height >= 48 && width >= 48) ? [] : [`${target.outerHTML.slice(0, 80)} ${height}`];
    }),
  );

const overflow = (page: Page) => page.evaluate(() => document.documentElement.scrollWidth - innerWidth);

describe('the numbers', () => {
  test('the rear track with a wrong side says which hub to move, which way and how far, and a reload keeps it', async () => {
    const page = await open('#/today');
    await page.getByRole('link', { name: /^Numbers/ }).click();
    await page.getByRole('link', { name: /^Rear track/ }).click();
    await field(page, 'Bearing faces').waitFor();
    // What the kart file says is there already; the rest is what the tape read.
    expect(await field(page, 'Bearing faces').inputValue()).toBe('655 mm');
    expect(await field(page, 'Width limit').inputValue()).toBe('1400 mm');
    await field(page, 'Overall rear width').fill('1397 mm');
    await field(page, 'Gap left').fill('149.2 mm');
    await field(page, 'Gap right').fill('5 3/4 in');
    await ask(page);
    // 146.05 mm is 5 3/4 in exactly (1 in = 25.4 mm), so the left hub stands 149.2 - 146.05 = 3.15 mm too far out.
    await answer(page).getByText('Move the left hub in 3.15 mm (1/8 in).').waitFor();
    await answer(page).getByText('Leave the right hub where it is.').waitFor();
    await answer(page).getByText('Caution.').waitFor();
    await answer(page)
      .getByRole('img', { name: /Left hub: in 3\.15 mm \(1\/8 in\)\. Right hub: leave it\./ })
      .waitFor();
    await answer(page).getByText('The drawing as a table').click();
    await answer(page)
      .getByRole('row', { name: /Move the hub/ })
      .getByText('in 3.15 mm (1/8 in)')
      .waitFor();
    await page.reload();
    await answer(page).getByText('Move the left hub in 3.15 mm (1/8 in).').waitFor();
    expect(await field(page, 'Gap right').inputValue()).toBe('5 3/4 in');
  });

  test('a bare number is refused beside its field, keeps what was typed, and the eye is taken there', async () => {
    const page = await open('#/numbers/rear-track');
    await field(page, 'Gap left').fill('146');
    await field(page, 'Gap right').fill('146 mm');
    await ask(page);
    const entry = page.locator('.entry-field', { has: page.getByLabel(/^Gap left$/) });
    await entry.getByRole('alert').getByText('got "146"').waitFor();
    expect(await entry.getByRole('alert').textContent()).toContain('mm');
    expect(await field(page, 'Gap left').inputValue()).toBe('146');
    expect(await page.locator('form.ask [role="alert"]').count()).toBe(1);
    expect(await field(page, 'Gap left').evaluate(input => document.activeElement === input)).toBe(true);
    await answer(page).getByText('No answer').waitFor();
    await field(page, 'Gap left').fill('146 mm');
    await ask(page);
    await answer(page).getByRole('img').waitFor();
    expect(await page.locator('form.ask [role="alert"]').count()).toBe(0);
  });

  test('weighed, ballast added, and weighed again: the second weighing is heavy enough', async () => {
    const page = await open('#/numbers/scales');
    await page.getByRole('button', { name: 'Try the example' }).click();
    await answer(page).getByText('Fix 3.84 kg at floor front left').waitFor();
    await page.getByText('These are the invented figures of the example').waitFor();
    // The example weighs 171.7 kg; 3.84 kg and 6.86 kg more stand on the scales like this.
    for (const [wheel, reading] of [
      ['Front left', '38.6 kg ± 0.1 kg'],
      ['Front right', '38.0 kg ± 0.1 kg'],
      ['Rear left', '52.3 kg ± 0.1 kg'],
      ['Rear right', '53.5 kg ± 0.1 kg'],
    ] as const)
      await field(page, wheel).fill(reading);
    await answer(page).getByText('Something was changed since').waitFor();
    await ask(page);
    await answer(page).getByText('Total 182.4 kg').waitFor();
    const margin = answer(page).getByRole('row', { name: /Margin at the flag/ });
    expect(await margin.textContent()).toContain('4.42 kg'); // 182.4 - 4 l × 0.745 kg/l - 175
  });

  test('a press that puts other figures over what was typed can be taken back', async () => {
    const page = await open('#/numbers/rear-track');
    await field(page, 'Gap left').fill('147 mm');
    await page.getByRole('button', { name: 'Try the example' }).click();
    expect(await field(page, 'Gap left').inputValue()).toBe('149.2 mm');
    await page.getByRole('button', { name: 'Bring back what was typed' }).click();
    expect(await field(page, 'Gap left').inputValue()).toBe('147 mm');
  });

  test('past what a formula was checked for the answer says so before it says anything else', async () => {
    const page = await open('#/numbers/bolt');
    await field(page, 'Thread').fill('M20x2.5');
    await field(page, 'Class').fill('8.8');
    await ask(page);
    const first = answer(page).locator('.refused').first();
    await first.getByText('Outside what this was checked for.').first().waitFor();
    await answer(page).getByText('How this was worked out').click();
    await answer(page).getByText('as quoted by somebody else').first().waitFor();
  });

  test('an address of no number lists those there are, and the way back leads to the list', async () => {
    const page = await open('#/numbers/nothing');
    await page.getByText('There is no number called "nothing"').waitFor();
    expect(await page.locator('.subjects li').count()).toBe(subjects.length);
    await page.locator('.subjects a').first().click();
    await page.getByRole('link', { name: 'All numbers' }).click();
    await page.getByRole('heading', { name: 'Numbers', exact: true }).waitFor();
  });

  test('the bench page opens without the numbers; they are fetched when somebody wants them', async () => {
    const page = await open('#/today');
    /** Addresses of the scripts fetched so far that carry the numbers' sources. */
    const carrying = () =>
      page.evaluate(async title => {
        const fetched = performance.getEntriesByType('resource').filter(r => /\.js($|\?)/.test(r.name));
        const texts = await Promise.all(fetched.map(r => fetch(r.name).then(answer => answer.text())));
        const named = [...document.querySelectorAll('head script[src], head link[rel=modulepreload]')].map(
          element => new URL(element.getAttribute('src') ?? element.getAttribute('href') ?? '', location.href).href,
        );
        const needed = new Set(named);
        const need = async (url: string): Promise<void> => {
          if (needed.has(url)) return;
          needed.add(url);
          const text = await fetch(url).then(answer => answer.text());
          const next = [...text.matchAll(/(?:import|from) ?"\.\/([^"]+\.js)"/g)].map(([, file = '']) => file);
          for (const file of next) await need(new URL(file, url).href);
        };
        for (const { name } of fetched) if (name.includes('/book-worker-')) await need(name);
        const own = fetched.filter(r => needed.has(r.name)).length;
        return { own, fetched: fetched.length, numbers: texts.filter(text => text.includes(title)).length };
      }, 'Evaluation of measurement data');
    // Only what the page itself names, its script and what that shares with the sheets that wait, and the worker that keeps its book.
    const { own, fetched, numbers } = await carrying();
    expect(fetched).toBeGreaterThan(0);
    expect({ own, numbers }).toEqual({ own: fetched, numbers: 0 });
    await page.getByRole('link', { name: /^Numbers/ }).click();
    await page.locator('.subjects').waitFor();
    expect((await carrying()).numbers).toBe(1);
  });
});

test('axe finds nothing wrong with any number and its answer, no target is small, nothing runs off the side', async () => {
  for (const [viewport, colorScheme] of [
    [SMALL, 'light'],
    [LAPTOP, 'dark'],
  ] as const) {
    const page = await open('#/numbers', { viewport, colorScheme });
    await page.locator('.subjects').waitFor();
    expect(await faultsOfAxe(page)).toEqual([]);
    for (const { name } of subjects) {
      await page.goto(`${served.url}#/numbers/${name}`);
      await page.getByRole('button', { name: 'Try the example' }).click();
      await answer(page).getByRole('heading', { name: 'Figures' }).waitFor();
      await page.locator('main').evaluate(main => {
        for (const details of main.querySelectorAll('details')) details.open = true;
      });
      const where = `${name} ${viewport.width}`;
      expect(await faultsOfAxe(page), where).toEqual([]);
      expect(await smallTargets(page), where).toEqual([]);
      expect(await overflow(page), where).toBeLessThanOrEqual(0);
    }
  }
});
