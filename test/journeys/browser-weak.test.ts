/** On the page: from "what is weak" to a strapped clevis in the plan, done, looked at twice, and a lower number with its floor. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { WeakLinksAnswer } from '../../src/app/index.ts';
import type { Plan } from '../../src/prep/index.ts';
import type { Hazard } from '../../src/risk/index.ts';
import { browserPages, LAPTOP, PHONE } from './pages.ts';
import { type Served, startBuilt } from './served.ts';
import { done, stepCard } from './step.ts';

const AXE = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const PINS = 'rod/clevis pins';
const STRAP = 'strap round the clevis';
const KART = `kart: 1
name: "9"
# One rod, no second link.
parts:
  pedal: { kind: brake pedal, system: brakes, place: { x: 1000 mm, y: 170 mm } }
  rod: { kind: brake push rod, system: brakes, place: { x: 600 mm, y: 170 mm }, joints: { clevis pins: { second: none } } }
functions:
  stop: { severity: 1, hazard: no brakes, needs: { all of: [pedal, rod] } }
lives:
  brake pedal: { one in ten gone by: 200 h, half gone by: 500 h }
  brake push rod: { one in ten gone by: 200 h, half gone by: 500 h }
`;
const looks = [PINS, 'rod/lock nut', 'pedal/pivot bolt'];

const pages = browserPages();
let served: Served;
beforeAll(async () => {
  served = pages.behind(await startBuilt());
  const from = new Date(Date.now() + 3 * 86_400_000).toISOString();
  const until = new Date(Date.now() + 4 * 86_400_000).toISOString();
  await write(
    'A. Bench',
    { kind: 'kart filed', text: KART },
    { kind: 'event', event: 'Round 1', from, until, minutes: 90 },
    ...looks.map(joint => ({ kind: 'made', joint })),
  );
  await write('B. Other', ...looks.map(item => ({ kind: 'checked', item, result: 'pass', secondLook: true })));
});
afterAll(() => served?.stop());

async function write(by: string, ...payloads: readonly object[]): Promise<void> {
  const { body } = await served.post('/api/karts/9/facts', { payloads, by });
  expect(body.problems ?? []).toEqual([]);
}
async function stop(): Promise<Hazard> {
  const { hazards } = await served.get<WeakLinksAnswer>('/api/karts/9/weak-links');
  return hazards[0] as Hazard;
}
const chance = ({ top }: Hazard): number => top?.chance ?? Number.NaN;

async function openKart9(who: string, device = {}): Promise<Page> {
  const page = await pages.open(`${served.url}#/kart`, who, device);
  await page.getByLabel('Kart', { exact: true }).selectOption('9');
  await page.getByRole('img', { name: /^Kart 9 from above/ }).waitFor();
  return page;
}
const alone = (page: Page) => page.locator('.alone li', { hasText: 'spring clip stands between you and no brakes' });

/** Says on the page that a step is done, as it stands there. */
async function work(page: Page, find: (step: Plan['steps'][number]) => boolean): Promise<void> {
  const { steps } = await served.get<Plan>('/api/karts/9/plan');
  const step = steps.find(one => one.state !== 'done' && find(one));
  if (!step) throw new Error('the plan must hold the step');
  await page.goto(`${served.url}#/work/${encodeURIComponent(step.key)}`);
  await done(page).click();
  await expect
    .poll(async () =>
      (await served.get<Plan>('/api/karts/9/plan')).steps.filter(one => one.key === step.key && one.state !== 'done'),
    )
    .toEqual([]);
}

async function axe(page: Page): Promise<unknown[]> {
  await page.evaluate(AXE);
  return page.evaluate(async () => {
    const { axe } = globalThis as unknown as {
      axe: { run(): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> };
    };
    return (await axe.run()).violations.map(({ id, nodes }) => `${id}: ${nodes.map(n => n.html).join(' ')}`);
  });
}

