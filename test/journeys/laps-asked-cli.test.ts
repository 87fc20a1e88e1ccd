/** What can be asked of laps, in a terminal and as JSON: two compared, a change that helped or not, a lap predicted, sheets. */
import { appendFileSync, copyFileSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { CompareAnswer, HelpedAnswer, LapsPredicted, Season, SessionSheet } from '../../src/app/index.ts';
import { type Run, runCli } from './run-cli.ts';

let folder = '';
const kw = (...words: readonly string[]): Promise<Run> => runCli(folder, words);
async function both<T>(...words: readonly string[]): Promise<{ readonly text: string; readonly json: T }> {
  const [text, json] = [await kw(...words), await kw(...words, '--json')];
  expect([text, json]).toMatchObject([
    { code: 0, err: '' },
    { code: 0, err: '' },
  ]);
  return { text: text.out.replace(/\s+/g, ' '), json: JSON.parse(json.out) as T };
}
const refused = async (...words: readonly string[]): Promise<string> => {
  const run = await kw(...words);
  expect(run).toMatchObject({ code: 3, out: '' });
  return run.err;
};

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-asked-'));
  await kw('new', 'kart.yaml', '--template', 'six-speed gearbox');
  appendFileSync(join(folder, 'kart.yaml'), 'box: { front sprockets: [17], rear sprockets: [22, 23, 24] }\n');
  expect(await kw('log', 'note', 'new', '--kart', 'kart.yaml')).toMatchObject({ code: 0, err: '' });
  copyFileSync(new URL('../fixtures/laps/K1_10hz.csv', import.meta.url), join(folder, 'heat.csv'));
  const heat = ['--session', 'Heat 1', '--track', 'Loop', '--event', 'Club day', '--on', '2026-05-09 10:00'];
  expect(await kw('laps', 'import', 'heat.csv', ...heat)).toMatchObject({ code: 0, err: '' });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

test('laps compare says where the second lap gained and lost, and the pieces close at the difference', async () => {
  const { text, json } = await both<CompareAnswer>('laps', 'compare', 'Heat 1#2', 'Heat 1#5');
  const [a, b] = json.laps;
  expect(json.difference).toBeCloseTo((b?.time ?? 0) - (a?.time ?? 0), 6);
  expect(json.pieces.reduce((sum, { difference }) => sum + difference, 0)).toBeCloseTo(json.difference, 6);
  expect(text).toContain(`The second lap was ${Math.abs(json.difference).toFixed(2)} s`);
  expect(text).toContain('corner 1');
  expect(await refused('laps', 'compare', 'Heat 1#2', 'Heat 7#1')).toContain('Expected a session with laps');
  expect(await refused('laps', 'compare', 'Heat 1#2', 'Heat 1#99')).toContain('laps 1 to 8');
});

test('laps helped tells what a dimension that was set cost, and before two runs there is nothing to tell', async () => {
  expect(await refused('laps', 'helped')).toContain('Expected a day with laps before and after a change');
  const RUNS = [
    ['1390 mm', '52.41 52.33 52.38 52.29 52.36'],
    ['1400 mm', '52.62 52.57 52.65 52.54 52.61'],
    ['1400 mm', '52.60 52.58 52.63 52.55 52.60'],
    ['1390 mm', '52.40 52.32 52.37 52.30 52.35'],
  ] as const;
  for (const [n, [width, times]] of RUNS.entries()) {
    const at = (minute: number): string => `2026-05-16T09:${String(10 * n + minute).padStart(2, '0')}:00Z`;
    const set = await kw('log', 'set', 'axle/overall rear width', '--value', width, '--at', at(0));
    expect(set).toMatchObject({ code: 0, err: '' });
    const session = ['--session', `Run ${n + 1}`, '--track', 'Loop', '--at', at(8)];
    expect(await kw('laps', 'by-hand', ...times.split(' '), ...session)).toMatchObject({ code: 0, err: '' });
  }
  const { text, json } = await both<HelpedAnswer>('laps', 'helped', 'rear width', '--worth', '0.1 s');
  expect(json.runs.map(({ on }) => on.length)).toEqual([0, 1, 1, 0]);
  expect(json.effects).toMatchObject([{ change: 'overall rear width 1400 mm', verdict: 'slower' }]);
  expect(json.effects[0]?.effect).toBeCloseTo(0.24, 1);
  expect(text).toMatch(/overall rear width 1400 mm cost 0\.2\d ± 0\.\d\d s a lap\./);
  expect(await refused('laps', 'helped', 'caster')).toContain('Changed so far: overall rear width 1400 mm');
  expect(await refused('laps', 'helped', '--worth', 'much')).toContain('Expected seconds a lap');
});

test('laps predict says what the lap should take, what is level and what is only of the template', async () => {
  const asked = ['laps', 'predict', '--session', 'Heat 1', '--gearing', '17/23'];
  const { text, json } = await both<LapsPredicted>(...asked);
  expect(Math.abs(json.lap.time / json.driven.time - 1)).toBeLessThan(0.05);
  expect(json.sprockets?.pairs.map(({ rear }) => rear).toSorted()).toEqual([22, 23, 24]);
  expect(json.slowest.length).toBeGreaterThan(4);
  expect(text).toContain(json.say[0] ?? 'nothing said');
  expect(text).toContain('SLOWEST IN EACH CORNER');
  expect(json.figures.find(({ what }) => what === 'mass with driver')).toMatchObject({ from: 'template' });
  expect(text).toContain('As the template has it, not measured: mass with driver');
  const typed = await both<LapsPredicted>(...asked, '--box', '16, 17 / 23');
  expect(typed.json.sprockets?.pairs).toHaveLength(2);
  expect(await refused('laps', 'predict', '--box', 'all of them')).toContain('Write those behind like 21, 22, 23');
  expect(await refused('laps', 'predict', '--session', 'Run 1')).toContain('Expected a session with a log');
});

test('laps sheet and season hold the same laps', async () => {
  const sheet = await both<SessionSheet>('laps', 'sheet', 'Heat 1');
  expect(sheet.json).toMatchObject({ ran: true, session: { label: 'Club day › Heat 1', laps: 8 }, laps: { laps: 8 } });
  expect(sheet.text).toContain('Club day › Heat 1');
  expect(await refused('laps', 'sheet', 'Heat 9')).toContain('The last sessions: ');
  const season = await both<Season>('season');
  const best = Math.min(...(sheet.json.laps?.times ?? []).flatMap(({ number, time }) => (number ? [time] : [])));
  expect(season.json.events[0]).toMatchObject({ event: 'Club day', sessions: 1, laps: 8, best });
  expect(season.json.best).toMatchObject([{ track: 'Loop', wet: false, lap: { time: best } }]);
  expect(season.text).toContain(`Loop, dry: ${best.toFixed(3)} s in Club day › Heat 1`);
});
