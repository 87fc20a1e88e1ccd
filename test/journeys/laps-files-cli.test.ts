/** Logs of every format into the book, by the terminal and over HTTP: the same laps, whatever wrote them. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import type { LapSession } from '../../src/laps/index.ts';
import { drive } from '../drive.ts';
import { csvOf, gpxOf, nmeaOf } from '../drive-files.ts';
import { type Run, runCli } from './run-cli.ts';
import { type Served, startBuilt } from './served.ts';

const { rows, gates, laps } = drive({ laps: 4, rate: 5 });
const degrees = (radians: number): number => (radians * 180) / Math.PI;
const gate = gates
  .slice(0, 1)
  .flatMap(({ left, right }) => [left.lat, left.lon, right.lat, right.lon].map(degrees))
  .join(',');
/** Written between the fixes of the first by a second one that errs by 6 m. */
const mixed = rows.flatMap(row => [row, { ...row, time: row.time + 0.1, lat: row.lat + 6e-5 }]);
const jumped = rows.map((row, n) => (n === 300 || n === 301 ? { ...row, lat: row.lat + 1e-3 } : row));
const FILES: readonly (readonly [name: string, text: string, passed: RegExp | undefined])[] = [
  ['heat.gpx', gpxOf(rows), undefined],
  ['gps.nmea', nmeaOf(rows, { talker: 'GP' }), undefined],
  ['four-systems.nmea', nmeaOf(rows, { talker: 'GN' }), undefined],
  ['other-system.nmea', nmeaOf(rows, { talker: 'BD', sentences: 'RMC' }), undefined],
  ['no-satellites.nmea', nmeaOf(rows, { talker: 'XX', sentences: 'VTG RMC GGA' }), undefined],
  ['two-receivers.csv', csvOf(mixed), /passed over: \d+ fixes of a second receiver/],
  ['two-receivers.nmea', nmeaOf(mixed), /passed over: \d+ fixes of a second receiver/],
  ['jumps.csv', csvOf(jumped), /passed over: 2 fixes that jump away and come back/],
];

let folder = '';
let served: Served;
const kw = (...words: readonly string[]): Promise<Run> => runCli(folder, words);
beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-files-'));
  expect(await kw('new', 'kart.yaml', '--template', 'six-speed gearbox')).toMatchObject({ code: 0 });
  expect(await kw('log', 'note', 'new', '--kart', 'kart.yaml')).toMatchObject({ code: 0, err: '' });
  served = await startBuilt(['serve']);
  const text = 'kart: 1\nname: "7"\ntemplate: six-speed gearbox\n';
  await served.post('/api/karts/7/facts', { by: 'A', payloads: [{ kind: 'kart filed', text }] });
});
afterAll(async () => {
  await served?.stop();
  rmSync(folder, { recursive: true, force: true });
});

function expectLaps({ times }: LapSession): void {
  const found = times.filter(({ number }) => number !== null);
  expect(found).toHaveLength(laps.length);
  for (const [n, { time }] of found.entries())
    expect(Math.abs(time - (laps[n]?.time ?? Number.NaN))).toBeLessThan(0.05);
}

test.each(FILES)(
  '%s gives its laps in the terminal, and what was passed over is counted',
  async (name, text, passed) => {
    writeFileSync(join(folder, name), text);
    const run = await kw('laps', 'import', name, '--gate', gate, '--session', name, '--on', '2026-05-09', '--sure');
    expect(run).toMatchObject({ code: 0, err: '' });
    if (passed) expect(run.out.replace(/\s+/g, ' ')).toMatch(passed);
    else expect(run.out).not.toContain('passed over');
    expect(run.out.includes('names no day')).toBe(name.endsWith('.csv'));
    const list = await kw('laps', 'list', '--session', name, '--json');
    const [session] = (JSON.parse(list.out) as { sessions: readonly LapSession[] }).sessions;
    expect(session?.at.slice(0, 10)).toBe('2026-05-09');
    if (session) expectLaps(session);
  },
);

test.each(FILES)('%s gives the same over HTTP', async (name, text) => {
  const query = new URLSearchParams({ by: 'A', name, session: name, gate, at: '2026-05-09T12:00:00Z', sure: 'true' });
  const answer = await fetch(new URL(`/api/karts/7/laps?${query}`, served.url), { method: 'POST', body: text });
  expect(answer.status).toBe(201);
  expectLaps(((await answer.json()) as { session: LapSession }).session);
});

/** As files are found on cards and in mails; each is told from the others, and nothing of it comes into the book. */
const WRONG: readonly (readonly [name: string, bytes: string | Uint8Array, word: string])[] = [
  ['empty.gpx', '', 'an empty file'],
  ['binary.csv', Uint8Array.from({ length: 40_000 }, (_, n) => (n * 7919) % 251), 'binary'],
  ['sign-in.csv', `<!DOCTYPE html><html><body>${'Please sign in. '.repeat(3000)}</body></html>`, 'a web page'],
  ['nowhere.csv', `t,lat,lon\n${Array.from({ length: 50 }, (_, n) => `${n},0,0\n`).join('')}`, '0°, 0°'],
  ['backwards.csv', [...csvOf(rows.toReversed()).split('\n')].join('\n'), 'runs backwards'],
];
test.each(WRONG)('%s is refused over HTTP with what it is, and the book stays as it was', async (name, bytes, word) => {
  const facts = async () => (await served.get<{ facts: readonly unknown[] }>('/api/karts/7/facts')).facts.length;
  const before = await facts();
  const url = new URL(`/api/karts/7/laps?by=A&name=${name}`, served.url);
  const body = typeof bytes === 'string' ? bytes : new Blob([bytes as Uint8Array<ArrayBuffer>]);
  const answer = await fetch(url, { method: 'POST', body });
  expect(answer.status).toBe(422);
  expect(JSON.stringify(await answer.json())).toContain(word);
  expect(await facts()).toBe(before);
});

test('a gate that no lap crosses is asked about over HTTP, and more than the book keeps is refused before it is read', async () => {
  const url = new URL('/api/karts/7/laps?by=A&name=far.gpx&gate=46.5,10,46.5001,10&sure=false', served.url);
  const answer = await fetch(url, { method: 'POST', body: `${gpxOf(rows)}<!-- once more -->` });
  expect(answer.status).toBeGreaterThanOrEqual(400);
  expect(JSON.stringify(await answer.json())).toContain('No lap crosses this gate');
  const large = await fetch(new URL('/api/karts/7/laps?by=A', served.url), {
    method: 'POST',
    body: new Uint8Array(64_000_001),
  });
  expect(large.status).toBe(413);
  expect(JSON.stringify(await large.json())).toContain('at most 64 MB');
});
