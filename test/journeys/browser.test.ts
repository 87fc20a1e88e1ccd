import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { FitAnswer } from '../../src/app/index.ts';
import type { State } from '../../src/book/index.ts';
import type { Kart } from '../../src/kart/index.ts';
import type { Plan, Step } from '../../src/prep/index.ts';
import { axe, axeInBothThemes, browserPages, type Device, LAPTOP, PHONE } from './pages.ts';
import { goodReading, payloadOf, type Served, startBuilt } from './served.ts';
import { done, heading, readingField, stepCard } from './step.ts';

const SHEETS = ['today', 'work', 'kart', 'record', 'fit'] as const;

const pages = browserPages();
let served: Served;

beforeAll(async () => {
  served = pages.behind(await startBuilt());
});
afterAll(() => served?.stop());

const open = (who: string, hash: string, device: Device = {}): Promise<Page> =>
  pages.open(`${served.url}${hash}`, who, device);

const plan = (): Promise<Plan> => served.get('/api/karts/41/plan');
const fitness = (): Promise<FitAnswer> => served.get('/api/karts/41/fitness');
const toDo = (p: Plan): Step[] => p.steps.filter(s => s.state !== 'done');
const stepHash = (step: Step): string => `#/work/${encodeURIComponent(step.key)}`;
const number = (page: Page) => stepCard(page).locator('header');

/** Says that the step on the page is done, with a reading that holds where one is asked and none is typed yet. */
async function press(page: Page): Promise<void> {
  const field = readingField(page);
  if ((await field.count()) > 0 && (await field.inputValue()) === '') {
    const key = decodeURIComponent(new URL(page.url()).hash.replace('#/work/', ''));
    const [kart, { steps }] = await Promise.all([served.get<Kart>('/api/karts/41'), plan()]);
    const step = steps.find(s => s.key === key);
    await field.fill((step && goodReading(step, kart)) ?? '');
  }
  await done(page).click();
}

/** Does everything that is left, as two people with their own clipboard would; stops before the last `keep` steps. */
async function finishAllBut(keep: number): Promise<void> {
  const kart = await served.get<Kart>('/api/karts/41');
  for (let round = 0; round < 10; round++) {
    const left = toDo(await plan());
    const now = left.slice(0, left.length - keep);
    if (now.length === 0) return;
    for (let i = 0; i < now.length; ) {
      const second = now[i]?.action === 'second-look';
      let end = i;
      while (end < now.length && (now[end]?.action === 'second-look') === second) end++;
      const payloads = now.slice(i, end).map(step => payloadOf(step, kart));
      const answer = await served.post('/api/karts/41/facts', { payloads, by: second ? 'J. Moor' : 'R. Vale' });
      expect(answer.body.problems ?? []).toEqual([]);
      i = end;
    }
  }
  throw new Error('the plan did not come to its end in ten rounds');
}

