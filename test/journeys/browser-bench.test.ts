/** What the bench asks of the Work page: values with gloves on, a second look that is blind. */
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Fact } from '../../src/book/index.ts';
import type { Kart } from '../../src/kart/index.ts';
import type { Plan, Step } from '../../src/prep/index.ts';
import { axe, browserPages, LAPTOP, smallTargets } from './pages.ts';
import { goodReading, payloadOf, type Served, startBuilt } from './served.ts';
import { done, heading, readingField, stepCard } from './step.ts';

const GAP = 'measure rear hub right/rear track';
const pages = browserPages();
let served: Served;
beforeAll(async () => {
  served = await startBuilt();
});
afterAll(() => served?.stop());

const plan = (): Promise<Plan> => served.get('/api/karts/41/plan');
const stepUrl = (key: string): string => `${served.url}#/work/${encodeURIComponent(key)}`;
const last = async (): Promise<Fact> => {
  const { facts } = await served.get<{ facts: { fact: Fact }[] }>('/api/karts/41/facts');
  return facts.at(-1)?.fact as Fact;
};
const key = (page: Page, name: string) => page.locator('.keypad').getByRole('button', { name, exact: true });
const tap = async (page: Page, ...names: string[]): Promise<void> => {
  for (const name of names) await key(page, name).tap();
};

describe('a value is typed with gloves on', () => {
  test('on a touched device the keys are there, the size of gloves, and axe finds nothing wrong', async () => {
    for (const colorScheme of ['light', 'dark'] as const) {
      const page = await pages.open(stepUrl(GAP), 'R. Vale', { hasTouch: true, colorScheme });
      await page.getByRole('button', { name: 'in', exact: true }).tap();
      await key(page, '7/8').waitFor();
      expect(await smallTargets(page)).toEqual([]);
      expect(await axe(page)).toEqual([]);
      expect(await readingField(page).getAttribute('inputmode')).toBe('none');
      await page.getByRole('button', { name: 'Keyboard instead' }).tap();
      expect(await readingField(page).getAttribute('inputmode')).toBe('text');
      expect(await page.locator('.keypad').count()).toBe(0);
    }
  });

  test('fraction, sign, point and delete are keys, and what is typed is read back as it will be written', async () => {
    const page = await pages.open(stepUrl(GAP), 'R. Vale', { hasTouch: true });
    const written = stepCard(page).locator('output.written');
    await tap(page, '1', '4', '2', 'Point', '5');
    expect(await written.textContent()).toBe('Written: 142.5 mm');
    await tap(page, 'Plus or minus');
    expect(await written.textContent()).toBe('Written: -142.5 mm');
    await tap(page, ...Array<string>(6).fill('Delete the last sign'));
    expect(await readingField(page).inputValue()).toBe('');
    await page.getByRole('button', { name: 'in', exact: true }).tap();
    await tap(page, '5', 'And: a fraction follows', '5', 'Over', '8');
    expect(await written.textContent()).toBe('Written: 5 5/8 in (142.88 mm)'); // 5.625 × 25.4
    await page.reload();
    await written.waitFor();
    expect(await written.textContent()).toBe('Written: 5 5/8 in (142.88 mm)');
    await page.getByRole('button', { name: 'It holds' }).tap();
    await expect.poll(async () => (await last()).kind).toBe('checked');
    expect(await last()).toMatchObject({
      item: 'rear hub right/rear track',
      reading: { text: '5 5/8 in', unit: 'in' },
    });
  });

  test('minutes, laps and hours have their keys while they are filled in, and a keyboard types them too', async () => {
    const page = await pages.open(`${served.url}#/record`, 'R. Vale', { hasTouch: true });
    await page.getByRole('button', { name: 'A run' }).tap();
    const [minutes, laps] = [page.locator('#entry-minutes'), page.locator('#entry-laps')];
    expect(await page.locator('.keypad').count()).toBe(0);
    await minutes.tap();
    await tap(page, '1', '4', 'Point', '5');
    expect(await smallTargets(page)).toEqual([]);
    await laps.tap();
    await tap(page, '9', '1', 'Delete the last sign');
    await page.keyboard.type('2'); // of a real keyboard
    expect(await key(page, 'Point').count()).toBe(0);
    expect([await minutes.inputValue(), await laps.inputValue()]).toEqual(['14.5', '92']);
    expect(await axe(page)).toEqual([]);
    await page.getByRole('button', { name: 'Keyboard instead' }).tap();
    expect(await laps.getAttribute('inputmode')).toBe('numeric');
  });

  test('a keyboard types where the keys are shown, and the keys go on from there', async () => {
    const page = await pages.open(stepUrl('measure rear wheel right/circumference'), 'R. Vale', { viewport: LAPTOP });
    expect(await page.locator('.keypad').count()).toBe(0);
    await page.getByRole('button', { name: 'Keypad' }).click();
    await readingField(page).focus();
    await page.keyboard.type('86');
    await key(page, '4').click();
    expect(await readingField(page).inputValue()).toBe('864');
    await page.keyboard.type('.5');
    expect(await readingField(page).inputValue()).toBe('864.5');
  });
});

