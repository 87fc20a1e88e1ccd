/** A whole plan on one phone and half of it on another, with the server ended; then both come back and the laptop prints the release. */
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { Fact } from '../../src/book/index.ts';
import { randoms, report, SEED, tries } from '../faults/size.ts';
import { fillIn, phoneAt, press, readingsOf, stepOf, textOf, word } from './bench-phone.ts';
import { browserPages, LAPTOP, sent } from './pages.ts';
import { runCli } from './run-cli.ts';
import { type Served, startBuilt } from './served.ts';
import { atHand, done, heading } from './step.ts';

/** Invented, and small: a dozen steps, one of them putting a wheel back, one a second look. */
const KART = `
kart: 1
name: "7"
invented: true
rules: hollow-lane-club-2026
dimensions: { wheelbase: 1045 mm }
parts:
  front wheel left: { kind: front wheel, system: wheels and tyres, corner: front left, place: { x: 1045 mm, y: 500 mm } }
  front bumper: { kind: front bumper, system: bodywork }
`;

const pages = browserPages();
let served: Served;
beforeEach(async () => {
  served = await startBuilt(['serve']);
  const file = join(served.folder, '7.yaml');
  await writeFile(file, KART);
  const off = await runCli(served.folder, ['log', 'taken-off', 'front wheel left', '--kart', file], { data: '' });
  expect(off.err).toBe('');
});
// Its pages are still open, and a server that is asked to stop waits for them.
afterEach(async () => {
  await served?.kill();
  await served?.stop();
});

const facts = async (): Promise<readonly Fact[]> =>
  (await served.get<{ facts: { fact: Fact }[] }>('/api/karts/7/facts')).facts.map(({ fact }) => fact);
/** Ids of all facts on this device, as its export has them. */
const idsOn = async (page: Page): Promise<readonly string[]> => {
  for (const sheet of ['today', 'device']) await page.goto(`${served.url}#/${sheet}`); // what was made before is left there
  await page.getByRole('button', { name: 'Export the book' }).click();
  const saved = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Save the file' }).click();
  const text = await readFile(await (await saved).path(), 'utf8');
  const lines = text.split('\n').filter(line => line.includes('"id"'));
  return lines.map(line => (JSON.parse(line) as { id: string }).id).toSorted();
};

/** The phone goes into another hand. */
async function hand(page: Page, name: string): Promise<void> {
  await page.getByRole('button', { name: /^Your name/ }).click();
  await page.getByRole('dialog').getByLabel('Your name').fill(name);
  await page.getByRole('button', { name: 'That is me' }).click();
}

test('a plan is worked to its end on a phone without a network while another does half; both come back, and the laptop prints what a person signed', async () => {
  const readings = await readingsOf(served, '7');
  const [half, whole] = [
    await phoneAt(pages, `${served.url}#/work`, 'J. Moor'),
    await phoneAt(pages, `${served.url}#/work`, 'R. Vale'),
  ];
  const before = await facts();
  await served.kill();
  for (const page of [half, whole]) await word(page, /no server/).waitFor();
  for (let n = 0; n < 6; n++) await press(half, readings);
  let pressed = 0;
  for (; (await heading(whole).textContent()) !== 'All steps are done'; pressed++) {
    if ((await stepOf(whole)).startsWith('second-look')) await hand(whole, 'T. Hand'); // straight after, so another person looks
    await press(whole, readings);
  }
  expect(pressed).toBeGreaterThan(10);
  const [ofHalf, ofWhole] = [await idsOn(half), await idsOn(whole)];
  expect([ofHalf.length, ofWhole.length]).toEqual([before.length + 6, before.length + pressed]);

  await served.again();
  await sent(half);
  await sent(whole);
  const union = [...new Set([...ofHalf, ...ofWhole])].toSorted();
  const laptop = await pages.open(`${served.url}#/work`, 'J. Moor', { viewport: LAPTOP });
  await sent(laptop);
  for (const page of [half, whole, laptop]) expect(await idsOn(page)).toEqual(union);
  const now = await facts();
  expect(now.map(({ id }) => id).toSorted()).toEqual(union);
  expect(['J. Moor', 'R. Vale', 'T. Hand'].map(name => now.filter(({ by }) => by === name).length)).toEqual([
    6,
    pressed - 1,
    1,
  ]);

  await laptop.goto(`${served.url}#/work`);
  await laptop.getByRole('heading', { name: 'All steps are done' }).waitFor();
  await laptop.getByRole('link', { name: 'See whether it is fit' }).click();
  await laptop.getByLabel('Who signs').fill('J. Moor');
  for (const box of await laptop.locator('.name-each input').all()) await box.check();
  await laptop.getByRole('button', { name: 'Sign', exact: true }).click();
  await laptop.getByText('Signed and in the record.').waitFor();
  await laptop.emulateMedia({ media: 'print' });
  await laptop.getByText('Signed in the record by J. Moor').waitFor();
  expect(await laptop.getByText('Signature of the person who decides').isVisible()).toBe(true);
  const pdf = await laptop.pdf({ format: 'A4' });
  expect(pdf.subarray(0, 5).toString()).toBe('%PDF-');
  await laptop.emulateMedia({ media: 'screen' });
  await sent(laptop);
  expect((await facts()).at(-1)).toMatchObject({ kind: 'released', signer: 'J. Moor', verdict: 'fit' });
  // And the phones know it, without a press.
  await whole.goto(`${served.url}#/work`);
  await whole.getByText(/^Signed by J. Moor as fit/).waitFor();
});

