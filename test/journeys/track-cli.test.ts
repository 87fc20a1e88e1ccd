/**
 * At the track, told to the built program: one kart on a cold morning and on a hot afternoon, then a session written down.
 * Which way each answer must go is physics: gas law for density and tyres, oxygen for the jet, density for the drag.
 */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { FactLine, Problem } from '../../src/app/index.ts';
import type { TrackPart, TrackSheet } from '../../src/prep/index.ts';
import { type Run, runCli } from './run-cli.ts';

let folder = '';
let [cold, hot]: readonly (TrackSheet | undefined)[] = [];
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-track-'));
  expect((await kw(['book', 'import'], (await kw(['book', 'export', '--demo'])).out)).code).toBe(0);
  cold = await sheetIn(['--temperature', '5 °C', '--pressure', '1018 hPa', '--humidity', '85 %', '--surface', '7 °C']);
  hot = await sheetIn(['--temperature', '29 °C', '--pressure', '1003 hPa', '--humidity', '38 %', '--surface', '44 °C']);
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const kw = (words: readonly string[], input = ''): Promise<Run> => runCli(folder, words, { input });

/** The sheet once this weather was read at the track. */
async function sheetIn(weather: readonly string[]): Promise<TrackSheet> {
  expect(await kw(['log', 'weather', '--station', ...weather])).toMatchObject({ code: 0, err: '' });
  return track('--laps', '12');
}
const track = async (...words: readonly string[]): Promise<TrackSheet> => {
  const run = await kw(['track', ...words, '--json']);
  expect(run).toMatchObject({ code: 0, err: '' });
  return JSON.parse(run.out);
};
const facts = async (): Promise<readonly FactLine[]> => JSON.parse((await kw(['facts', '--json'])).out).facts;
const refused = async (words: readonly string[]): Promise<readonly Problem[]> => {
  const run = await kw([...words, '--json']);
  expect([words, run.code]).toEqual([words, 3]);
  return JSON.parse(run.out).problems;
};

function part(sheet: TrackSheet | undefined, subject: TrackPart['subject']): TrackPart {
  const found = sheet?.parts.find(one => one.subject === subject);
  if (!found) throw new Error(`expected ${subject} on the sheet`);
  return found;
}
function figure(sheet: TrackSheet | undefined, subject: TrackPart['subject'], name: string): number {
  const { answer } = part(sheet, subject);
  const si = answer?.kind === 'answer' ? answer.figures[name]?.si : undefined;
  if (si === undefined) throw new Error(`expected ${name} of ${subject}, got ${JSON.stringify(answer)}`);
  return si;
}

describe('a cold morning and a hot afternoon', () => {
  test('every one of the five answers is given in both', () => {
    for (const sheet of [cold, hot]) expect(sheet?.parts.map(({ answer }) => answer?.kind)).toEqual(FIVE_ANSWERS);
  });

  test('cold air is denser and wants a larger jet, the seizure named; in thin air the same jet is richer and may stay', () => {
    expect(figure(cold, 'air', 'density')).toBeGreaterThan(1.09 * figure(hot, 'air', 'density')); // 302 K over 278 K and 1018 over 1003 hPa
    expect(figure(cold, 'carburation', 'jet by theory')).toBeGreaterThan(figure(hot, 'carburation', 'jet by theory'));
    expect(figure(cold, 'carburation', 'jet to fit')).toBeGreaterThan(165); // 165 was right in 1.21 kg/m³
    expect(figure(hot, 'carburation', 'jet to fit')).toBeLessThanOrEqual(165);
    expect(figure(hot, 'carburation', 'jet by theory')).toBeLessThan(165);
    expect(figure(cold, 'carburation', 'mixture with the jet as it is')).toBeLessThan(0); // leaner
    expect(figure(hot, 'carburation', 'mixture with the jet as it is')).toBeGreaterThan(0);
    expect(part(cold, 'carburation').warning).toMatch(/165 is leaner than this air asks for.*can seize/);
    expect(part(hot, 'carburation').warning).toBeNull();
  });

  test('tyres are set lower in the cold for the same hot pressure, from this kart’s own runs', () => {
    for (const tyre of ['front left', 'front right', 'rear left', 'rear right']) {
      const [morning, afternoon] = [cold, hot].map(sheet => figure(sheet, 'tyres', `cold ${tyre}`));
      expect(morning).toBeLessThan(afternoon ?? Number.NaN);
      expect(figure(hot, 'tyres', `similar runs ${tyre}`)).toBeGreaterThanOrEqual(3);
    }
  });

  test('fuel goes with the laps and not with the air; denser air drags more', async () => {
    const tank = 'fuel to have in the tank';
    expect(figure(cold, 'premix', tank)).toBe(figure(hot, 'premix', tank));
    expect(figure(await track('--laps', '20'), 'premix', tank)).toBeGreaterThan(figure(hot, 'premix', tank));
    expect(figure(cold, 'gearing', 'top speed on the level')).toBeLessThan(
      figure(hot, 'gearing', 'top speed on the level'),
    );
    const wanted = await track('--wanted', '12800 rpm at 115 km/h');
    expect(part(wanted, 'gearing').lead.map(({ label }) => label)).toContain('nearest pair in the box');
  });

  test('what has changed since the kart last ran is named, the air first', () => {
    expect(cold?.since[0]).toMatchObject({ what: 'air', now: expect.stringContaining('denser') });
    expect(hot?.since[0]).toMatchObject({ what: 'air', now: expect.stringContaining('thinner') });
  });

  test('on plain lines what can hurt is read first, and how it was worked out on asking', async () => {
    const { code, out } = await kw(['track', '--demo', '--explain']);
    expect(code).toBe(0);
    for (const name of ['AIR', 'MAIN JET', 'TYRES', 'FUEL AND OIL', 'GEARING']) expect(out).toContain(`\n${name}\n`);
    expect(out).toMatch(/EQUATION[\s\S]*SYMBOLS[\s\S]*SOURCES/);
    expect(Math.max(...out.split('\n').map(line => line.length))).toBeLessThanOrEqual(80);
    expect(await kw(['log', 'set-up', 'main jet=158'])).toMatchObject({ code: 0, err: '' });
    expect((await kw(['track'])).out).toMatch(
      /MAIN JET\n-+\n!! Main jet 158 is leaner than this air asks for[\s\S]*seize/,
    );
  });
});

