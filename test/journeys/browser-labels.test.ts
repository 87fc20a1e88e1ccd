/** Labels on paper, the page a label opens, and the sheets that are signed. */
import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Label } from '../../src/app/index.ts';
import type { Kart } from '../../src/kart/index.ts';
import type { Plan, Step } from '../../src/prep/index.ts';
import { axe, browserPages, LAPTOP, PHONE, smallTargets } from './pages.ts';
import { runCli } from './run-cli.ts';
import { goodReading, type Served, startBuilt } from './served.ts';

const pages = browserPages();
let served: Served;
beforeAll(async () => {
  served = await startBuilt();
});
afterAll(() => served?.stop());

const sheetsOf = (pdf: Buffer): number => pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)?.length ?? 0;
const DEVICES = [
  [PHONE, 'light'],
  [LAPTOP, 'dark'],
] as const;

describe('a label', () => {
  test('is printed for the parts of a system or for boxes, each with its code, on A4 and on Letter', async () => {
    for (const [viewport, colorScheme] of DEVICES) {
      const page = await pages.open(`${served.url}#/labels`, 'R. Vale', { viewport, colorScheme });
      await page.getByRole('button', { name: /^Print \d+ labels$/ }).waitFor();
      await page.getByLabel('Labels for').selectOption('brakes');
      await page.locator('.labels').getByText('Brake pedal', { exact: true }).waitFor();
      expect(await page.locator('.labels li').count()).toBeGreaterThan(3);
      expect(await axe(page)).toEqual([]);
      expect(await smallTargets(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
      await page.getByLabel('Address that the code opens').fill('my laptop');
      await page.getByRole('alert').getByText('Expected the address').waitFor();
      expect(await page.getByRole('button', { name: /^Print 0 labels$/ }).isDisabled()).toBe(true);
      await page.getByLabel('Address that the code opens').fill(served.url);
      await page.getByRole('button', { name: /^Print [1-9]\d* labels$/ }).waitFor();
      for (const format of ['A4', 'Letter'] as const) expect(sheetsOf(await page.pdf({ format }))).toBe(1);
    }
  });

  test('opens the part with where it is, its hours, what is due on it and how it is held', async () => {
    for (const [viewport, colorScheme] of DEVICES) {
      const page = await pages.open(`${served.url}#/part/41%2Frear%20hub%20left`, 'R. Vale', { viewport, colorScheme });
      await page.getByRole('heading', { name: 'Rear hub left', exact: true }).waitFor();
      await page.getByText('Off the kart').waitFor();
      await page.getByRole('heading', { name: /^How it is held/ }).waitFor();
      await page
        .getByText(/^Opened on .* and not made since$/)
        .first()
        .waitFor();
      await page.getByRole('heading', { name: /^Due on it/ }).waitFor();
      expect(await axe(page)).toEqual([]);
      expect(await smallTargets(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
    }
  });

  test('of a box opens the parts it serves; of a part that is gone, or of another kart, says so', async () => {
    const page = await pages.open(`${served.url}#/box/41%2Ftie%20rod`, 'R. Vale');
    await page.getByRole('link', { name: 'tie rod left' }).click();
    await page.getByRole('heading', { name: 'Tie rod left' }).waitFor();
    await page.goto(`${served.url}#/part/41%2Frear%20wing`);
    await page.getByText('Kart 41 has no part “rear wing”').waitFor();
    await page.goto(`${served.url}#/part/7%2Frear%20hub%20left`);
    await page.getByText('This label is of kart 7, which this book does not hold.').waitFor();
    const text = 'kart: 1\nname: "7"\ntemplate: six-speed gearbox\n';
    await served.post('/api/karts/7/facts', { by: 'R. Vale', payloads: [{ kind: 'kart filed', text }] });
    await page.reload();
    await page.getByRole('button', { name: 'Open kart 7' }).click();
    await page.getByText('On the kart', { exact: true }).waitFor();
  });

  test('comes from the command line as a page to print, and as JSON', async () => {
    const folder = tmpdir();
    const words = ['labels', '--demo', '--address', 'http://192.168.1.20:50271/', '--only', 'brakes'];
    const { code, out } = await runCli(folder, [...words, '--json']);
    const { labels } = JSON.parse(out) as { labels: readonly Label[] };
    expect(code).toBe(0);
    expect(labels.find(({ name }) => name === 'brake pedal')?.url).toBe(
      'http://192.168.1.20:50271/#/part/41%2Fbrake%20pedal',
    );
    const printed = await runCli(folder, words);
    expect(printed.out.match(/<li>/g)).toHaveLength(labels.length);
    const page = await pages.open(`${served.url}#/today`, 'R. Vale');
    const file = join(mkdtempSync(join(tmpdir(), 'kartwright-labels-')), 'labels.html');
    writeFileSync(file, printed.out);
    await page.goto(pathToFileURL(file).href);
    expect(await axe(page)).toEqual([]);
    for (const format of ['A4', 'Letter'] as const) expect(sheetsOf(await page.pdf({ format }))).toBe(1);
    expect((await runCli(folder, ['labels', '--demo', '--address', 'here'])).err).toContain('address at which a phone');
    expect((await runCli(folder, [...words.slice(0, -1), 'wings'])).err).toContain('Systems: brakes');
  });
});

test('who worked, set up and looked at each link has room to sign on paper', async () => {
  const page = await pages.open(`${served.url}#/work`, 'R. Vale', { viewport: LAPTOP });
  for (const [sheet, words] of [
    ['work', 'Signature of who worked by this list'],
    ['setup', 'Signature of who set it up'],
    ['weak', 'Signature of who looked at each link'],
  ]) {
    await page.emulateMedia({ media: 'screen' });
    await page.goto(`${served.url}#/${sheet}`);
    await page.emulateMedia({ media: 'print' });
    await page.getByText(words ?? '').waitFor();
    expect(await page.locator('.print-title').first().isVisible()).toBe(true);
  }
});

test('a list that was worked on paper is typed back by its numbers, judged while it is typed, and each line is a fact of its own', async () => {
  const kart = await served.get<Kart>('/api/karts/41');
  const page = await pages.open(`${served.url}#/work`, 'R. Vale', { viewport: LAPTOP });
  await page.evaluate(() => window.dispatchEvent(new Event('beforeprint')));
  const printed = await page.evaluate(() => localStorage.getItem('kartwright.printed lists 41') ?? '[]');
  const [list] = JSON.parse(printed) as { steps: { n: number; key: string }[] }[];
  const { steps } = await served.get<Plan>('/api/karts/41/plan');
  const on = (action: string) =>
    steps
      .filter(s => s.state === 'ready' && s.action === action && s.part !== null && s.grade === 'safety')
      .slice(0, 2);
  const [measure] = steps.filter(s => s.state === 'ready' && s.action === 'measure' && s.target !== null);
  const [look, late] = on('look');
  if (!measure || !look || !late || !list) throw new Error('the demo must have something to measure and two looks');
  const n = (step: Step): number => list.steps.find(({ key }) => key === step.key)?.n ?? 0;
  await page.getByRole('link', { name: 'Type in a list that was worked on paper' }).click();
  const lines = page.getByLabel('Lines');
  await lines.fill(`${n(measure)} about right\n${n(look)}`);
  await page.getByText('Put 1 lines right first').waitFor();
  await page.reload(); // what was typed is kept
  const value = goodReading(measure, kart) ?? '';
  await lines.fill(`${n(late)} later no light\n${n(measure)} ${value}\n${n(look)}`);
  await page.getByRole('region', { name: 'As it will be written' }).getByText(`done, ${value}`).waitFor();
  for (const viewport of [LAPTOP, PHONE]) {
    await page.setViewportSize(viewport);
    expect(await axe(page)).toEqual([]);
    expect(await smallTargets(page)).toEqual([]);
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
  }
  await page.getByRole('button', { name: 'Write 3 steps down' }).click();
  await page.getByText('3 steps written, each an entry of its own.').waitFor();
  const written = async () => {
    const { facts } = await served.get<{ facts: { fact: Record<string, unknown> }[] }>('/api/karts/41/facts');
    return facts.slice(-3).map(({ fact }) => [fact.item, fact.result ?? fact.kind]);
  };
  await expect
    .poll(async () => (await written()).toSorted())
    .toEqual(
      [
        [measure.item, 'pass'],
        [look.item, 'pass'],
        [late.item, 'not possible'],
      ].toSorted(),
    );
  expect(await lines.inputValue()).toBe('');
});