describe('weak links on the page', () => {
  let before: Hazard;

  test('one clip stands between the driver and no brakes; the map finds the line, and the line its place', async () => {
    before = await stop();
    const page = await openKart9('R. Vale');
    await page.getByRole('link', { name: /^Weak links/ }).click();
    await alone(page).getByText('2 × clevis pins').waitFor();
    await page
      .locator('.hazard-head[aria-current]')
      .getByText(before.top?.words ?? 'no words')
      .waitFor();
    await alone(page)
      .getByRole('button', { name: /^Place/ })
      .click();
    const mark = page.locator('.balloon[aria-pressed=true]');
    await mark.waitFor();
    const n = (await mark.textContent())?.trim();
    const other = page.locator('.balloon[aria-pressed=false]').first();
    await other.focus();
    await page.keyboard.press('Enter');
    const chosen = page.locator('.alone li.chosen');
    await expect.poll(() => chosen.filter({ hasText: 'spring clip' }).count()).toBe(0);
    expect(await chosen.count()).toBeGreaterThan(0);
    // A glove hits the drawing, not the number: the nearest place is meant.
    const drawing = page.locator('.map .drawing');
    const [whole, at] = [
      await drawing.boundingBox(),
      await page.locator('.map .balloon', { hasText: new RegExp(`^${n}$`) }).boundingBox(),
    ];
    if (!whole || !at) throw new Error('the map must show the place');
    await drawing.click({ position: { x: at.x - whole.x + 8, y: at.y - whole.y + at.height + 3 } });
    await page.locator('.alone li.chosen', { hasText: 'spring clip' }).waitFor();
  });

  test('for ten minutes a strap pays most; wanted, it is in the plan and keeps the kart from being fit', async () => {
    const page = await openKart9('R. Vale');
    await page.goto(`${served.url}#/weak`);
    await page.getByLabel('Minutes there are').fill('10');
    const row = page.locator('.fittings li', { hasText: /strap round the clevis on rod, clevis pins/i });
    await row.getByText(/takes a single point of severity 1 away/).waitFor();
    await row.getByRole('button', { name: /make it a job$/ }).click();
    expect(await page.getByLabel('Who wants it').inputValue()).toBe('R. Vale');
    await row.getByRole('button', { name: 'Leave it' }).click();
    expect(await page.getByLabel('Who wants it').count()).toBe(0);
    await row.getByRole('button', { name: /make it a job$/ }).click();
    await page.getByRole('button', { name: 'Make it a job', exact: true }).click();
    const made = page
      .locator('.pays')
      .getByRole('status')
      .filter({ hasText: `In the plan: ${STRAP} on rod, clevis pins` });
    await made.waitFor();
    await alone(page).getByText(`${STRAP} wanted as second retention`).first().waitFor();
    // The way back: as if it had never been wanted.
    await made.getByRole('button', { name: 'Take it back' }).click();
    await made.getByRole('button', { name: 'It is not wanted' }).click();
    await row.getByRole('button', { name: /make it a job$/ }).click();
    expect(await made.count()).toBe(0);
    await page.getByRole('button', { name: 'Make it a job', exact: true }).click();
    await made.waitFor();
    await page.reload(); // it is still said, and the step is one tap away
    await made.getByRole('link', { name: 'To the step' }).click();
    await stepCard(page).filter({ hasText: STRAP }).waitFor();
    expect((await served.get<{ verdict: string }>('/api/karts/9/fitness')).verdict).toBe('not fit');
  });

  test('done it is no single point any more, looked at twice the number is lower, never below what takes both', async () => {
    const page = await openKart9('R. Vale');
    await work(page, step => step.joint === PINS && step.action !== 'second-look');
    const once = await stop();
    const other = await openKart9('J. Moor');
    await work(other, step => step.item === PINS && step.action === 'second-look');
    const twice = await stop();
    expect(chance(once)).toBeLessThan(chance(before));
    expect(chance(twice)).toBeLessThan(chance(once));
    const floor = twice.links.find(({ sort, joint }) => sort === 'one hand' && joint === PINS);
    expect(chance(twice)).toBeGreaterThan(floor?.likely?.chance ?? 1);
    await page.goto(`${served.url}#/weak`);
    await page
      .locator('.hazard-head[aria-current]')
      .getByText(twice.top?.words ?? 'no words')
      .waitFor();
    expect(twice.top?.words).not.toBe(before.top?.words);
    expect(await alone(page).count()).toBe(0);
    await page.locator('.alone li', { hasText: /What takes both at once .* rod, clevis pins/ }).waitFor();
  });

  test('what is no number counts as no limit, and is said so', async () => {
    const page = await openKart9('R. Vale');
    for (const [sheet, field, name] of [
      ['weak', 'Money there is', 'money'],
      ['spares', 'Minutes between sessions', 'minutes'],
    ] as const) {
      await page.goto(`${served.url}#/${sheet}`);
      for (const typed of ['-5', '1e99', 'much']) {
        await page.getByLabel(field).fill(typed);
        await page
          .getByRole('alert')
          .getByText(`Expected ${name} as a number of 0 or more, below a million, got “${typed}”`)
          .waitFor();
      }
      await page.getByLabel(field).fill('');
      await expect.poll(() => page.getByRole('alert').count()).toBe(0);
    }
  });

  test('what is not known is named, and axe finds nothing wrong', async () => {
    for (const viewport of [PHONE, LAPTOP])
      for (const colorScheme of ['light', 'dark'] as const) {
        const page = await pages.open(`${served.url}#/weak/cut%20the%20engine`, 'R. Vale', { viewport, colorScheme });
        await page.getByText('A low number is no permission').waitFor();
        await page.locator('.hazard .rows', { hasText: 'kill switch' }).first().waitFor();
        await page.locator('.fittings li').first().waitFor();
        for (const summary of await page.locator('main summary').all()) await summary.click();
        expect(await axe(page)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
      }
  });

  test('it prints with its title block what decides: every hazard, every link that alone hurts somebody, what to fit', async () => {
    const { hazards, seconds } = await served.get<WeakLinksAnswer>('/api/karts/41/weak-links');
    const page = await pages.open(`${served.url}#/weak`, 'R. Vale', { viewport: LAPTOP });
    await page.locator('.fittings li').first().waitFor();
    await page.emulateMedia({ media: 'print' });
    await page.locator('.print-title').getByText('Weak links').waitFor();
    expect(await page.locator('table.hazards tbody tr:visible').count()).toBe(hazards.length);
    const hurts = hazards.filter(({ severity }) => severity <= 2).flatMap(({ singlePoints }) => singlePoints);
    expect(hurts.length).toBeGreaterThan(0);
    expect(await page.locator('.points li:visible').count()).toBe(hurts.length);
    const fit = page.locator('.weak-paper .group table.print tbody tr:visible');
    expect(await fit.count()).toBe(Math.min(12, seconds.chosen.fittings.length));
    expect(await page.getByLabel('Minutes there are').isVisible()).toBe(false);
    const pdf = await page.pdf({ format: 'A4' });
    expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  });
});