describe('at the bench, on a phone', () => {
  test('the name is asked once, what is due is shown with its reason, and the work begins with one step', async () => {
    const page = await open('R. Vale', '');
    await page.getByText('Not fit', { exact: true }).waitFor();
    await page.getByRole('link', { name: 'Go on with the work' }).click();
    await heading(page).waitFor();
    expect(await stepCard(page).count()).toBe(1);
    await page.reload();
    await heading(page).waitFor();
    expect(await page.getByRole('dialog').count()).toBe(0);
  });

  test('a step that is done leads to the next that can be done, and a reload in the middle keeps the place', async () => {
    const page = await open('R. Vale', '#/work');
    for (let i = 0; i < 3; i++) {
      const before = toDo(await plan()).length;
      const said = await heading(page).textContent();
      await press(page);
      await page.waitForFunction(old => document.querySelector(':not(.beneath) > .step h1')?.textContent !== old, said);
      expect(toDo(await plan()).length).toBeLessThan(before + 1);
    }
    const where = await number(page).textContent();
    const what = await heading(page).textContent();
    await page.reload();
    await page.getByRole('button', { name: /I touched it/ }).click();
    await heading(page).waitFor();
    expect(await heading(page).textContent()).toBe(what);
    expect(await number(page).textContent()).toBe(where);
    await page.goto('about:blank');
    await page.goto(served.url); // the address without a place: the device knows it
    await page.getByRole('button', { name: /I touched it/ }).click();
    await heading(page).waitFor();
    expect(await heading(page).textContent()).toBe(what);
  });

  test('of two quick taps on the way the second counts, however soon it comes', async () => {
    const page = await open('R. Vale', '#/today');
    for (let wait = 0; wait < 40; wait += 2) {
      await page.evaluate(async ms => {
        location.hash = '#/kart';
        await new Promise(done => setTimeout(done, ms));
        location.hash = '#/record';
      }, wait);
      await page.getByRole('heading', { name: 'The record', exact: true }).waitFor({ timeout: 5000 });
      expect(new URL(page.url()).hash).toBe('#/record');
      await page.evaluate(() => {
        location.hash = '#/today';
      });
      await page.getByText('Not fit', { exact: true }).waitFor();
    }
  });

  test('the last entry can be undone with two taps, and the step is to do again', async () => {
    const page = await open('J. Moor', '#/work');
    const what = await heading(page).textContent();
    const left = toDo(await plan()).length;
    await press(page);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Strike it' }).click();
    await page.getByRole('button', { name: 'Undo' }).waitFor({ state: 'detached' });
    expect(toDo(await plan()).length).toBe(left);
    await page.goto(`${served.url}#/today`);
    await page.goto(`${served.url}#/record`);
    await page.getByText('undone at the bench').first().waitFor();
    expect(what).not.toBe('');
  });

  test('two people on the same plan see each other’s ticks without reloading', async () => {
    const step = toDo(await plan()).find(s => s.state === 'ready') as Step;
    const mine = await open('R. Vale', stepHash(step));
    const theirs = await open('J. Moor', stepHash(step), { viewport: LAPTOP });
    await press(mine);
    await theirs.getByText('This step is done.').or(theirs.getByText('no longer in the plan')).first().waitFor();
    const other = toDo(await plan()).find(s => s.state === 'ready') as Step;
    await mine.goto(`${served.url}${stepHash(other)}`);
    await theirs.goto(`${served.url}${stepHash(other)}`);
    await press(theirs);
    await mine.getByText('This step is done.').or(mine.getByText('no longer in the plan')).first().waitFor();
  });

  test('a value far outside is asked again, keeps what was said over a reload, and can be recorded so', async () => {
    const kart = await served.get<Kart>('/api/karts/41');
    const step = toDo(await plan()).find(
      s => s.state === 'ready' && s.action === 'measure' && s.item !== null && kart.items[s.item]?.measure?.plausible,
    ) as Step;
    const page = await open('R. Vale', stepHash(step));
    await page.getByRole('button', { name: 'It fails' }).click();
    await readingField(page).fill('99999');
    await stepCard(page).getByLabel('What is wrong').fill('slipped');
    await page.getByRole('button', { name: 'Record the fail' }).click();
    await page.getByRole('alert').getByText('Expected').waitFor();
    expect(await readingField(page).inputValue()).toBe('99999');
    await page.reload();
    await readingField(page).waitFor();
    expect(await readingField(page).inputValue()).toBe('99999');
    await page.getByRole('button', { name: 'Record the fail' }).click();
    await page.getByRole('button', { name: /as I said/ }).click();
    await page.getByRole('alert').waitFor({ state: 'detached' });
    const state = await stateOf();
    expect(state.items[step.item as string]?.fail?.why).toBe('slipped');
  });

  test('a value that is no quantity is refused in words and stays in the field', async () => {
    const kart = await served.get<Kart>('/api/karts/41');
    const step = toDo(await plan()).find(s => s.state === 'ready' && s.action === 'measure') as Step;
    const page = await open('R. Vale', stepHash(step));
    await readingField(page).fill('about a hand');
    await press(page);
    await page.getByRole('alert').waitFor();
    expect(await readingField(page).inputValue()).toBe('about a hand');
    await readingField(page).fill(goodReading(step, kart) ?? '');
    await press(page);
    await page.getByRole('alert').waitFor({ state: 'detached' });
  });

  test('a wrong entry is struck with a reason and stays to be seen', async () => {
    const page = await open('R. Vale', '#/record');
    await page
      .getByRole('button', { name: /^Strike:/ })
      .first()
      .click();
    await page.getByLabel('Why it is wrong').fill('wrong side');
    await page.getByRole('button', { name: 'Strike it' }).click();
    await page.getByText('Struck by R. Vale: wrong side').waitFor();
    expect(await page.locator('li.struck s').count()).toBeGreaterThan(0);
  });
});

/** Made from the exported facts by nobody but the server: asked through its own answers. */
async function stateOf(): Promise<Pick<State, 'items'>> {
  const { facts } = await served.get<{
    facts: { fact: { kind: string; item?: string; result?: string; why?: string } }[];
  }>('/api/karts/41/facts');
  const items: Record<string, { readings: []; fail?: { why: string } }> = {};
  for (const { fact } of facts)
    if (fact.kind === 'checked' && fact.result === 'fail' && fact.item)
      items[fact.item] = { readings: [], fail: { why: fact.why ?? '' } };
  return { items } as unknown as Pick<State, 'items'>;
}

