/** The pages of the laps that are printed: a session and the season, in a real browser and on paper. */
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { Season, SessionSheet } from '../../src/app/index.ts';
import { axe, browserPages, LAPTOP, PHONE, smallTargets } from './pages.ts';
import { type Served, startBuilt } from './served.ts';

const pages = browserPages();
let served: Served;
beforeAll(async () => {
  served = pages.behind(await startBuilt(['serve']));
  const text = 'kart: 1\nname: "7"\ntemplate: six-speed gearbox\n';
  await served.post('/api/karts/7/facts', { by: 'R. Vale', payloads: [{ kind: 'kart filed', text }] });
});
afterAll(() => served?.stop());

test('a session and the season each stand on a page that says what the JSON says, for everybody, and on one sheet of A4 or Letter', async () => {
  const at = (minute: number) => ({ by: 'R. Vale', at: new Date(Date.UTC(2026, 4, 16, 9, minute)).toISOString() });
  const put = (minute: number, payload: object) =>
    served.post('/api/karts/7/facts', { ...at(minute), payloads: [payload] });
  const drove = (minute: number, session: string, times: string) =>
    served.post('/api/karts/7/laps', { ...at(minute), times, event: 'Club day', track: 'Hollow Lane', session });
  await put(0, { kind: 'set-up', changes: { 'main jet': '165' } });
  await put(1, { kind: 'weather', celsius: 14.5, trackCelsius: 21, note: 'calm' });
  await drove(10, 'Heat 1', '52.31 52.10 51.94');
  await put(20, { kind: 'set-up', changes: { 'main jet': '162' } });
  expect(await drove(30, 'Heat 2', '51.62 51.48 1:02.5')).toMatchObject({ status: 201 });
  const sheet = await served.get<SessionSheet>('/api/karts/7/laps/sheet?session=club%20day%20heat%202');
  const season = await served.get<Season>('/api/karts/7/season');
  expect([sheet.laps?.times.length, sheet.changed.length, sheet.weather?.celsius]).toEqual([3, 1, 14.5]);

  for (const [viewport, colorScheme] of [
    [PHONE, 'light'],
    [LAPTOP, 'dark'],
  ] as const) {
    const page = await pages.open(`${served.url}#/laps`, 'R. Vale', { viewport, colorScheme });
    const all = (name: string, what: string) => page.getByRole('region', { name }).locator(what).allTextContents();
    const clean = async () => {
      expect(await axe(page)).toEqual([]);
      expect(await smallTargets(page)).toEqual([]);
      expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
      for (const format of ['A4', 'Letter'] as const) {
        const pdf = await page.pdf({ format });
        expect(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).toHaveLength(1);
      }
    };
    await page.getByText(sheet.session.label).click();
    await page.getByRole('link', { name: 'The session on one page' }).click();
    await page.getByRole('heading', { name: sheet.session.label }).waitFor();
    expect((await all('Laps of the session', 'td:nth-child(2)')).map(secondsOf)).toEqual(
      sheet.laps?.times.map(({ time }) => time),
    );
    expect(await all('Conditions', 'dd')).toEqual(expect.arrayContaining(['14.5 °C', '21 °C', 'calm']));
    expect((await all('Conditions', 'dd')).filter(text => text === 'not written down')).toHaveLength(5);
    const { name, was, now } = sheet.changed[0] ?? {};
    expect((await all('Changed since the session before', 'dl > div')).map(text => text.toLowerCase())).toEqual([
      expect.stringContaining(`${name}${was} → ${now}`),
    ]);
    expect(await all('Set-up it ran with', 'dd')).toEqual(sheet.settings.map(({ value }) => value));
    await clean();

    await page.getByRole('link', { name: 'Season' }).click();
    await page.getByRole('region', { name: 'Table of the best laps' }).waitFor();
    expect(await all('The season in short', '.cell')).toEqual(
      expect.arrayContaining([`Laps${season.laps}`, `Sessions${season.sessions}`]),
    );
    expect((await all('Table of the events', 'td:nth-child(2)')).map(secondsOf)).toEqual(
      season.events.map(({ best }) => (best === null ? Number.NaN : shown(best))),
    );
    expect((await all('Table of the best laps', 'td:nth-child(2)')).map(secondsOf)).toEqual(
      season.best.map(({ lap }) => shown(lap.time)),
    );
    expect(await all('Costs and what is not known', 'p')).toEqual(season.say);
    const [spent = ''] = (await all('The season in short', '.cell')).slice(-1);
    expect(spent).toContain(season.cost === null ? 'not known' : String(season.cost.money));
    await clean();
  }
});

/** The page rounds to hundredths, or finer where the spread bears it. */
const shown = (seconds: number) => expect.closeTo(seconds, 2);

/** '1:02.50 ± 0.28' → 62.5, read back independently of the page. */
function secondsOf(text: string): number {
  const [, minutes = '0', seconds = ''] = /^(?:(\d+):)?(\d+\.\d+)/.exec(text.trim()) ?? [];
  return seconds === '' ? Number.NaN : Number((60 * Number(minutes) + Number(seconds)).toFixed(3));
}
