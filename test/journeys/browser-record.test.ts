import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { DueAnswer, FitAnswer } from '../../src/app/index.ts';
import type { Kart } from '../../src/kart/index.ts';
import type { Plan, Step } from '../../src/prep/index.ts';
import { browserPages } from './pages.ts';
import { type Served, startBuilt } from './served.ts';

const pages = browserPages();
let served: Served;
beforeAll(async () => {
  served = pages.behind(await startBuilt());
});
afterAll(() => served?.stop());

const open = (who: string, hash: string): Promise<Page> => pages.open(`${served.url}${hash}`, who);
const plan = (): Promise<Plan> => served.get('/api/karts/41/plan');
const fitness = (): Promise<FitAnswer> => served.get('/api/karts/41/fitness');
const toDo = (p: Plan): Step[] => p.steps.filter(s => s.state !== 'done');
const stepHash = (step: Step): string => `#/work/${encodeURIComponent(step.key)}`;

describe('what belongs to no step', () => {
  test('what was moved is said as set, and its reading and joints are due again', async () => {
    const kart = await served.get<Kart>('/api/karts/41');
    const { steps } = await plan();
    const step = steps.find(s => s.key === 'measure rear hub right/rear track') as Step;
    const page = await open('R. Vale', stepHash(step));
    await page.getByRole('button', { name: 'I had to set it' }).click();
    await page.getByText(/Due again: this reading; .*pinch bolts/i).waitFor();
    await page.getByLabel('What it is set to').fill('5 5/8 in');
    await page.getByRole('button', { name: 'I set it to that' }).click();
    await page.locator('.undo', { hasText: 'set, 5 5/8 in' }).waitFor();
    const left = toDo(await plan());
    expect(left.some(s => s.key === step.key)).toBe(true);
    const opened = kart.items[step.item as string]?.opens ?? [];
    expect(opened.length).toBeGreaterThan(0);
    for (const joint of opened) expect(left.some(s => s.joint === joint)).toBe(true);
  });

  test('a run logged on the phone makes what is due after running due, and a wrong number is told at its field', async () => {
    const page = await open('R. Vale', '#/record');
    await page.getByRole('button', { name: 'A run' }).click();
    await page.getByLabel('Minutes the engine ran').fill('soon');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.locator('.entry-field', { hasText: 'Minutes' }).getByRole('alert').getByText('Expected').waitFor();
    await page.locator('[aria-invalid="true"]:focus').waitFor(); // in sight, though the button stands far below
    await page.getByLabel('Minutes the engine ran').fill('300');
    await page.reload(); // a locked phone loses nothing
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByRole('alert').getByText('240 min').waitFor(); // far outside asks again
    await page.getByLabel('Minutes the engine ran').fill('12');
    await page.getByLabel('Laps').fill('11');
    await page.getByLabel('It was wet').check();
    await page.getByLabel('Impact').selectOption('knock');
    await page.getByLabel('Where it was hit').selectOption('front left');
    await page.getByLabel('Session').fill('heat 2');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText(/Written: Ran 12 min, 11 laps, wet, knock at the front left/).waitFor();
    const { due } = await served.get<DueAnswer>('/api/karts/41/due');
    expect(due.filter(d => d.cause === 'impact').length).toBeGreaterThan(0);
    expect(due.filter(d => d.cause === 'wet').length).toBeGreaterThan(0);
    await page.goto(`${served.url}#/today`);
    await page
      .getByText(/knock at the front left/i)
      .first()
      .waitFor({ state: 'attached' });
  });

  test('a find with its photo stands against running until it is mended', async () => {
    const page = await open('J. Moor', '#/record');
    const photo = await page.screenshot({ type: 'jpeg' });
    await page.getByRole('button', { name: 'A defect found' }).click();
    await page.getByLabel('On which part: some letters').fill('push rod');
    await page.getByRole('button', { name: /^brake push rod/ }).click();
    await page.getByLabel('What is wrong').fill('clevis worn oval');
    await page.getByLabel('Take a photo').setInputFiles({ name: 'find.jpg', mimeType: 'image/jpeg', buffer: photo });
    await page.getByAltText('What goes with the find').waitFor();
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('Written: Found on brake push rod: clevis worn oval (safety)').waitFor();
    const shown = page.getByAltText('clevis worn oval');
    await shown.waitFor();
    await page.waitForFunction(() => [...document.images].every(i => i.complete && i.naturalWidth > 0));
    await page.goto(`${served.url}#/fit`);
    const reason = page.getByText(/clevis worn oval/).first();
    await reason.waitFor();
    expect((await fitness()).against.map(r => r.text).join()).toContain('clevis worn oval');

    await page.goto(`${served.url}#/record`);
    await page.getByRole('button', { name: 'A defect mended' }).click();
    await page
      .getByRole('button', { name: /clevis worn oval/ })
      .first()
      .click();
    await page.getByLabel('How it was mended').fill('new clevis and clip');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('Written: Mended: new clevis and clip').waitFor();
    expect((await fitness()).against.map(r => r.text).join()).not.toContain('clevis worn oval');
  });

  test('a failure is talked through in four steps, and what else of its kind there is becomes due in one press', async () => {
    const page = await open('R. Vale', '#/record');
    await page.getByRole('button', { name: 'A failure while it ran' }).click();
    await page.getByText('1 of 4: What failed').waitFor();
    await page.getByRole('button', { name: 'Next' }).click();
    await page.locator('.entry-field', { hasText: 'Which part' }).getByRole('alert').getByText('Expected').waitFor();
    await page.getByLabel('Which part: some letters').fill('tie rod left');
    await page.getByRole('button', { name: /^tie rod left/ }).click();
    await page.getByRole('button', { name: /^lock nuts/ }).click();
    await page.getByLabel('What was seen').fill('nut loose, toe gone');
    await page.getByRole('button', { name: 'Next' }).click();
    await page.getByText('h on record, taken when nothing is typed').waitFor();
    await page.reload(); // a locked phone finds its step again
    await page.getByText('2 of 4: Where and when').waitFor();
    await page.getByLabel('Lap', { exact: true }).fill('4');
    await page.getByRole('button', { name: 'Next' }).click();
    await page.getByLabel('steer: no steering').check();
    await page.getByLabel('It stopped the kart').check();
    await page.getByRole('button', { name: 'Next' }).click();
    await page.getByLabel('What would have held it').fill('thread-locker and a mark');
    await page.getByRole('button', { name: 'Write it down' }).click();
    await page.getByText('Written: Failed while it ran: tie rod left/lock nuts, nut loose, toe gone').waitFor();

    const list = page.getByRole('region', { name: 'What else of this kind' });
    await list.getByText('tie rod right: lock nuts').waitFor();
    // On paper it is a sheet of its own to tick off, without buttons.
    await page.emulateMedia({ media: 'print' });
    expect(await list.getByText('tie rod right: lock nuts').isVisible()).toBe(true);
    expect(await list.locator('.side:visible', { hasText: '☐' }).count()).toBeGreaterThan(0);
    expect(await list.getByRole('button').count()).toBe(0);
    await page.emulateMedia({ media: 'screen' });
    await list.getByRole('button', { name: /^Make a look at these \d due/ }).click();
    await list.getByText(/^\d+ looks are due now/).waitFor();
    const { due } = await served.get<DueAnswer>('/api/karts/41/due');
    expect(due.filter(d => d.cause === 'asked').map(d => d.part)).toContain('tie rod right');
    expect(due.find(d => d.item === 'tie rod left/lock nuts')?.cause).toBe('joint open');
    await list.getByRole('button', { name: 'Close' }).click();
    await list.waitFor({ state: 'detached' });
  });

  test('every other entry writes its fact: an event, an opened joint, a set-up change, a note', async () => {
    const page = await open('R. Vale', '#/record');
    const write = async (title: string, typed: Readonly<Record<string, string>>, said: RegExp): Promise<void> => {
      await page.getByRole('button', { name: title }).click();
      for (const [label, text] of Object.entries(typed)) await page.getByLabel(label, { exact: true }).fill(text);
      if (title === 'A joint opened') {
        await page.getByLabel('Which joint: some letters').fill('chain guard');
        await page
          .getByRole('button', { name: /^chain guard/ })
          .first()
          .click();
      }
      await page.getByRole('button', { name: 'Write it down' }).click();
      await page.getByText(said).first().waitFor();
    };
    await write(
      'An event to come',
      { Name: 'Far away round', 'First time on the track': '2099-05-01T09:00', 'Running expected': '45 min' },
      /Written: Event Far away round, 1 May 2099, 45 min/,
    );
    await write('A joint opened', { Why: 'to look beneath' }, /Written: .*chain guard.* opened/i);
    await write('A set-up change', { What: 'main jet', 'To what': '168' }, /Written: Set-up: main jet 168/);
    await write('A note', { 'What to remember': 'bring the rain tyres' }, /Written: Note: bring the rain tyres/);
  });
});
