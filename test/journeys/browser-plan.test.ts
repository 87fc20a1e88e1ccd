/** Who and when on the page: two people and two evenings on the invented demo kart, too little time, a stop, a find in the middle. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { Kept } from '../../src/app/index.ts';
import type { Plan } from '../../src/prep/index.ts';
import { browserPages, LAPTOP, PHONE } from './pages.ts';
import { type Served, startBuilt } from './served.ts';
import { done, heading } from './step.ts';

const AXE = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const pages = browserPages();
let served: Served;
beforeEach(async () => {
  served = pages.behind(await startBuilt());
});
afterEach(() => served.stop());

const open = (device = {}) => pages.open(`${served.url}#/work`, 'R. Vale', device);
const whoAndWhen = (page: Page) => page.locator('.who-and-when');
const statement = (page: Page) => page.locator('.statement');
const stop = (page: Page) => page.getByRole('button', { name: 'Stop looking: keep the best so far' });
const found = (page: Page) => page.getByRole('button', { name: 'Again: plan from now' }).waitFor();
const rows = (page: Page) => page.locator('.group .steps li');

/** Nine in the morning so many days from today, as the field of this device's clock takes it. */
const atNine = (page: Page, days: number): Promise<string> =>
  page.evaluate(days => {
    const at = new Date();
    at.setDate(at.getDate() + days);
    at.setHours(9, 0, 0, 0);
    return new Date(at.getTime() - at.getTimezoneOffset() * 60_000).toISOString().slice(0, 16);
  }, days);

async function twoPeople(page: Page): Promise<void> {
  await whoAndWhen(page).locator('summary').first().click();
  await page.getByRole('button', { name: '2', exact: true }).click();
  await page.getByLabel('Name of person 2').fill('J. Moor');
}
async function time(page: Page, n: number, long: string, days?: number): Promise<void> {
  await page.getByRole('button', { name: n === 1 ? 'Say how much time there is' : 'One more time' }).click();
  const field = page.getByLabel(`How long, time ${n}`);
  await field.fill(long);
  await field.blur();
  if (days !== undefined) await page.locator(`#time-from-${n}`).fill(await atNine(page, days));
}
const planOf = (ask: string): Promise<Plan> => served.get(`/api/karts/41/plan?${ask}`);

async function axe(page: Page): Promise<unknown[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
    };
    return (await axe.run()).violations.map(({ id, nodes }) => `${id}: ${nodes.map(n => n.html).join(' ')}`);
  });
}
const smallTargets = (page: Page) =>
  page.locator('main').evaluate(main =>
    [...main.querySelectorAll('button, a.button, .steps a, input, summary')].flatMap(target => {
      const { width, height } = target.getBoundingClientRect();
      return height === 0 || (height >= 56 && width >= 56) || target.closest('.list-head, .undo')
        ? []
        : [`${target.outerHTML.slice(0, 90)} ${width}×${height}`];
    }),
  );

describe('two people and two times', () => {
  test('say of each row who does it and when, as a list, as bars and as a table, and are there after a reload', async () => {
    const page = await open(PHONE);
    expect(await statement(page).textContent()).toBe(''); // nothing asked, nothing said
    await twoPeople(page);
    await time(page, 1, '1 h 30 min', 1);
    await time(page, 2, '2 h', 3);
    await found(page);
    await page.reload();
    await found(page);
    expect(await statement(page).textContent()).toMatch(
      /at most \d+ min longer than the shortest there can be|no plan for this work is shorter/,
    );
    expect(await statement(page).textContent()).toMatch(/Begin closing up/);
    const metas = await rows(page).locator('.meta').allTextContents();
    for (const who of ['R. Vale', 'J. Moor', 'R. Vale and J. Moor'])
      expect(metas.filter(meta => meta.includes(`· ${who}, `)).length).toBeGreaterThan(0);
    const days = new Set(metas.flatMap(meta => /, (\w{3}) \d\d:\d\d/.exec(meta)?.[1] ?? []));
    expect(days.size).toBe(2);

    const why = rows(page).locator('.why').first();
    await why.click();
    expect(await rows(page).locator('.reasons').first().textContent()).toMatch(/\w+\./);
    await page.locator('summary', { hasText: 'As bars' }).click();
    await page.locator('figure .plan-bars .work').first().waitFor();
    await page.getByRole('button', { name: 'The same as a table' }).click();
    const count = await rows(page).count();
    expect(await page.locator('.plan-table tbody tr').count()).toBe(count);
    expect(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)).toBeLessThanOrEqual(0);
    expect(await smallTargets(page)).toEqual([]);
    expect(await axe(page)).toEqual([]);
  });

  test('on paper each person has a list and the bars are there; in the light of a laptop axe finds nothing', async () => {
    const page = await open({ viewport: LAPTOP, colorScheme: 'light' as const });
    await twoPeople(page);
    await time(page, 1, '90 min');
    await found(page);
    await page.locator('summary', { hasText: 'As bars' }).click();
    await page.locator('figure .plan-bars .work').first().waitFor();
    expect(await axe(page)).toEqual([]);
    await page.evaluate(() => dispatchEvent(new Event('beforeprint')));
    await page.emulateMedia({ media: 'print' });
    expect(await page.locator('.by-person h2').allTextContents()).toEqual(['Who does what when', 'R. Vale', 'J. Moor']);
    expect(await page.locator('.by-person .plan-bars').isVisible()).toBe(true);
    expect(await statement(page).isVisible()).toBe(false);
    expect((await page.pdf({ format: 'A4' })).subarray(0, 5).toString()).toBe('%PDF-');
  });
});

