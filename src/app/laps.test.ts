import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { drive } from '../../test/drive.ts';
import { csvOf, nmeaOf } from '../../test/drive-files.ts';
import { smallBench } from '../../test/fixtures/small-bench.ts';
import { importLines } from '../book/index.ts';
import { type Gate, gateForBook, lapSessions } from '../laps/index.ts';
import { lapsOfBook } from './index.ts';

const fixture = (name: string): Uint8Array => readFileSync(new URL(`../../test/fixtures/${name}`, import.meta.url));
const pieces = function* (bytes: Uint8Array, size = 65_536) {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
};
const text = (said: string): { chunks: Uint8Array[] } => ({ chunks: [new TextEncoder().encode(said)] });
const log = (name = 'clean_05hz.csv') => ({ chunks: pieces(fixture(`laps/${name}`)) });
const truth = JSON.parse(new TextDecoder().decode(fixture('laps/truth.json'))) as {
  tracks: Record<string, { laps: { time: number }[]; gates: { left: number[]; right: number[] }[] }>;
  files: { file: string; track: string }[];
};
const trackOf = (file: string) => truth.tracks[truth.files.find(one => one.file === file)?.track ?? ''];
const gatesOf = (file: string): readonly string[] =>
  (trackOf(file)?.gates ?? []).map(({ left, right }) => [...left, ...right].join(','));
const gateTexts = (gates: readonly Gate[]): readonly string[] =>
  gates.map(gateForBook).map(({ left, right }) => [...left, ...right].join(','));
const said = { by: 'A', name: 'heat-1.csv' };
const codes = (done: { kind: string; problems?: readonly { code: string }[] }) =>
  done.kind === 'refused' ? done.problems?.map(({ code }) => code) : done.kind;

