/** At the track with one kart, invented: a mild day before, a cold morning, a hot afternoon, and a session written down. */
import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Kept } from '../../src/app/index.ts';
import type { Kart } from '../../src/kart/index.ts';
import type { TrackSheet } from '../../src/prep/index.ts';
import { browserPages, LAPTOP, PHONE } from './pages.ts';
import { type Served, startBuilt } from './served.ts';

const AXE = await readFile(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');
const FILE = `kart: 1
name: "7"
template: six-speed gearbox
engine: { primary: 3.9, gears: [2.29, 1.78, 1.45, 1.24, 1.11, 1], limiter: 13500 rpm, jets are numbered by: diameter, mixing ratio: "20:1" }
box: { main jets: [158, 160, 162, 165, 168, 170, 172, 175, 178, 180], front sprockets: [16, 17, 18], rear sprockets: [23, 24, 25] }
`;
const TYRES = ['front left', 'front right', 'rear left', 'rear right'] as const;
const DAY_MS = 24 * 3_600_000;

const pages = browserPages();
let served: Served;
let kart: Kart;
beforeAll(async () => {
  served = pages.behind(await startBuilt(['serve']));
  await write(0, { kind: 'kart filed', text: FILE });
  kart = await served.get('/api/karts/7');
  await mildDay();
});
afterAll(() => served?.stop());

/** Facts of so many hours after the morning two days ago. */
async function write(hour: number, ...payloads: readonly Record<string, unknown>[]): Promise<void> {
  const at = new Date(Date.now() - 2 * DAY_MS + hour * 3_600_000).toISOString();
  const { status, body } = await served.post('/api/karts/7/facts', { by: 'R. Vale', at, payloads });
  expect(body.problems ?? []).toEqual([]);
  expect(status).toBe(201);
}
const pressures = (key: string, bar: number) =>
  TYRES.map(tyre => {
    const item = Object.values(kart.items).find(one => one.key === key && kart.parts[one.part]?.corner === tyre);
    return { kind: 'checked', item: item?.id, result: 'pass', reading: `${bar.toFixed(2)} bar` };
  });
async function mildDay(): Promise<void> {
  await write(1, { kind: 'set-up', changes: { 'main jet': '165', gearing: '17/24' } });
  for (const { id, key } of Object.values(kart.items))
    if (key === 'circumference') await write(1.1, { kind: 'checked', item: id, result: 'pass', reading: '861 mm' });
  for (const n of [0, 1, 2]) {
    const air = { celsius: 18 + n, pascal: 100_000, pressureIs: 'station', humidity: 0.5, trackCelsius: 24 + 2 * n };
    await write(2 + n, { kind: 'weather', ...air });
    await write(2.1 + n, ...pressures('cold pressure', 0.62));
    await write(
      2.2 + n,
      { kind: 'ran', session: `Practice ${n + 1}`, minutes: 10, laps: 12 },
      ...pressures('hot pressure', 0.8 + 0.01 * n),
      { kind: 'plug read', says: 'right' },
      { kind: 'fuel used', litres: 3.6 + 0.05 * n },
    );
  }
}

const open = (device = {}) => pages.open(`${served.url}#/track`, 'R. Vale', device);
const facts = async (): Promise<Kept['fact'][]> =>
  (await served.get<{ facts: Kept[] }>('/api/karts/7/facts?after=0')).facts.map(({ fact }) => fact);
const sheet = (): Promise<TrackSheet> => served.get('/api/karts/7/track');
const part = (page: Page, name: string) =>
  page.locator('.track-part', { has: page.getByRole('heading', { name, exact: true }) });
const cold = (page: Page, tyre: string) => page.locator(`#cold-cold-${tyre.replace(' ', '-')}`);

async function readAir(page: Page, air: Readonly<Record<string, string>>): Promise<void> {
  const again = page.getByRole('button', { name: 'Read it again' });
  await again
    .or(page.getByLabel(Object.keys(air)[0] ?? '', { exact: true }))
    .first()
    .waitFor();
  if (await again.isVisible()) await again.click();
  for (const [label, text] of Object.entries(air)) await page.getByLabel(label, { exact: true }).fill(text);
  await page.locator('.tile', { hasText: 'Read at the track' }).click();
  await page.getByRole('button', { name: 'This is the air' }).click();
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

/** What a glove must hit, measured where it may be hit: a radio or a tick by its whole label. */
const smallTargets = (page: Page) =>
  page.locator('main').evaluate(main =>
    [...main.querySelectorAll('button, a.button, input, select, summary')].flatMap(target => {
      const { width, height } = (target.closest('label') ?? target).getBoundingClientRect();
      return height === 0 || (height >= 56 && width >= 56)
        ? []
        : [`${target.outerHTML.slice(0, 90)} ${width}×${height}`];
    }),
  );

describe('before a session', () => {
  test('a cold morning asks for a richer jet with the seizure named, and for lower pressures than a hot afternoon', async () => {
    const page = await open();
    await readAir(page, {
      'Temperature, in the shade': '4',
      'Surface of the track': '6',
      Humidity: '80',
      Pressure: '1015',
    });
    await part(page, 'Main jet')
      .getByText(/leaner than this air asks for: at full throttle the engine can seize/)
      .waitFor();
    const jet = async () => Number(await part(page, 'Main jet').locator('.leads dd').first().textContent());
    const air = async () =>
      Number.parseFloat((await part(page, 'Air').locator('.leads dd').first().textContent()) ?? '');
    const morning = { jet: await jet(), air: await air(), cold: Number(await cold(page, 'rear left').inputValue()) };
    expect(morning.jet).toBeGreaterThan(165);
    expect(await page.locator('.since').textContent()).toMatch(/denser/);

    await readAir(page, {
      'Temperature, in the shade': '33',
      'Surface of the track': '45',
      Humidity: '40',
      Pressure: '990',
    });
    await page
      .getByText(/read .*/)
      .first()
      .waitFor();
    await page.locator('.air-read', { hasText: '33 °C' }).waitFor();
    expect(await jet()).toBeLessThan(morning.jet);
    expect(await air()).toBeLessThan(morning.air);
    expect(Number(await cold(page, 'rear left').inputValue())).toBeGreaterThan(morning.cold);
    expect(await page.locator('.since').textContent()).toMatch(/thinner/);
    // Gears and litres are of the kart and its laps, not of the air.
    expect(await part(page, 'Gearing').locator('.leads').textContent()).toContain('17/24');
    const { parts } = await sheet();
    for (const { subject, lead } of parts.filter(one => one.subject !== 'tyres'))
      for (const { text } of lead)
        expect(await page.locator(`[aria-labelledby=track-${subject}]`).textContent()).toContain(text);
  });

  test('a temperature in °F is asked about at its field, kept as typed, and recorded as said only when pressed again', async () => {
    const page = await open();
    await readAir(page, {
      'Temperature, in the shade': '70',
      'Surface of the track': '30',
      Humidity: '50',
      Pressure: '1000',
    });
    const field = page.locator('.entry-field', { has: page.getByLabel('Temperature, in the shade') });
    await field.getByRole('alert').waitFor();
    const before = (await facts()).length;
    await page.reload();
    expect(await page.getByLabel('Temperature, in the shade').inputValue()).toBe('70');
    await page.getByRole('button', { name: 'This is the air' }).click();
    await page.getByRole('button', { name: 'It is so: record it as I said' }).waitFor();
    await page.getByLabel('Temperature, in the shade').fill('70 °F');
    await page.getByRole('button', { name: 'This is the air' }).click();
    await page.locator('.air-read').waitFor();
    const written = (await facts()).slice(before);
    expect(written.map(({ kind }) => kind)).toEqual(['weather']);
    expect(written[0]).toMatchObject({ celsius: expect.closeTo(21.11, 2) });
  });

  test('pressures set as said are four readings, taken back together by two taps; a number opens with its question', async () => {
    const page = await open();
    await cold(page, 'front left').fill('0.60');
    const before = (await facts()).length;
    await page.getByRole('button', { name: 'Set as said' }).click();
    await page.getByRole('button', { name: 'Undo' }).waitFor();
    const written = (await facts()).slice(before);
    expect(written).toHaveLength(4);
    expect(written[0]).toMatchObject({ kind: 'checked', result: 'pass', reading: { text: '0.60 bar' } });
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Strike all 4' }).click();
    await page.getByRole('button', { name: 'Undo' }).waitFor({ state: 'detached' });
    expect((await facts()).slice(before + 4).map(({ kind }) => kind)).toEqual(Array(4).fill('struck'));
    const said = await part(page, 'Main jet').locator('.leads dd').first().textContent();
    await page.getByRole('link', { name: 'Open main jet in Numbers' }).click();
    await page
      .getByRole('region', { name: 'Answer' })
      .getByText(said ?? 'none')
      .first()
      .waitFor();
  });
});

describe('after a session', () => {
  test('everything is written in one press, by keys alone, and outlives a reload half way', async () => {
    const page = await open();
    await page.getByRole('button', { name: 'After', exact: true }).click();
    let presses = 1;
    const type = async (label: string, text: string) => {
      await page.getByLabel(label, { exact: true }).focus();
      await page.keyboard.type(text);
      presses += 1 + text.length;
    };
    expect(await page.getByLabel(/^Engine ran min/).inputValue()).toBe('10');
    await page.getByRole('button', { name: 'Engine ran: one more' }).press('Enter');
    presses += 1;
    for (const [n, tyre] of ['Front left', 'Front right', 'Rear left', 'Rear right'].entries())
      await type(tyre, `.8${n}`);
    await page.reload();
    expect(await page.getByLabel('Rear right', { exact: true }).inputValue()).toBe('.83');
    await page.getByLabel('Right', { exact: true }).press('Space');
    presses += 1;
    await type('Fuel used: filled in less drained', '3.7');
    const before = (await facts()).length;
    await page.getByRole('button', { name: 'Write it all down' }).press('Enter');
    presses += 1;
    await page.getByRole('button', { name: 'Undo' }).waitFor();
    expect(presses).toBeLessThanOrEqual(26); // under a minute with gloves: two seconds a press
    const written = (await facts()).slice(before);
    expect(written.map(({ kind }) => kind)).toEqual(['ran', ...Array(4).fill('checked'), 'plug read', 'fuel used']);
    expect(written[0]).toMatchObject({ minutes: 11, laps: 12 });
    await page.goto(`${served.url}#/record`);
    await page.getByText('Ran 11 min, 12 laps').waitFor();
    await page.getByText('Plug read: right').first().waitFor();
  });

  test('what is refused stands at its field, nothing is written, and a pressure out of limits goes in as a fail', async () => {
    const page = await open();
    await page.getByRole('button', { name: 'After', exact: true }).click();
    await page.getByLabel(/^Engine ran min/).fill('');
    await page.getByLabel('Rear left', { exact: true }).fill('1.5');
    const before = (await facts()).length;
    await page.getByRole('button', { name: 'Write it all down' }).click();
    await page.getByText(/Expected minutes the engine ran, got nothing/).waitFor();
    await page.getByLabel(/^Engine ran min/).fill('9');
    await page.getByRole('button', { name: 'Write it all down' }).click();
    await page.getByRole('button', { name: 'It is so: record it as I said' }).waitFor();
    expect((await facts()).length).toBe(before);
    await page.getByRole('button', { name: 'It is so: record it as I said' }).click();
    await page.getByRole('button', { name: 'Undo' }).waitFor();
    const written = (await facts()).slice(before);
    expect(written.map(({ kind }) => kind)).toEqual(['ran', 'checked']);
    expect(written[1]).toMatchObject({ result: 'fail', reading: { text: '1.5 bar' } });
  });
});

test('axe finds nothing wrong, nothing is wider than the screen, no target is small, and it prints with its title block', async () => {
  for (const viewport of [PHONE, LAPTOP])
    for (const colorScheme of ['light', 'dark'] as const) {
      const page = await open({ viewport, colorScheme });
      const shots = process.env.TRACK_PICTURES;
      for (const side of ['Before', 'After']) {
        await page.getByRole('button', { name: side, exact: true }).click();
        await page.locator('main').evaluate(main => {
          for (const details of main.querySelectorAll('details')) details.open = true;
        });
        expect(await axe(page)).toEqual([]);
        expect(await smallTargets(page)).toEqual([]);
        expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
        if (shots)
          await page.screenshot({
            path: `${shots}/track-${side}-${viewport.width}-${colorScheme}.png`,
            fullPage: true,
          });
      }
    }
  const page = await open({ viewport: LAPTOP });
  await part(page, 'Main jet').waitFor();
  expect(await page.getByRole('button', { name: 'Set as said' }).isVisible()).toBe(true);
  await page.emulateMedia({ media: 'print' });
  await page.locator('.print-title').getByText('Track sheet').waitFor();
  for (const name of ['Set as said', 'Laps to come: one more', 'Print it'])
    expect(await page.getByRole('button', { name }).isVisible()).toBe(false);
  expect(await part(page, 'Main jet').locator('.leads').isVisible()).toBe(true);
  expect((await page.pdf({ format: 'A4' })).subarray(0, 5).toString()).toBe('%PDF-');
});