/** Its process is gone at once, as when the system wants the memory; the device opens the page anew. */
async function killed(page: Page): Promise<Page> {
  const context = page.context();
  const cdp = await context.newCDPSession(page);
  const gone = page.waitForEvent('crash');
  cdp.send('Page.crash').catch(() => undefined); // nobody is left to answer
  await gone;
  await page.close();
  const next = await context.newPage();
  await next.goto(served.url);
  expect(await heading(next).textContent()).not.toBe('A kart of your own'); // the book is not empty, it is being read
  return next;
}

test('a tab is killed between any two taps, and in the middle of one: what was acknowledged is there, and nothing twice', async () => {
  const readings = await readingsOf(served, '7');
  let page = await phoneAt(pages, `${served.url}#/work`, 'R. Vale');
  await served.kill();
  const random = randoms(SEED);
  const acknowledged: string[] = [];
  let [kills, early] = [0, 0];
  while ((await heading(page).textContent()) !== 'All steps are done') {
    // Back after a kill: the last is touched again; and what was written before the place moved on says so, or has left the plan.
    const on = page.getByRole('button', { name: /I touched it|^Next step$|^Next: / });
    if ((await on.count()) > 0) {
      const pressed = page.getByText((await on.textContent()) ?? '', { exact: true });
      await on.click();
      await pressed.waitFor({ state: 'detached' }); // a step that was written already says so only then
      continue;
    }
    const step = await stepOf(page);
    if (!step.startsWith('posture')) expect(acknowledged).not.toContain(step); // lost, it would be to do again
    if (step.startsWith('second-look')) await hand(page, 'T. Hand');
    if (random() < tries(0.5, 0.2)) {
      await press(page, readings);
      acknowledged.push(step);
      continue;
    }
    await fillIn(page, readings);
    const said = await atHand(page).evaluate(textOf);
    const tap = done(page).click();
    tap.catch(() => undefined); // the page may be gone before the finger is up
    await page.waitForTimeout(random() * 120); // the moment of the kill, not a wait for anything
    const shown = await atHand(page).evaluate(textOf);
    if (shown !== said) acknowledged.push(step);
    else early++;
    page = await killed(page);
    kills++;
  }
  await served.again();
  await sent(page);
  const told = (await facts()).flatMap(fact => {
    if (fact.by === 'A. Bench') return [];
    const on = 'item' in fact ? fact.item : 'joint' in fact ? fact.joint : 'part' in fact ? fact.part : fact.kind;
    return [`${fact.kind} ${on}${'secondLook' in fact && fact.secondLook ? ' again' : ''}`];
  });
  expect(new Set(told).size).toBe(told.length);
  for (const step of acknowledged.filter(one => !one.startsWith('posture'))) {
    const again = step.startsWith('second-look');
    const of = told.filter(one => one.endsWith(' again') === again);
    expect(
      of.map(one => one.replace(/^(taken off|put on|[a-z]+) | again$/g, '')),
      step,
    ).toContain(step.replace(/^[a-z-]+ /, ''));
  }
  expect(kills).toBeGreaterThan(2);
  report(
    `tab killed ${kills} times in ${acknowledged.length + early} taps, ${early} of them before the page had answered; none lost, none twice`,
  );
});