describe('a log in the book', () => {
  test('is one run and its laps, with the times that are known, and parts are older by it', async () => {
    const { app } = await smallBench();
    const file = 'clean_05hz.csv';
    const done = await app.importLaps('small', log(file), {
      ...said,
      gates: gatesOf(file),
      track: 'Loop',
      session: 'Heat 1',
    });
    if (done.kind !== 'recorded') throw new Error(JSON.stringify(done));
    expect(done.facts.map(({ kind }) => kind)).toEqual(['ran', 'laps']);
    const known = trackOf(file)?.laps.map(({ time }) => time) ?? [];
    const full = done.session.times.filter(({ number }) => number !== null);
    expect(full).toHaveLength(known.length);
    for (const [n, lap] of full.entries()) expect(Math.abs(lap.time - (known[n] ?? 0))).toBeLessThan(0.001);
    expect(done.session).toMatchObject({
      run: done.facts[0]?.id,
      track: 'Loop',
      session: 'Heat 1',
      timed: 'by log',
      laps: known.length,
    });
    const state = await app.state('small');
    expect(state.laps).toBe(known.length);
    const driven = known.reduce((sum, time) => sum + time, 0) / 60;
    expect(state.minutes).toBeGreaterThan(driven);
    expect(state.minutes).toBeLessThan(driven + 3);
    expect(await lapsOfBook(app, 'small')).toEqual([done.session]);
    expect((await app.getFile(done.session.file ?? ''))?.bytes).toEqual(new Uint8Array(fixture(`laps/${file}`)));
  });
  test('is noticed when it comes again, and cut anew without counting its hours twice', async () => {
    const { app } = await smallBench();
    await app.importLaps('small', log(), { ...said, gates: gatesOf('clean_05hz.csv') });
    const { minutes, laps } = await app.state('small');
    expect(codes(await app.importLaps('small', log(), said))).toEqual(['already in the book']);
    const again = await app.importLaps('small', log(), { ...said, sure: true });
    expect(again).toMatchObject({ kind: 'recorded', facts: [{ kind: 'laps' }] });
    expect(await app.state('small')).toMatchObject({ minutes, laps });
    expect(await lapsOfBook(app, 'small')).toHaveLength(1);
  });
  test('comes again without a word once both facts are struck', async () => {
    const { app, say } = await smallBench();
    const first = await app.importLaps('small', log(), said);
    for (const { id } of first.kind === 'recorded' ? first.facts : [])
      await say({ kind: 'struck', fact: id, why: 'wrong kart' });
    expect(codes(await app.importLaps('small', log(), said))).toBe('recorded');
  });
  test('is asked about when its session was logged by hand, and goes to that run', async () => {
    const { app, say } = await smallBench();
    const [run] = await say({ kind: 'ran', minutes: 12, laps: 9, session: 'Heat 1' });
    expect(codes(await app.importLaps('small', log(), { ...said, session: 'Heat 1' }))).toEqual(['already ran']);
    const done = await app.importLaps('small', log(), { ...said, ...(run ? { run } : {}) });
    expect(done).toMatchObject({ kind: 'recorded', session: { run, minutes: 12, session: 'Heat 1' } });
    expect((await app.state('small')).minutes).toBe(12);
    expect(codes(await app.importLaps('small', log('clean_10hz.csv'), { ...said, run: 'f9' }))).toEqual([
      'unknown fact',
    ]);
  });
  test('is cut at the gate of its track, as it was set last, and the track is told by it', async () => {
    const { app } = await smallBench();
    const gates = gatesOf('clean_05hz.csv');
    await app.importLaps('small', log('clean_05hz.csv'), { ...said, gates, track: 'Loop' });
    const done = await app.importLaps('small', log('clean_10hz.csv'), { ...said, sure: true });
    expect(done).toMatchObject({ kind: 'recorded', gate: 'remembered', session: { track: 'Loop' } });
    expect(done.kind === 'recorded' && done.session.gates).toHaveLength(gates.length);
  });
  test('reads its columns as they were chosen for the same header', async () => {
    const { app } = await smallBench();
    const odd = new TextDecoder().decode(fixture('laps/clean_05hz.csv')).replace(/^[^\n]*/, 'a,b,c,d,e');
    expect(codes(await app.importLaps('small', text(odd), said))).toEqual(['log']);
    const columns = ['time=a [s]', 'lat=b', 'lon=c'];
    expect(codes(await app.importLaps('small', text(odd), { ...said, columns }))).toBe('recorded');
    expect(codes(await app.importLaps('small', text(`${odd}\n`), { ...said, sure: true }))).toBe('recorded');
    expect(codes(await app.importLaps('small', text(odd), { ...said, columns: ['tim=a'] }))).toEqual(['wrong shape']);
  });
  test('keeps a lap that a person marked, and does not compare it', async () => {
    const { app } = await smallBench();
    const none = await app.importLaps('small', log(), { ...said, without: [2, 40] });
    expect(none).toMatchObject({ kind: 'refused', problems: [{ code: 'wrong shape', where: 'without' }] });
    const plain = await app.importLaps('small', log(), said);
    const best = plain.kind === 'recorded' ? (plain.session.best?.number ?? 0) : 0;
    const done = await app.importLaps('small', log(), { ...said, sure: true, without: [best] });
    if (done.kind !== 'recorded') throw new Error(JSON.stringify(done));
    expect(done.session.times.filter(({ marked }) => marked).map(({ number }) => number)).toEqual([best]);
    expect(done.session.best?.number).not.toBe(best);
    expect(done.session.laps).toBe(plain.kind === 'recorded' ? plain.session.laps : 0);
  });
  test('that is stopped leaves nothing', async () => {
    const { app } = await smallBench();
    let read = 0;
    const stopped = { ...log(), cancelled: () => read > 0, progress: () => void read++ };
    expect(codes(await app.importLaps('small', stopped, said))).toBe('cancelled');
    expect(await app.facts('small')).toHaveLength(1);
  });
  test('without a lap is asked about, and then counts its running alone', async () => {
    const { app } = await smallBench();
    const gates = ['46.5,10.0,46.5001,10.0'];
    const done = await app.importLaps('small', log(), { ...said, gates });
    expect(codes(done)).toEqual(['no laps']);
    expect(await app.facts('small')).toHaveLength(1);
    expect(await app.importLaps('small', log(), { ...said, gates, sure: true })).toMatchObject({
      session: { laps: 0 },
    });
    expect((await app.state('small')).minutes).toBeGreaterThan(1);
  });
  test('of a logger left on all day is one run of many outings, however long, and minutes it does not bear out are asked about', async () => {
    const { app } = await smallBench();
    const hours = drive({ laps: 430, rate: 1 });
    const day = text(csvOf(hours.rows.filter(({ time }) => time % 3600 < 3000)));
    const done = await app.importLaps('small', day, { ...said, gates: gateTexts(hours.gates) });
    if (done.kind !== 'recorded') throw new Error(JSON.stringify(done));
    expect(new Set(done.session.times.map(({ outing }) => outing)).size).toBe(5);
    expect(done.session.laps).toBeGreaterThan(340);
    const whole = text(csvOf(hours.rows));
    expect(codes(await app.importLaps('small', whole, { ...said, minutes: 16_000 }))).toEqual(['far outside']);
    const all = await app.importLaps('small', whole, said);
    expect(all).toMatchObject({ kind: 'recorded', session: { laps: expect.any(Number) } });
    expect(all.kind === 'recorded' && all.session.minutes).toBeGreaterThan(240);
  });
  test('that names no day is written as of the day that was said, else of now, and says which; one with a day keeps it', async () => {
    const { app } = await smallBench();
    const told = async (bytes: { chunks: Uint8Array[] }, more = {}) => {
      const done = await app.importLaps('small', bytes, { ...said, ...more, sure: true });
      if (done.kind !== 'recorded') throw new Error(JSON.stringify(done));
      return { at: done.session.at, say: done.say.join(' ') };
    };
    const { rows } = drive({ laps: 3, rate: 5 });
    expect(await told(text(csvOf(rows)))).toEqual({
      at: expect.stringMatching(/^2026-03-14T10:00/),
      say: expect.stringContaining('names no day: it is written as of now, 2026-03-14 10:00 UTC'),
    });
    expect(await told(text(`${csvOf(rows)}\n`), { at: '2026-02-01T12:00:00.000Z' })).toEqual({
      at: '2026-02-01T12:00:00.000Z',
      say: expect.stringContaining('written as of 2026-02-01 12:00 UTC, as you said'),
    });
    const dated = await told(text(nmeaOf(rows, { date: '010226' })));
    expect(dated.at).toMatch(/^2026-02-01T00/);
    expect(dated.say).not.toContain('no day');
  });
  test('that is none says what it is, keeps no file and writes nothing', async () => {
    const { app } = await smallBench();
    for (const bad of ['', '<html><body>Sign in</body></html>', '\u0000\u0001\u0002'.repeat(99), 'a,b\n1,2\n']) {
      const done = await app.importLaps('small', text(bad), said);
      expect(codes(done)).toEqual(['log']);
    }
    expect(codes(await app.importLaps('small', log(), { ...said, gates: ['45.0,10.0,45.0,10.0'] }))).toEqual([
      'wrong shape',
    ]);
    expect(await app.facts('small')).toHaveLength(1);
  });
});

