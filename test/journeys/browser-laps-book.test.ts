/** Laps of the page written into the book, and what is asked of them: two laps compared, a lap predicted. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Kept } from '../../src/app/index.ts';
import { LOGS, LOOKS, servedWithKart } from './laps-page.ts';
import { axe, browserPages, sent, smallTargets } from './pages.ts';
import type { Served } from './served.ts';

const pages = browserPages();
let served: Served;
beforeAll(async () => {
  served = await servedWithKart(pages, '21, 22, 23, 24, 25, 28');
});
afterAll(() => served?.stop());

const open = (device = {}) => pages.open(`${served.url}#/laps`, 'R. Vale', device);

/** Each test has a device of its own, which goes with what it did not send: the next ones ask the server's book for it. */
describe('into the book', () => {
  test('a log is a run with its laps: the parts are older by it, the lap marked is no best, and two taps take it back', async () => {
    const page = await open();
    const facts = async () =>
      (await served.get<{ facts: Kept[] }>('/api/karts/7/facts?after=0')).facts.map(({ fact }) => fact);
    await page.locator('#logs').setInputFiles(`${LOGS}/K1_10hz.csv`);
    await page.getByLabel('Lap 6 counts').uncheck();
    await page.getByText('Move it, add sectors').click();
    await page.getByRole('button', { name: 'Add a sector' }).click();
    await page.getByText('Best sectors together').waitFor();
    await page.getByRole('combobox', { name: 'Track' }).fill('Hollow Lane');
    await page.getByRole('textbox', { name: 'Session' }).fill('Practice 1');
    await page.getByRole('button', { name: 'Write 8 laps into the book' }).click();
    await page.getByRole('heading', { name: 'The parts are 6 min and 8 laps older' }).waitFor();
    const written = (await facts()).slice(-2);
    expect(written.map(({ kind }) => kind)).toEqual(['ran', 'laps']);
    expect(written[0]).toMatchObject({ minutes: 6, laps: 8, track: 'Hollow Lane', session: 'Practice 1' });
    expect(written[1]).toMatchObject({ laps: 8, name: 'K1_10hz.csv', gates: [{}, {}] });
    await page.getByText('Hours of each part').click();
    await page.locator('tr', { hasText: 'brake pedal' }).first().getByText('6 min').waitFor();
    expect(await axe(page)).toEqual([]);
    const session = page.getByRole('region', { name: 'Sessions with laps' });
    await session.getByText('› Practice 1').click();
    await session.getByText('Does not count').waitFor();

    // The same file again is noticed before it is written, and timed by the gates of its track.
    await page.locator('#logs').setInputFiles(`${LOGS}/K1_10hz.csv`);
    await page.getByText(/^This very file is in the book since/).waitFor();
    await page.getByText('as at Hollow Lane').waitFor();
    await page.getByRole('button', { name: 'Put away K1_10hz.csv' }).click();

    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Strike all 2' }).click();
    await page.getByText('none yet').waitFor();
    await sent(page);
  });

  test('a log of a run that was written down already is asked about, and goes to that run without hours', async () => {
    await served.post('/api/karts/7/facts', {
      by: 'R. Vale',
      payloads: [{ kind: 'ran', minutes: 7, laps: 8, session: 'Practice 2' }],
    });
    const page = await open();
    await page.locator('#logs').setInputFiles(`${LOGS}/K1_05hz.csv`);
    await page.getByRole('button', { name: /^Write 8 laps/ }).click();
    await page.getByText(/Choose it here, so that its hours count once/).waitFor();
    await page.getByLabel('Which run it was').selectOption({ index: 1 });
    await page.getByRole('button', { name: /^Write 8 laps/ }).click();
    await page.getByText('The hours were counted before').waitFor();
    await page.getByRole('region', { name: 'Sessions with laps' }).getByText('Practice 2').waitFor();
    await sent(page);
  });

  test('times of a stopwatch are laps too; one that is none is named, and nothing is lost by a reload', async () => {
    const page = await open();
    await page.getByText('Times of a stopwatch').click();
    const field = page.getByLabel('Lap times, in the order they were driven');
    await field.fill('52.31 52.40 5:99');
    await page.getByText(/got “5:99”/).waitFor();
    await page.reload();
    await field.fill('52.31 52.40 1:02.5');
    await page.getByText('52.31 · 52.40 · 1:02.50').waitFor();
    await page.getByRole('textbox', { name: 'Session' }).fill('Heat 9');
    await page.getByRole('button', { name: 'Write 3 laps into the book' }).click();
    await page.getByRole('heading', { name: /3 laps older/ }).waitFor();
    await sent(page);
  });
});