test('a time too short says not fit, by how much and with whose help, and names what is left out; a bare number asks for its unit', async () => {
  const page = await open();
  await whoAndWhen(page).locator('summary').first().click();
  await time(page, 1, '40');
  await whoAndWhen(page).getByText('Say how long with its unit').waitFor();
  await page.getByLabel('How long, time 1').fill('40 min');
  await page.getByLabel('How long, time 1').blur();
  await statement(page)
    .getByText(/Not fit to run after this plan/)
    .waitFor();
  await found(page);
  const plan = await planOf('minutes=40');
  expect(plan.safetyShortBy).toBeGreaterThan(0);
  const said = (await statement(page).locator('.short').textContent()) ?? '';
  const [, hours = '0', minutes = '0'] = /plan: (?:(\d+) h ?)?(?:(\d+) min)? more/.exec(said) ?? [];
  expect(Number(hours) * 60 + Number(minutes)).toBe(Math.ceil(plan.safetyShortBy ?? 0));
  await page.locator('summary', { hasText: 'Left out for want of time' }).click();
  const left = page.locator('details', { hasText: 'Left out for want of time' }).locator('li');
  expect(await left.count()).toBe(plan.leftOut.length);
  expect(await left.first().textContent()).toMatch(/Enters with/);
});

test('stopped at once, the plan is still one to work from; by itself nothing is asked and nothing is planned otherwise', async () => {
  const page = await open();
  const alone = await rows(page).count();
  await whoAndWhen(page).locator('summary').first().click();
  await page.evaluate(() => {
    // In the same breath as the press, before any worker can have answered.
    const press = (name: RegExp): void =>
      [...document.querySelectorAll('button')].find(({ textContent }) => name.test(textContent))?.click();
    press(/^3$/);
    const look = (): void => {
      if ([...document.querySelectorAll('button')].some(({ textContent }) => /^Stop/.test(textContent))) press(/^Stop/);
      else requestAnimationFrame(look);
    };
    look();
  });
  await found(page);
  expect(await stop(page).isVisible()).toBe(false);
  expect(await rows(page).count()).toBeGreaterThan(alone / 2);
  const title = await heading(page).textContent();
  await done(page).click();
  await heading(page)
    .filter({ hasNotText: title ?? 'none' })
    .waitFor();
  await page.getByRole('button', { name: '1', exact: true }).click();
  await statement(page).locator('.found').waitFor({ state: 'detached' });
});

test('a find in the middle, for which a part comes off, shows what the plan does otherwise and repeats nothing that was done', async () => {
  const page = await open();
  await twoPeople(page);
  await found(page);
  const before = (await served.get<{ facts: Kept[] }>('/api/karts/41/facts?after=0')).facts.length;
  const title = await heading(page).textContent();
  await done(page).click();
  await heading(page)
    .filter({ hasNotText: title ?? 'none' })
    .waitFor();
  expect(await page.locator('.changed').count()).toBe(0); // only what was done
  const { facts } = await served.get<{ facts: Kept[] }>('/api/karts/41/facts?after=0');
  expect(facts.length).toBe(before + 1);
  const { status } = await served.post('/api/karts/41/facts', {
    by: 'J. Moor',
    payloads: [
      { kind: 'found', part: 'tie rod left', defect: 'bent', grade: 'safety' },
      { kind: 'taken off', part: 'tie rod left' },
    ],
  });
  expect(status).toBe(201);
  await page
    .locator('.changed')
    .getByText(/The plan has changed: \d+ steps? new/)
    .waitFor();
  await found(page);
  expect(await page.locator('.changed').textContent()).toContain('Because:');
  await page.locator('.changed summary').click();
  const fact = facts.at(-1)?.fact;
  const plan = await planOf('people=2');
  const again = plan.steps.filter(
    ({ state, part, action }) =>
      state !== 'done' && fact?.kind === 'taken off' && part === fact.part && action === 'take-off',
  );
  expect(again).toEqual([]);
  await page.getByRole('button', { name: 'Seen' }).click();
  await page.locator('.changed').waitFor({ state: 'detached' });
});
