/** From an empty folder to a plan in four questions, with a server and without. */
import type { Page } from 'playwright-core';
import { afterEach, expect, test } from 'vitest';
import type { Fact } from '../../src/book/index.ts';
import { axe, browserPages, LAPTOP, PHONE, sent, smallTargets } from './pages.ts';
import { type Served, startBuilt } from './served.ts';
import { stepCard } from './step.ts';

const pages = browserPages();
let served: Served;
afterEach(async () => {
  await served?.kill(); // its pages are still open
  await served?.stop();
});

const heading = (page: Page, name: string | RegExp) => page.getByRole('heading', { name, level: 1 }).waitFor();
const press = (page: Page, name: string | RegExp) => page.getByRole('button', { name }).click();
const looksRight = async (page: Page, width: number): Promise<void> => {
  expect(await axe(page)).toEqual([]);
  expect(await smallTargets(page)).toEqual([]);
  expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(width);
};
const factsOf = async (kart: string): Promise<readonly Fact[]> =>
  (await served.get<{ facts: { fact: Fact }[] }>(`/api/karts/${encodeURIComponent(kart)}/facts`)).facts.map(
    ({ fact }) => fact,
  );

test('an empty folder leads to four questions and a plan, pressed through with what stands there', async () => {
  served = await startBuilt(['serve']);
  for (const [viewport, colorScheme, kart] of [
    [PHONE, 'light', 'My kart'],
    [LAPTOP, 'dark', 'My kart 2'],
  ] as const) {
    const page = await pages.bare(kart === 'My kart' ? served.url : `${served.url}#/start`, { viewport, colorScheme });
    await page.getByRole('dialog').getByLabel('Your name').fill('R. Vale');
    const began = Date.now();
    let presses = 0;
    const go = async (name: string | RegExp): Promise<void> => {
      presses++;
      await press(page, name);
    };
    await go('That is me');
    await heading(page, 'What kind of kart is it?');
    await looksRight(page, viewport.width);
    await go(/^Six-speed gearbox/i);
    await heading(page, 'What is it called?');
    await go('Next');
    await heading(page, 'What comes next?');
    await looksRight(page, viewport.width);
    await go('Next');
    await heading(page, 'How long since the last rebuild?');
    await go('I do not know the hours');
    await heading(page, `The plan: ${kart}`);
    console.log(
      `First run, ${viewport.width} wide: ${presses} presses to the plan, ${((Date.now() - began) / 1000).toFixed(1)} s with the looks of axe in between.`,
    );
    await page.getByText('The hours are not known: everything that is renewed by hours is due.').waitFor();
    await looksRight(page, viewport.width);
    expect(presses).toBeLessThanOrEqual(6);
    await page.getByRole('link', { name: 'Begin with the first step' }).click();
    await stepCard(page).waitFor();
    await sent(page);
    expect((await factsOf(kart)).map(({ kind }) => kind)).toEqual(['kart filed', 'event']);
  }
});

test('nonsense is refused where it was typed, hours become facts that can be taken back, and none of it needs the server', async () => {
  served = await startBuilt(['serve']);
  const page = await pages.open(served.url, 'R. Vale');
  await sent(page);
  await page.evaluate(async () => {
    await navigator.serviceWorker.ready;
    while (navigator.serviceWorker.controller === null) await new Promise(done => setTimeout(done, 20));
  });
  await page.getByRole('button', { name: /^Six-speed gearbox/i }).waitFor(); // the library is here
  await served.kill();
  await page.reload();
  await page.getByText('The server does not answer.').waitFor();
  await press(page, /^Six-speed gearbox/i);
  const refused = (text: string) => page.getByRole('alert').getByText(text).waitFor();

  await page.getByLabel('Name or number').fill('  ');
  await press(page, 'Next');
  await refused('Expected a name for the kart, got none.');
  await page.getByLabel('Name or number').fill('7');
  await press(page, 'Next');

  await page.getByLabel('Day').fill('2020-01-01');
  await page.getByLabel('Running expected').fill('-5');
  await press(page, 'Next');
  await refused('Expected a day that is still to come');
  await refused('Expected running of more than 0 min');
  await page.reload(); // what was answered is kept
  await press(page, 'None that I know of yet');

  const hours = page.getByLabel('Hours since the last rebuild');
  for (const [typed, says] of [
    ['', 'got nothing'],
    ['ten', 'got “ten”'],
    ['-3', 'Expected hours of 0 or more'],
    ['99999', 'Expected at most 100 h since a rebuild'],
  ] as const) {
    await hours.fill(typed);
    await press(page, 'Make the plan');
    await refused(says);
  }
  await page.getByRole('button', { name: 'It is so: take it as I said' }).waitFor();
  await hours.fill('1,5');
  await page.getByLabel(/^piston/).check();
  await press(page, 'Make the plan');
  await heading(page, 'The plan: 7');
  await page.getByText('Another piston fitted, 1 h 30 min of running on it').waitFor();

  await served.again();
  await sent(page);
  const due = async () =>
    (await served.get<{ due: { item: string }[] }>('/api/karts/7/due')).due.map(({ item }) => item);
  expect(await due()).not.toContain('piston/renew');
  await press(page, 'Take the hours back');
  await page.getByText('The hours are not known: everything that is renewed by hours is due.').waitFor();
  await sent(page);
  expect(await due()).toContain('piston/renew');

  await page.goto(`${served.url}#/start`);
  await press(page, 'Another kart');
  await press(page, /^Four-stroke junior/i);
  await page.getByLabel('Name or number').fill('7');
  await press(page, 'Next');
  await refused('there is a kart "7"');
});
