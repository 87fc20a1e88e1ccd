/** Laps in a terminal: a log and a stopwatch into the book, what cannot be read, and what the parts and pages then say. */

import { once } from 'node:events';
import { createWriteStream, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Season, SessionSheet } from '../../src/app/index.ts';
import type { Fact } from '../../src/book/index.ts';
import type { LapSession } from '../../src/laps/index.ts';
import truth from '../fixtures/laps/truth.json' with { type: 'json' };
import { type Run, runCli } from './run-cli.ts';

const log = readFileSync(new URL('../fixtures/laps/clean_05hz.csv', import.meta.url));
const known = truth.tracks[truth.files.find(({ file }) => file === 'clean_05hz.csv')?.track as 'K1'];
const gates = known.gates.flatMap(({ left, right }) => ['--gate', [...left, ...right].join(',')]);

let folder = '';
const put = (name: string, bytes: string | Uint8Array): string => {
  writeFileSync(join(folder, name), bytes);
  return name;
};
const kw = (...words: readonly string[]): Promise<Run> => runCli(folder, words);
const json = async <T>(...words: readonly string[]): Promise<T> => JSON.parse((await kw(...words, '--json')).out) as T;
const kinds = async (): Promise<readonly string[]> =>
  (await json<{ readonly facts: readonly { readonly fact: Fact }[] }>('facts')).facts.map(({ fact }) => fact.kind);

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-laps-'));
  expect(await kw('new', 'kart.yaml', '--template', 'six-speed gearbox')).toMatchObject({ code: 0 });
  expect(await kw('log', 'note', 'new', '--kart', 'kart.yaml')).toMatchObject({ code: 0, err: '' });
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

describe('what cannot be read', () => {
  const bad: readonly (readonly [string, string | Uint8Array])[] = [
    ['empty.csv', ''],
    ['page.csv', '<!DOCTYPE html><html><body>Please sign in</body></html>'],
    ['binary.csv', Uint8Array.from({ length: 5000 }, (_, n) => (n * 7919) % 251)],
    [
      'bomb.gpx',
      '<?xml version="1.0"?><!DOCTYPE gpx [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;">]><gpx><trk>&b;</trk></gpx>',
    ],
    ['nowhere.csv', `t,lat,lon\n${Array.from({ length: 50 }, (_, n) => `${n},0,0\n`).join('')}`],
    ['numbers.csv', 'a,b,c\n1,2,3\n4,5,6\n'],
  ];
  test.each(bad)('%s says what came and what to do, and leaves the book as it was', async (name, bytes) => {
    const before = await kinds();
    const run = await kw('laps', 'import', put(name, bytes));
    expect(run).toMatchObject({ code: 3, out: '' });
    expect(run.err).toMatch(new RegExp(`^kartwright: ${name}.*Expected .+, got .+\\.`));
    expect(await kinds()).toEqual(before);
  });
  test('a file that is not there, a gate that is none and a gate no lap crosses are told apart', async () => {
    const before = await kinds();
    expect((await kw('laps', 'import', 'none.csv')).err).toContain('none.csv: Expected a file that can be read');
    const name = put('heat.csv', log);
    expect((await kw('laps', 'import', name, '--gate', '45,10')).err).toContain('Expected two points in degrees');
    const far = await kw('laps', 'import', name, '--gate', '46.5,10,46.5001,10');
    expect(far).toMatchObject({ code: 3 });
    expect(far.err).toContain('No lap crosses this gate');
    expect(far.err).toContain('--sure');
    expect(await kinds()).toEqual(before);
  });
});

