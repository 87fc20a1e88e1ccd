import { readFileSync } from 'node:fs';
import { beforeEach, expect, test } from 'vitest';
import { type App, createApp, type FirstAnswers, type Opening, sheetOf } from '../app/index.ts';
import { demoText, kartReader, libraryFiles } from '../host/index.ts';
import type { SetupSheet, TrackSheet } from '../prep/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { createServer } from './server.ts';

const reader = kartReader(libraryFiles());
const text = demoText().kart;
let app: App;
let server: ReturnType<typeof createServer>;

let now = '2026-05-01T10:00:00.000Z';
beforeEach(async () => {
  now = '2026-05-01T10:00:00.000Z';
  let n = 0;
  app = createApp({
    store: memoryStore(),
    clock: { now: () => new Date(now) },
    ids: { next: () => `id-${++n}`, salt: () => '0'.repeat(32) },
    reader,
    device: 'test',
  });
  const filed = await app.fileKart(text, { by: 'R. Vale', at: '2026-04-01T10:00:00.000Z' });
  expect(filed.kind).toBe('recorded');
  const page = {
    bytes: new TextEncoder().encode('<!doctype html>'),
    type: 'text/html; charset=utf-8',
    cache: 'no-cache',
  };
  server = createServer(app, { pages: new Map([['/', page]]) });
});

const get = (path: string, headers: Record<string, string> = {}) =>
  server.request(`http://localhost${path}`, { headers: { host: 'localhost:4100', ...headers } });
const post = (path: string, body: unknown, headers: Record<string, string> = {}) =>
  server.request(`http://localhost${path}`, {
    method: 'POST',
    headers: { host: 'localhost:4100', 'content-type': 'application/json', ...headers },
    body: typeof body === 'string' ? body : JSON.stringify(body),
  });
const facts = (payloads: unknown[], more: object = {}) =>
  post('/api/karts/41/facts', { payloads, by: 'R. Vale', ...more });
const codes = async (response: Response): Promise<string[]> =>
  ((await response.json()) as { problems: { code: string }[] }).problems.map(p => p.code);

test('the karts of the book, and one of them whole, can be asked for', async () => {
  const list = (await (await get('/api/karts')).json()) as { karts: { name: string; invented: boolean }[] };
  expect(list.karts).toMatchObject([{ name: '41', invented: true }]);
  const kart = (await (await get('/api/karts/41')).json()) as { name: string; parts: object };
  expect(kart).toEqual(JSON.parse(JSON.stringify(await app.kart('41'))));
});

test('plan, due and fitness answer the same as the app does', async () => {
  for (const what of ['plan', 'due', 'fitness'] as const) {
    const sent = await (await get(`/api/karts/41/${what}`)).json();
    expect(sent).toEqual(JSON.parse(JSON.stringify(await app[what]('41'))));
  }
});

test('the set-up sheet is answered against the baseline, a session or a moment, and a session nobody knows is refused', async () => {
  const setupEffects = async () => readFileSync(new URL('../../data/setup-effects.yaml', import.meta.url), 'utf8');
  server = createServer(app, { setupEffects });
  const happened = async (at: string, payload: object): Promise<void> => {
    now = at;
    expect((await facts([payload])).status).toBe(201);
  };
  await happened('2026-05-02T10:00:00.000Z', { kind: 'set-up', changes: { caster: '18°' } });
  await happened('2026-05-02T11:00:00.000Z', { kind: 'ran', minutes: 8, session: 'Heat 1' });
  await happened('2026-05-02T12:00:00.000Z', { kind: 'set-up', changes: { caster: '16°' } });
  for (const against of ['baseline', 'heat 1', '2026-05-02T11:30:00Z']) {
    const response = await get(`/api/karts/41/setup?against=${encodeURIComponent(against)}`);
    expect(response.status).toBe(200);
    const sheet = (await response.json()) as SetupSheet;
    expect(sheet).toEqual(JSON.parse(JSON.stringify(await sheetOf(app, '41', { against }, await setupEffects()))));
    expect(sheet.differences).toMatchObject([{ name: 'caster', was: '18°', now: '16°', way: 'less' }]);
    expect(sheet.hints.map(({ change }) => change)).toEqual(['caster less']);
  }
  const then = (await (await get('/api/karts/41/setup?at=2026-05-02T11:00:00Z')).json()) as SetupSheet;
  expect(then.settings).toMatchObject([{ name: 'caster', value: '18°' }]);
  const refused = await get('/api/karts/41/setup?against=Heat%209');
  expect(refused.status).toBe(422);
  expect(await codes(refused)).toEqual(['unknown event']);
});