describe('what was read before', () => {
  test('stands beside the field in words, drawn small, with its table', async () => {
    const page = await pages.open(stepUrl('measure brake pads rear/thickness'), 'R. Vale');
    const past = stepCard(page).locator('.past');
    await past.getByText(/^Last read /).waitFor();
    expect(await past.locator('svg').count()).toBe(1);
    await past.getByRole('button').click();
    const rows = await past.locator('tbody tr').count();
    expect(rows).toBeGreaterThan(1);
    expect(rows).toBeLessThan(6);
  });

  test('a second look shows nothing of the first result, not even in the last entry; alone, it begins with a walk-round of its own', async () => {
    const kart = await served.get<Kart>('/api/karts/41');
    const first = (await plan()).steps.find(s => s.key === 'torque front wheel left/wheel nuts') as Step;
    const seen = 'second-look front wheel left/wheel nuts';
    const told = await served.post('/api/karts/41/facts', {
      payloads: [{ ...payloadOf(first, kart), reading: '20.7 N·m' }],
      by: 'A. Lone',
      at: new Date(Date.now() - 11 * 60_000).toISOString(),
    });
    expect(told.body.problems ?? []).toEqual([]);
    const page = await pages.open(stepUrl(seen), 'A. Lone');
    await page.getByText('as if nobody had').waitFor();
    await page.getByText('Your first look').waitFor();
    expect(await stepCard(page).locator('.past').count()).toBe(0);
    // Nor does anything else on the sheet, opened or not, seen or printed: not the steps done, not the work list.
    await page.getByRole('button', { name: /^Show \d+ done$/ }).click();
    expect(await page.locator('main').textContent()).not.toContain('20.7');
    // The same hand, and nothing else done since: the walk-round is begun by a press of its own, then the look counts.
    await done(page).click();
    await page
      .getByRole('alert')
      .getByText(/a walk-round of its own later/)
      .waitFor();
    await page.getByRole('button', { name: 'Begin a separate walk-round' }).click();
    await page.getByRole('status').getByText('The walk-round is begun.').waitFor();
    await done(page).click();
    await expect.poll(last).toMatchObject({ kind: 'checked', result: 'pass', secondLook: true, by: 'A. Lone' });
  });
});

/** The page out of sight, and in sight again so many minutes later. */
const leave = (page: Page, minutes: number): Promise<void> =>
  page.evaluate(ms => {
    const turn = (to: string): void => {
      Object.defineProperty(document, 'visibilityState', { value: to, configurable: true });
      document.dispatchEvent(new Event('visibilitychange'));
    };
    turn('hidden');
    const real = Date.now;
    Date.now = () => real() + ms;
    turn('visible');
  }, minutes * 60_000);