describe('to the end', () => {
  test('a worked plan ends fit, a person signs, and what was open is kept with the name', async () => {
    await finishAllBut(2);
    const page = await open('J. Moor', '#/work');
    for (let i = 0; i < 2; i++) {
      const said = await heading(page).textContent();
      await press(page);
      await page.waitForFunction(old => document.querySelector(':not(.beneath) > .step h1')?.textContent !== old, said);
    }
    await page.getByRole('heading', { name: 'All steps are done' }).waitFor();
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('All steps are done');
    expect(await axeInBothThemes(page)).toEqual([]);
    await page.getByText('a person looks at the kart and signs').waitFor();
    await page.getByRole('link', { name: 'See whether it is fit' }).click();
    await page.getByText('Fit', { exact: true }).first().waitFor();
    expect((await fitness()).against).toEqual([]);
    await page.getByLabel('Who signs').fill('J. Moor');
    await page.getByLabel(/^not counted since they were used: /).check(); // the last count came before the last tool
    await page.getByRole('button', { name: 'Sign', exact: true }).click();
    await page.getByText('Signed and in the record.').waitFor();
    expect(await axeInBothThemes(page)).toEqual([]);
    await page.goto(`${served.url}#/work`);
    await page.getByText(/^Signed by J. Moor as fit/).waitFor();
    expect(await axeInBothThemes(page)).toEqual([]);
  });

  test('a fail with its defect makes the kart not fit, and signing then asks again with what stands open', async () => {
    const kart = await served.get<{ items: Record<string, { grade: string; joint?: string }> }>('/api/karts/41');
    const [item] = Object.entries(kart.items).find(([, i]) => i.grade === 'safety' && i.joint === undefined) ?? [''];
    await served.post('/api/karts/41/facts', {
      payloads: [{ kind: 'checked', item, result: 'fail', why: 'hairline crack' }],
      by: 'R. Vale',
    });
    const page = await open('J. Moor', '#/fit');
    await page.getByText('Not fit', { exact: true }).waitFor();
    await page
      .getByText(/hairline crack/)
      .first()
      .waitFor();
    await page.getByRole('button', { name: 'Sign', exact: true }).click();
    await page.getByRole('button', { name: /Sign all the same/ }).waitFor();
    expect((await fitness()).verdict).toBe('not fit');
  });
});

describe('for everyone', () => {
  test('axe finds nothing wrong on any sheet, light and dark, narrow and wide', async () => {
    for (const [viewport, colorScheme] of [
      [{ width: 360, height: 740 }, 'light'],
      [LAPTOP, 'light'],
      [PHONE, 'dark'],
    ] as const) {
      const page = await open('R. Vale', '', { viewport, colorScheme });
      for (const sheet of SHEETS) {
        await page.goto(`${served.url}#/${sheet}`);
        await page.locator('main h1').first().waitFor();
        const found = await axe(page);
        expect(found, `${sheet} ${viewport.width} ${colorScheme}`).toEqual([]);
        const wide = await page.evaluate(() => document.documentElement.scrollWidth);
        expect(wide, `${sheet} at ${viewport.width}`).toBeLessThanOrEqual(viewport.width);
      }
    }
  });

  test('what is pressed at the bench is at least 56 px high', async () => {
    const page = await open('R. Vale', '#/work');
    const low = await page
      .locator('main button, main a.button, .steps a, nav.sheets a')
      .evaluateAll(all =>
        all.filter(e => e.getClientRects().length > 0 && e.getBoundingClientRect().height < 56).map(e => e.outerHTML),
      );
    expect(low).toEqual([]);
  });

  test('the work list and the release sheet print on plain paper, with title and room to sign', async () => {
    const page = await open('R. Vale', '#/work', { viewport: LAPTOP });
    await page.emulateMedia({ media: 'print' });
    await page.locator('table.print').waitFor();
    expect(await page.locator('nav.sheets').isVisible()).toBe(false);
    for (const format of ['A4', 'Letter'] as const) {
      const pdf = await page.pdf({ format, preferCSSPageSize: false });
      expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
    }
    await page.emulateMedia({ media: 'screen' });
    await page.goto(`${served.url}#/fit`);
    await page.emulateMedia({ media: 'print' });
    await page.getByText('Signature of the person who decides').waitFor();
    expect(await page.getByRole('button', { name: 'Sign', exact: true }).isVisible()).toBe(false);
    expect((await page.pdf({ format: 'A4' })).length).toBeGreaterThan(1000);
  });
});