test('the track sheet is answered for the laps, the surface and the engine speed that are asked', async () => {
  now = '2026-05-02T09:00:00.000Z';
  const read = { celsius: 8, pascal: 99_800, pressureIs: 'station', humidity: 0.7, trackCelsius: 11 };
  expect((await facts([{ kind: 'weather', ...read }])).status).toBe(201);
  const response = await get('/api/karts/41/track?laps=12&wet=true&engineSpeed=12800%20rpm&speed=115%20km%2Fh');
  expect(response.status).toBe(200);
  const sheet = (await response.json()) as TrackSheet;
  const wanted = { engineSpeed: '12800 rpm', speed: '115 km/h' };
  expect(sheet).toEqual(JSON.parse(JSON.stringify(await app.track('41', { laps: 12, wet: true, wanted }))));
  expect(sheet).toMatchObject({ laps: 12, wet: true });
  expect(sheet.parts.map(({ subject }) => subject)).toEqual(['air', 'carburation', 'tyres', 'premix', 'gearing']);
  expect(sheet.parts[0]?.answer).toMatchObject({ kind: 'answer' });
  const before = (await (await get('/api/karts/41/track?at=2026-05-02T08:00:00Z')).json()) as TrackSheet;
  expect(before.parts[0]?.answer).toBeNull();
});

test('laps that no session has, half of a wanted speed and a surface that is no yes or no are refused in words', async () => {
  for (const query of ['laps=-3', 'laps=twelve', 'laps=0', 'laps=1000000', 'laps=12.5', 'wet=perhaps', 'speed=9'])
    expect([query, await codes(await get(`/api/karts/41/track?${query}`))]).toEqual([query, ['wrong shape']]);
  expect(await (await get('/api/karts/41/track?laps=1000000')).text()).toContain('got 1000000');
});

test('a fact that is written comes back with its row, and only facts after a row are sent', async () => {
  const part = 'rear wheel left';
  const written = await facts([{ kind: 'taken off', part }]);
  expect(written.status).toBe(201);
  const all = (await (await get('/api/karts/41/facts')).json()) as { facts: { row: number; fact: { kind: string } }[] };
  expect(all.facts.map(k => k.fact.kind)).toEqual(['kart filed', 'taken off']);
  const after = (await (await get(`/api/karts/41/facts?after=${all.facts[0]?.row}`)).json()) as { facts: unknown[] };
  expect(after.facts).toHaveLength(1);
});

test('a refused fact is answered with every problem, as a problem document, and nothing is written', async () => {
  const response = await facts([
    { kind: 'taken off', part: 'rear weel left' },
    { kind: 'checked', item: 'nothing/such', result: 'pass' },
  ]);
  expect(response.status).toBe(422);
  expect(response.headers.get('content-type')).toBe('application/problem+json');
  expect(await codes(response)).toEqual(['unknown part', 'unknown item']);
  expect(await app.kept('41')).toHaveLength(1);
});

test('a kart that is not in the book is 404 with the names there are', async () => {
  const response = await get('/api/karts/99/plan');
  expect(response.status).toBe(404);
  expect(await response.text()).toContain('41');
});