const FIVE_ANSWERS = Array.from({ length: 5 }, () => 'answer');

describe('what cannot be', () => {
  const weather = (...words: readonly string[]) => ['log', 'weather', '--temperature', '20 °C', ...words];

  test.each([
    ['a gauge reading for the pressure of the air', weather('--pressure', '0.1 bar', '--station'), /gauge/],
    [
      'a sea-level figure called the track’s',
      weather('--pressure', '1013 hPa', '--station', '--elevation', '600 m'),
      /sea level/,
    ],
    ['a fraction for a percentage', weather('--pressure', '1001 hPa', '--station', '--humidity', '0.5 %'), /fraction/],
    ['°F for °C', ['log', 'weather', '--temperature', '68 °C', '--pressure', '1001 hPa', '--station'], /°F/],
    ['a plug of no such colour', ['log', 'plug-read', 'white'], /lean.*right.*rich/],
    ['laps below nothing', ['track', '--laps', '-3'], /1 to 500/],
    ['laps beyond any session', ['track', '--laps', '1000000'], /1 to 500/],
    ['laps in letters', ['track', '--laps', 'twelve'], /number of laps/],
    ['an engine speed at no speed', ['track', '--wanted', '12800 rpm'], /at 115 km\/h/],
  ])('%s is refused in words, and nothing is written', async (_, words, expected) => {
    const before = (await facts()).length;
    const said = await refused(words);
    expect(said.map(({ message, remedy }) => `${message} ${remedy}`).join(' ')).toMatch(expected);
    expect(await facts()).toHaveLength(before);
  });

  test('one wrong reading after a session and none of them is written; all that is wrong is said at once', async () => {
    const before = (await facts()).length;
    const done = ['track', 'done', '--minutes', '12', '--laps', '10'];
    const wrong = await refused([...done, '--hot', 'front left=79 bar', '--plug', 'right', '--fuel', '31 l']);
    expect(wrong.map(({ where }) => where)).toEqual(expect.arrayContaining(['facts[1].reading', 'facts[3].litres']));
    expect((await refused([...done, '--hot', 'front lft=0.79 bar', '--fuel', '3'])).map(({ where }) => where)).toEqual([
      'litres',
      '--hot',
    ]);
    expect(await facts()).toHaveLength(before);
  });
});

test('a session is set up and written down in two commands, and the next sheet is reckoned from it', async () => {
  const four = ['front left', 'front right', 'rear left', 'rear right'];
  expect(await kw(['track', 'set', ...four.map(tyre => `${tyre}=0.62 bar`)])).toMatchObject({ code: 0, err: '' });
  const jet = ['log', 'set-up', 'main jet=162'];
  expect(await kw(jet)).toMatchObject({ code: 0, err: '' });
  const run = ['track', 'done', '--minutes', '12', '--laps', '10', '--event', 'Practice day', '--session', 'Run 1'];
  const read = ['--hot', ...four.map(tyre => `${tyre}=0.8 bar`), '--treads', 'rear left=62/66/60 °C'];
  expect(await kw([...run, ...read, '--plug', 'right', '--fuel', '2.5 l'])).toMatchObject({ code: 0, err: '' });
  const kinds = (await facts()).slice(-8).map(({ fact }) => fact.kind);
  const said = ['ran', 'checked', 'checked', 'checked', 'checked', 'treads probed', 'plug read', 'fuel used'];
  expect(kinds).toEqual(said);
  const sheet = await track();
  expect(sheet).toMatchObject({ laps: 10, last: { label: expect.stringContaining('Run 1') } });
  expect(part(sheet, 'carburation').from[0]).toContain('Main jet 162 was read as right in Practice day');
});