describe('laps of a stopwatch', () => {
  test('are a run and its laps, less sure than those of a log', async () => {
    const { app } = await smallBench();
    const done = await app.lapsByHand('small', '52.31 0:52.1 1.02,5', { by: 'A', session: 'Heat 1', minutes: 5 });
    expect(done).toMatchObject({
      kind: 'recorded',
      session: { timed: 'by hand', laps: 3, minutes: 5, file: null, best: { number: 2, time: 52.1 } },
    });
    expect(await app.state('small')).toMatchObject({ minutes: 5, laps: 3 });
  });
  test('that are wrong are all named, and none is written', async () => {
    const { app } = await smallBench();
    expect(codes(await app.lapsByHand('small', '52.31 abc 1:75', { by: 'A' }))).toEqual(['reading', 'reading']);
    expect(codes(await app.lapsByHand('small', ' ', { by: 'A' }))).toEqual(['nothing to record']);
    expect(await app.facts('small')).toHaveLength(1);
  });
});

describe('laps as facts', () => {
  test('B22 laps of an old book are read: how many there were, and nothing of their times', () => {
    const read = importLines(new TextDecoder().decode(fixture('books/laps-without-times.jsonl')));
    if (read.kind !== 'facts') throw new Error(JSON.stringify(read));
    expect(lapSessions(read.facts)).toMatchObject([{ laps: 9, times: [], timed: 'not said', run: null, best: null }]);
  });
  test('B28 change nothing in the state, and B29 outlive a struck run without its hours', async () => {
    const { app, say } = await smallBench();
    const done = await app.lapsByHand('small', '52.31 52.40', { by: 'A' });
    const run = done.kind === 'recorded' ? done.facts[0]?.id : '';
    await say({ kind: 'struck', fact: run, why: 'twice' });
    expect(await app.state('small')).toMatchObject({ minutes: 0, laps: 0 });
    expect(await lapsOfBook(app, 'small')).toMatchObject([{ run: null, minutes: null, laps: 2 }]);
  });
  test('must agree with themselves and with the book', async () => {
    const { say } = await smallBench();
    const times = [{ time: 52.3, spread: 0.1 }];
    const hand = { kind: 'laps', name: 'x', timed: 'by hand', laps: 1, times };
    expect(await say({ ...hand, laps: 2 })).toEqual(['wrong shape']);
    expect(await say({ ...hand, timed: undefined })).toEqual(['wrong shape']);
    expect(await say({ ...hand, run: 'f1' })).toEqual(['unknown fact']);
    expect(await say({ ...hand, timed: 'by log', file: 'a'.repeat(64) })).toEqual(['unknown file']);
    expect(await say({ ...hand, gates: [{ left: [45, 10], right: [45, 10] }] })).toEqual(['wrong shape']);
    const [run] = await say({ kind: 'ran', minutes: 2 });
    expect(await say({ ...hand, run })).toEqual(['f3']);
    expect(await say({ ...hand, run })).toEqual(['already in the book']);
    expect(await say({ ...hand, run }, { sure: true })).toEqual(['f4']);
  });
});