test('a value far outside is asked again, and is recorded as said when the person is sure', async () => {
  const kart = await app.kart('41');
  const item = Object.values(kart.items).find(
    i => i.measure?.plausible && !i.measure.min && !i.joint && i.needsOff.length === 0,
  );
  const measured = item ?? Object.values(kart.items).find(i => i.measure?.plausible && !i.joint);
  const unit = measured?.measure?.plausible?.max.unit;
  const payload = { kind: 'checked', item: measured?.id, result: 'fail', why: 'far off', reading: `99999 ${unit}` };
  const asked = await facts([payload]);
  expect(asked.status).toBe(409);
  const body = (await asked.json()) as { asksAgain: boolean; problems: { code: string }[] };
  expect(body).toMatchObject({ asksAgain: true, problems: [{ code: 'far outside' }] });
  const sure = await facts([payload], { sure: true });
  expect(sure.status).toBe(201);
  expect(((await sure.json()) as { facts: object[] }).facts).toMatchObject([{ reading: { text: `99999 ${unit}` } }]);
});

test('signing against the record is asked again, and the release then carries what stood open', async () => {
  const asked = await post('/api/karts/41/release', { signer: 'R. Vale' });
  expect(asked.status).toBe(409);
  expect(await codes(asked)).toEqual(['not fit']);
  const signed = await post('/api/karts/41/release', { signer: 'R. Vale', sure: true });
  expect(signed.status).toBe(201);
  const [fact] = ((await signed.json()) as { facts: { verdict: string; open: string[] }[] }).facts;
  expect(fact?.verdict).not.toBe('fit');
  expect(fact?.open.length).toBeGreaterThan(0);
});

test('who sends along what was shown signs for that, and for nothing that stands open besides', async () => {
  const other = await post('/api/karts/41/release', {
    signer: 'R. Vale',
    sure: true,
    seen: ['open, cosmetics: a scratch'],
  });
  expect(other.status).toBe(422);
  expect(await codes(other)).toEqual(['stands otherwise']);
});

test('a body that is no JSON, has an unknown key or says nothing of its type is refused in words', async () => {
  expect(await codes(await post('/api/karts/41/facts', '{'))).toEqual(['wrong shape']);
  expect(await codes(await facts([], { colour: 'red' }))).toEqual(['wrong shape', 'wrong shape']);
  const typeless = await post('/api/karts/41/facts', { payloads: [] }, { 'content-type': 'text/plain' });
  expect(typeless.status).toBe(422);
});

test('a body beyond the limit is refused before it is read', async () => {
  const response = await facts([{ kind: 'note', text: 'x'.repeat(1_100_000) }]);
  expect(response.status).toBe(413);
});

test('a request for another host name gets nothing, so a rebound name reaches no book', async () => {
  for (const host of ['evil.example', 'localhost.evil.example', '127.0.0.1.evil.example:4100', ''])
    expect((await get('/api/karts', { host })).status).toBe(421);
  for (const host of ['127.0.0.1:4100', '[::1]:4100', 'LOCALHOST:80'])
    expect((await get('/api/karts', { host })).status).toBe(200);
});

test('a write sent by the page of another origin is refused, one from our own page is taken', async () => {
  const note = { payloads: [{ kind: 'note', text: 'hello' }], by: 'R. Vale' };
  for (const origin of ['https://evil.example', 'null', 'http://localhost:4101'])
    expect((await post('/api/karts/41/facts', note, { origin })).status).toBe(403);
  expect((await post('/api/karts/41/facts', note, { 'sec-fetch-site': 'cross-site' })).status).toBe(403);
  expect((await post('/api/karts/41/facts', note, { origin: 'http://localhost:4100' })).status).toBe(201);
});

test('every answer forbids foreign scripts, framing and guessing of types', async () => {
  for (const path of ['/', '/api/karts', '/nowhere']) {
    const { headers } = await get(path);
    const policy = headers.get('content-security-policy') ?? '';
    expect(policy).toContain("default-src 'none'");
    expect(policy).toContain("script-src 'self'");
    expect(policy).toContain("frame-ancestors 'none'");
    expect(policy).not.toContain('unsafe-inline');
    expect(headers.get('x-content-type-options')).toBe('nosniff');
    expect(headers.get('cross-origin-resource-policy')).toBe('same-origin');
  }
});