test('two laps of a kept log: where one gained and lost adds up to their difference, and everybody can read it', async () => {
  for (const { viewport, colorScheme } of LOOKS) {
    const page = await pages.open(`${served.url}#/laps/compare`, 'R. Vale', { viewport, colorScheme });
    await page.getByText(/^The second lap was 0\.\d\d s faster than the first\.$/).waitFor();
    const cells = await page
      .getByRole('region', { name: 'Table of the pieces of the track' })
      .locator('tbody tr td:nth-child(2)')
      .allTextContents();
    const seconds = cells.map(text => Number.parseFloat(text.replace('−', '-')));
    const [whole = 0, ...pieces] = seconds.toReversed();
    expect(pieces.length).toBeGreaterThan(5);
    const rounded = 0.005 * seconds.length;
    expect(Math.abs(pieces.reduce((sum, each) => sum + each, 0) - whole)).toBeLessThan(rounded);
    await page.getByText(/^Aside \d\.\d\d g, braking \d\.\d\d g, drive \d\.\d\d g/).waitFor();
    expect(await axe(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
    if (process.env.LAPS_PICTURES)
      await page.screenshot({ path: `${process.env.LAPS_PICTURES}/compare-${viewport.width}.png`, fullPage: true });
  }
});

test('the traces are moved and drawn nearer by buttons and keys, all of them together, and paper holds the whole lap', async () => {
  for (const { viewport, colorScheme } of LOOKS) {
    const page = await pages.open(`${served.url}#/laps/compare`, 'R. Vale', { viewport, colorScheme });
    const shown = page.getByRole('status').filter({ hasText: 'Shown:' });
    const strip = page.getByRole('region', { name: /^Speed and time: arrow keys move/ });
    const press = (name: string) => page.getByRole('button', { name, exact: true }).click();
    const says = (text: RegExp) => shown.filter({ hasText: text }).waitFor();
    await says(/the whole lap, \d+ m\.$/);
    for (let times = 0; times < 2; times++) await press('Nearer');
    const part = async () => ((await shown.textContent()) ?? '').match(/\d+/g)?.map(Number) ?? [];
    const [from = 0, to = 0, length = 0] = await part();
    expect(Math.abs(to - from - length / 4)).toBeLessThanOrEqual(1);
    expect(Math.abs((from + to) / 2 - length / 2)).toBeLessThanOrEqual(3);
    await press('Right');
    await press('Right');
    const on = Math.round(from + length / 4);
    await says(new RegExp(`Shown: (${on - 1}|${on}|${on + 1}) to `));
    await strip.focus();
    await page.keyboard.press('ArrowLeft');
    await shown.filter({ hasNotText: `Shown: ${(await part())[0]} ` }).waitFor();
    expect(await axe(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    await page.emulateMedia({ media: 'print' });
    expect(
      await page
        .locator('.trace-strip:visible')
        .evaluateAll(all => all.map(each => each.scrollWidth - each.clientWidth)),
    ).toEqual([0]);
    await page.emulateMedia({ media: 'screen' });
    await page.keyboard.press('-');
    await page.keyboard.press('+');
    await says(/of \d+ m/);
    await page.keyboard.press('Home');
    await says(/the whole lap/);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
  }
});

test('a lap predicted: every pair in the box, what is level in words, what is guessed by name, and everybody can read it', async () => {
  for (const { viewport, colorScheme } of LOOKS) {
    const page = await pages.open(`${served.url}#/laps/predict`, 'R. Vale', { viewport, colorScheme });
    const teeth = page.getByLabel('Teeth that were on, front/rear');
    const box = page.getByRole('region', { name: 'Sprockets in the box' });
    await teeth.fill('seventeen');
    await teeth.press('Enter');
    await page.getByText('got "seventeen"').waitFor();
    await teeth.fill('17/23');
    await teeth.press('Enter');
    await box.waitFor();
    if (process.env.LAPS_PICTURES)
      await page.screenshot({ path: `${process.env.LAPS_PICTURES}/predict-${viewport.width}.png`, fullPage: true });
    const rows = await box.locator('tbody tr').allTextContents();
    expect(rows).toHaveLength(6);
    const level = rows.filter(text => text.endsWith('level')).map(text => text.slice(3, 5));
    expect(level).toContain('23');
    expect(level).not.toContain('28');
    const [last, ...others] = level.toSorted().toReversed();
    await page.getByText(`${others.toReversed().join(', ')} or ${last} teeth: level`).waitFor();
    await page.getByText(/^Guessed: .*time of a shift/).waitFor();
    expect(await page.getByRole('region', { name: 'What a change is worth' }).locator('tbody tr').count()).toBe(8);
    expect(await axe(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
  }
});

test('a prediction can be cancelled while it is worked out, and asked again', async () => {
  const page = await pages.open(`${served.url}#/laps`, 'R. Vale', {});
  await page.context().route('**/api/files/*', () => undefined); // the log does not come
  await page.getByRole('link', { name: 'Predict' }).click();
  await page.getByText('Reading the log …').waitFor();
  await page.getByRole('button', { name: 'Cancel' }).click();
  await page.getByText('Cancelled. Nothing of it was kept.').waitFor();
  await page.context().unrouteAll();
  await page.getByRole('button', { name: 'Predict again' }).click();
  await page.getByRole('region', { name: 'Sprockets in the box' }).waitFor();
});