describe('a log', () => {
  test('makes one run with its laps, and is noticed when it comes again', async () => {
    const run = await kw('laps', 'import', put('heat.csv', log), ...gates, '--track', 'Loop', '--session', 'Heat 1');
    expect(run).toMatchObject({ code: 0, err: '' });
    expect(run.out).toContain(`${known.laps.length} laps by log`);
    expect((await kinds()).slice(-2)).toEqual(['ran', 'laps']);
    const again = await kw('laps', 'import', 'heat.csv');
    expect(again).toMatchObject({ code: 3 });
    expect(again.err).toContain('came as "heat.csv"');
    const { sessions } = await json<{ sessions: readonly LapSession[] }>('laps', 'list');
    expect(sessions).toMatchObject([{ track: 'Loop', session: 'Heat 1', laps: known.laps.length }]);
  });
  test('that is cut or damaged gives what is whole in it, and counts the rest', async () => {
    const text = log.toString();
    const lines = text.slice(0, Math.floor(text.length * 0.7)).split('\n');
    lines.splice(50, 0, lines[20] ?? '', lines[21] ?? '', '2.0,0,0,1,1', 'x,y');
    const run = await kw('laps', 'import', put('cut.csv', lines.join('\n')), '--sure', '--session', 'Heat 2', ...gates);
    expect(run).toMatchObject({ code: 0, err: '' });
    expect(run.out).toMatch(/passed over: \d+ fixes whose time runs backwards/);
    expect(run.out).toContain('lines with more or fewer fields');
    const { sessions } = await json<{ sessions: readonly LapSession[] }>('laps', 'list', '--session', 'Heat 2');
    const laps = sessions[0]?.times.filter(({ number }) => number !== null) ?? [];
    expect(laps.length).toBeGreaterThan(1);
    expect(laps.length).toBeLessThan(known.laps.length);
    for (const [n, { time }] of laps.entries()) expect(Math.abs(time - (known.laps[n]?.time ?? 0))).toBeLessThan(0.02);
  });
  test('of more than 64 MB streams through with its progress; its laps are kept and the file is not', async () => {
    const out = createWriteStream(join(folder, 'large.csv'));
    out.write(log);
    const noise = `${Array.from({ length: 20_000 }, () => 'no,number,in,this,row').join('\n')}\n`;
    for (let n = 0; n < 155; n++) if (!out.write(noise)) await once(out, 'drain');
    out.end();
    await once(out, 'close');
    const run = await kw('laps', 'import', 'large.csv', '--session', 'Large', '--sure', ...gates);
    expect(run).toMatchObject({ code: 0 });
    expect(run.err).toContain('read 50 % of');
    expect(run.out).toContain('larger than the 64 MB that the book keeps');
    const { sessions } = await json<{ sessions: readonly LapSession[] }>('laps', 'list', '--session', 'Large');
    expect(sessions).toMatchObject([{ fileKept: false, laps: known.laps.length }]);
  }, 180_000);
});

test('a stopwatch makes laps too; a session logged before is asked about and gets them', async () => {
  const [ran] = (
    await json<{ facts: readonly Fact[] }>('log', 'ran', '--minutes', '4', '--laps', '3', '--session', 'Final')
  ).facts;
  const asked = await kw('laps', 'by-hand', '52.31', '0:52.1', '1.02,5', '--session', 'Final');
  expect(asked).toMatchObject({ code: 3 });
  expect(asked.err).toContain(`run ${ran?.id}`);
  const done = await kw('laps', 'by-hand', '52.31', '0:52.1', '1.02,5', '--run', ran?.id ?? '');
  expect(done).toMatchObject({ code: 0, err: '' });
  expect(done.out).toContain('best 52.100 s');
  expect(done.out).toContain('no hours are added');
  const sheet = await json<SessionSheet>('laps', 'sheet', 'Final');
  expect(sheet).toMatchObject({ session: { minutes: 4 }, laps: { laps: 3, timed: 'by hand' } });
});

test('the demo season has laps, a page a session and the best of each track', async () => {
  const sheet = await kw('laps', 'sheet', '--demo', 'Saltmere sprint Practice 2');
  expect(sheet).toMatchObject({ code: 0, err: '' });
  expect(sheet.out).toContain('(invented)');
  expect(sheet.out).toContain('overall rear width: 1390 mm → 1360 mm');
  const season = await json<Season>('season', '--demo');
  expect(season.best.map(({ track }) => track)).toEqual(['Hollow Lane', 'Pell Quarry', 'Saltmere Ring']);
  expect(season.cost).toMatchObject({ money: 68 + 145 + 14 + 32, parts: 4 }); // kart-41.yaml
  const text = (await kw('season', '--demo')).out;
  expect(text).toContain('New parts put on: 4 for 259');
  const { sessions } = await json<{ sessions: readonly LapSession[] }>('laps', 'list', '--demo');
  const mean = (session: string): number => {
    const times =
      sessions
        .find(one => one.session === session)
        ?.times.slice(3)
        .map(({ time }) => time) ?? [];
    return times.reduce((sum, time) => sum + time, 0) / times.length;
  };
  const [a, b, c, d] = ['Practice 1', 'Practice 2', 'Qualifying', 'Heat 1'].map(mean) as [
    number,
    number,
    number,
    number,
  ];
  expect((b + c) / 2 - (a + d) / 2).toBeGreaterThan(0.25); // made with 0.40 s; data/demo/README.md
  expect((b + c) / 2 - (a + d) / 2).toBeLessThan(0.55);
});