test('only the files of the built page are served, whatever the path climbs to', async () => {
  expect((await get('/')).status).toBe(200);
  for (const path of ['/../package.json', '/%2e%2e/package.json', '/assets/..%2f..%2fpackage.json'])
    expect((await get(path)).status).toBe(404);
});

test('a photo is kept by its hash and given back as it was; a page is not taken for one', async () => {
  const put = (type: string, body: Uint8Array<ArrayBuffer>) =>
    server.request('http://localhost/api/files', {
      method: 'PUT',
      headers: { host: 'localhost', 'content-type': type },
      body,
    });
  const kept = await put('image/png', new Uint8Array([1, 2, 3]));
  expect(kept.status).toBe(201);
  const { hash } = (await kept.json()) as { hash: string };
  // SHA-256 of the bytes 01 02 03: printf '\x01\x02\x03' | sha256sum (GNU coreutils)
  expect(hash).toBe('039058c6f2c0cb492c533b0a4d14ef77cc0f78abccced5287d84a1a2011cfb81');
  const back = await get(`/api/files/${hash}`);
  expect(back.headers.get('content-type')).toBe('image/png');
  expect(new Uint8Array(await back.arrayBuffer())).toEqual(new Uint8Array([1, 2, 3]));
  expect((await put('text/html', new Uint8Array([60]))).status).toBe(415);
  expect((await get(`/api/files/${'0'.repeat(64)}`)).status).toBe(404);
});

test('the exported book is what the app exports', async () => {
  expect(await (await get('/api/export')).text()).toBe(await app.exportBook());
});

test('a page that listens is told when facts arrive', async () => {
  const response = await get('/api/live');
  expect(response.headers.get('content-type')).toContain('text/event-stream');
  const lines = response.body?.pipeThrough(new TextDecoderStream()).getReader();
  expect((await lines?.read())?.value).toContain('event: open');
  await facts([{ kind: 'note', text: 'hello' }]);
  expect((await lines?.read())?.value).toContain('event: facts');
  await lines?.cancel();
});

test('an address asked in a way that it does not take says which ways there are', async () => {
  const response = await server.request('http://localhost/api/karts/41/due', {
    method: 'DELETE',
    headers: { host: 'localhost:4100' },
  });
  expect(response.status).toBe(405);
  expect(response.headers.get('allow')).toBe('GET');
  expect(await codes(response)).toEqual(['wrong shape']);
});

test('a page that begins gets every answer of one kart, with the newest entries first', async () => {
  const opening = (await (await get('/api/opening?kart=41')).json()) as Opening;
  expect(opening.karts.map(({ name }) => name)).toEqual(['41']);
  const { facts: newest, entries, ...answers } = opening.answers as FirstAnswers;
  const { facts: all, ...asked } = await app.answers('41');
  const timeless = (of: object): object => ({ ...of, fitness: undefined, due: undefined }); // these say when they were asked
  expect(timeless(answers)).toEqual(timeless(asked)); // nothing in them is lost as JSON: no infinity, no NaN
  expect(entries).toBe(all.length);
  expect(newest.length).toBe(Math.min(300, all.length));
  expect(newest[0]?.fact.id).toBe(all.at(-1)?.fact.id);
  expect(((await (await get('/api/opening?kart=none')).json()) as Opening).answers?.kart.name).toBe('41');
});

test('events ahead and what is due before each are a calendar file', async () => {
  await facts([{ kind: 'event', event: 'Round 3', from: '2026-05-09T08:00:00.000Z', minutes: 60 }]);
  const response = await get('/api/karts/41/calendar');
  expect(response.headers.get('content-type')).toBe('text/calendar; charset=utf-8');
  expect(await response.text()).toContain('SUMMARY:Round 3\\, kart 41\r\n');
});