describe('work that was interrupted', () => {
  test('after more than two minutes away the last three are shown and the last is touched again before work goes on', async () => {
    const page = await pages.open(`${served.url}#/work`, 'T. Hand');
    for (const what of ['Kart put on: stand', 'Taken off: ', 'Taken off: ']) {
      const step = (await plan()).steps.find(
        s => s.state === 'ready' && (what.startsWith('Kart') ? s.action === 'posture' : s.action === 'take-off'),
      );
      if (step === undefined) continue;
      await page.goto(stepUrl(step.key));
      await heading(page).waitFor();
      const before = (await last()).id;
      await done(page).click();
      await expect.poll(async () => (await last()).id).not.toBe(before);
    }
    await leave(page, 1);
    await stepCard(page).waitFor();
    await leave(page, 14);
    await page.getByRole('heading', { name: 'Touch the last one again' }).waitFor();
    await page.getByText('away for').waitFor();
    expect(await stepCard(page).count()).toBe(0);
    expect(await axe(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    const did = await page.locator('.last-done b').textContent();
    expect(did).toBe(`Taken off: ${((await last()) as { part?: string }).part}`);
    await page.getByRole('button', { name: /I touched it/ }).click();
    await stepCard(page).waitFor();
    await page.reload();
    await page.getByText('the page was opened anew').waitFor();
    await page.getByRole('button', { name: 'It is not so' }).click();
    await page.getByRole('button', { name: 'Strike it' }).click();
    await stepCard(page).waitFor();
    await expect.poll(last).toMatchObject({ kind: 'struck', why: 'not so when touched again' });
  });

  test('what lies open is listed with its time, and nobody signs before naming each', async () => {
    const page = await pages.open(`${served.url}#/work`, 'J. Moor');
    const list = page.locator('details', { hasText: 'Open on the kart' });
    await list.locator('summary').click();
    await list.getByText('rear wheel left is off').waitFor();
    await list.getByText('Tools used and not counted since').waitFor();
    await page.goto(`${served.url}#/fit`);
    await page.getByLabel('Who signs').fill('J. Moor');
    const sign = page.getByRole('button', { name: /^Name what is open first: 0 of/ });
    expect(await sign.isDisabled()).toBe(true);
    expect(await axe(page)).toEqual([]);
    for (const box of await page.locator('.name-each input').all()) await box.check();
    await page.getByRole('button', { name: 'Sign', exact: true }).click();
    await page.getByRole('button', { name: /Sign all the same/ }).click();
    await page.getByText('Signed and in the record.').waitFor();
    await expect.poll(async () => (await last()).kind).toBe('released');
    const signed = (await last()) as { open?: readonly string[] };
    expect(signed.open).toContainEqual(expect.stringContaining('rear wheel left is off'));
    expect(signed.open).toContainEqual(expect.stringContaining('tools not counted since they were used: '));
  });
});

describe('what cannot be done, and what goes wrong', () => {
  test('a step that is put off needs its reason and stands against running; hand work that waits leaves a note', async () => {
    const page = await pages.open(stepUrl('look brake pedal/pedal'), 'R. Vale');
    const step = (await plan()).steps.find(
      s => s.state === 'ready' && s.item !== null && s.joint === null && s.action === 'look' && s.grade === 'safety',
    ) as Step;
    await page.goto(stepUrl(step.key));
    await page.getByRole('heading', { name: step.title }).waitFor();
    await page.getByRole('button', { name: 'Not done' }).click();
    expect(await page.getByRole('button', { name: 'Record it' }).isDisabled()).toBe(true);
    await page.getByRole('button', { name: 'Not now' }).click();
    await page.getByRole('button', { name: 'waiting for a part' }).click();
    expect(await axe(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    await page.getByRole('button', { name: 'Record it' }).click();
    await expect.poll(async () => (await last()).kind).toBe('checked');
    expect(await last()).toMatchObject({ item: step.item, result: 'not possible', why: 'put off: waiting for a part' });
    const { against, unknown } =
      await served.get<Record<'against' | 'unknown', { on: string }[]>>('/api/karts/41/fitness');
    expect([...against, ...unknown].map(({ on }) => on)).toContain(step.item);

    const hand = (await plan()).steps.find(s => s.state === 'ready' && s.action === 'take-off') as Step;
    await page.goto(stepUrl(hand.key));
    await page.getByRole('button', { name: 'Not now' }).click();
    await page.getByLabel('Why not now').fill('no light');
    await page.getByRole('button', { name: 'Record it' }).click();
    await expect.poll(async () => (await last()).kind).toBe('note');
    expect(await last()).toMatchObject({ part: hand.part, text: `Put off, ${hand.title}: no light` });
  });

  test('a fail takes a photo straight from the camera, and is then also a find to mend', async () => {
    const step = (await plan()).steps.find(
      s => s.state === 'ready' && s.item !== null && s.joint === null && s.action === 'look' && s.why !== '',
    ) as Step;
    const page = await pages.open(stepUrl(step.key), 'R. Vale');
    const buffer = await page.screenshot({ type: 'jpeg' });
    await page.getByRole('button', { name: 'It fails' }).click();
    await stepCard(page).getByLabel('What is wrong').fill('hairline at the weld');
    const camera = page.getByLabel('Take a photo');
    expect(await camera.getAttribute('capture')).toBe('environment');
    await camera.setInputFiles({ name: 'now.jpg', mimeType: 'image/jpeg', buffer });
    await page.getByAltText('What goes with the find').waitFor();
    await page.getByRole('button', { name: 'Record the fail' }).click();
    await expect.poll(async () => (await last()).kind).toBe('found');
    expect(await last()).toMatchObject({ part: step.part, item: step.item, defect: 'hairline at the weld' });
    expect((await last()) as { photo?: string }).toMatchObject({ photo: expect.stringMatching(/^[0-9a-f]{64}$/) });
  });

  test('from any step a find can be written down on its part', async () => {
    const page = await pages.open(stepUrl('measure brake pads rear/thickness'), 'R. Vale');
    await page.getByRole('button', { name: 'Write down a find here, with a photo' }).click();
    await page.getByText('On which part').waitFor();
    await page.getByText('brake pads rear').first().waitFor();
  });

  test('the screen stays on while a step is shown, and the step is read out, caution first', async () => {
    const page = await pages.open(`${served.url}#/today`, 'R. Vale');
    await page.evaluate(() => {
      const said: string[] = [];
      Object.assign(globalThis, { said });
      navigator.wakeLock.request = async () => {
        said.push('awake');
        throw new DOMException('battery low', 'NotAllowedError');
      };
      speechSynthesis.speak = words => void said.push(words.text);
    });
    const step = (await plan()).steps.find(s => s.state !== 'done' && s.caution !== null && s.item !== null) as Step;
    await page.evaluate(
      hash => {
        location.hash = hash;
      },
      `#/work/${encodeURIComponent(step.key)}`,
    );
    await page.getByRole('button', { name: 'Read it out' }).click();
    await page.getByRole('button', { name: 'Be quiet' }).waitFor();
    const said = await page.evaluate(() => (globalThis as unknown as { said: string[] }).said);
    expect(said[0]).toBe('awake');
    expect(said.at(-1)).toContain(`Caution. ${step.caution}`.slice(0, 30));
  });
});

describe('the step that comes next', () => {
  test('lies ready beneath the one at hand, with the keys that are chosen there, and is neither seen nor reached by a key', async () => {
    const kart = await served.get<Kart>('/api/karts/41');
    const ready = async (): Promise<readonly Step[]> => (await plan()).steps.filter(s => s.state === 'ready');
    for (let [first] = await ready(); first && first.unit === null; [first] = await ready())
      await served.post('/api/karts/41/facts', { payloads: [payloadOf(first, kart)], by: 'J. Moor' });
    const [next, ...others] = await ready();
    const here = others.find(({ unit }) => unit !== null) as Step;
    const page = await pages.open(stepUrl(here.key), 'R. Vale', { viewport: LAPTOP });
    const beneath = page.locator('.beneath.kept');
    await expect.poll(() => beneath.locator('h1').textContent()).toBe(next?.title);
    await heading(page).filter({ hasText: here.title }).waitFor();
    expect(
      await beneath
        .locator('input')
        .first()
        .evaluate(field => field.checkVisibility()),
    ).toBe(false);
    expect(await axe(page)).toEqual([]);
    await heading(page).focus();
    const reached = new Set<string>();
    for (let presses = 0; presses < 60; presses++) {
      await page.keyboard.press('Tab');
      reached.add(await page.evaluate(() => (document.activeElement?.closest('.beneath') ? 'beneath' : 'elsewhere')));
    }
    expect([...reached]).toEqual(['elsewhere']);
    expect(await beneath.locator('.keypad').count()).toBe(0);
    await page.getByRole('button', { name: 'Keypad' }).click();
    await expect.poll(() => beneath.locator('.keypad').count()).toBe(1);
    await readingField(page).fill(goodReading(here, kart) ?? '');
    await done(page).click();
    await heading(page)
      .filter({ hasText: next?.title ?? '' })
      .waitFor();
    await stepCard(page).locator('.keypad').waitFor();
    expect(await readingField(page).inputValue()).toBe('');
  });
});
