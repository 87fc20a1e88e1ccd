import { expect, test } from 'vitest';
import { createApp } from '../app/index.ts';
import { demoText, kartReader, libraryFiles } from '../host/index.ts';
import { type LibraryTexts, readKart } from '../kart/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { createServer } from './server.ts';

const library = libraryFiles();
const app = createApp({
  store: memoryStore(),
  clock: { now: () => new Date(0) },
  ids: { next: () => '', salt: () => '0'.repeat(32) },
  reader: kartReader(library),
  device: 'bench',
});
const server = createServer(app, { library: async () => library });
const headers = { host: 'localhost:4100', 'content-type': 'application/json' };
const read = (text: unknown) =>
  server.request('http://localhost/api/kart-file', { method: 'POST', headers, body: JSON.stringify({ text }) });

test('a kart file is read for a device that has no reader at hand, and nothing is written', async () => {
  const { kart } = demoText();
  const answer = await read(kart);
  expect(await answer.json()).toEqual(JSON.parse(JSON.stringify(await app.read(kart))));
  const wrong = (await (await read(kart.replace('1045 mm', '1045 kg'))).json()) as { ok: boolean };
  expect(wrong.ok).toBe(false);
  expect((await read(7)).status).toBe(422);
  expect(await app.ends()).toEqual({});
});

test('with the library a device reads the same kart by itself, and fetches it again only when it was changed', async () => {
  const answer = await server.request('http://localhost/api/library', { headers });
  const texts = (await answer.json()) as LibraryTexts;
  const { kart } = demoText();
  expect(readKart(kart, texts)).toEqual(readKart(kart, library));
  const tag = answer.headers.get('etag') ?? '';
  const again = await server.request('http://localhost/api/library', { headers: { ...headers, 'if-none-match': tag } });
  expect([again.status, await again.text()]).toEqual([304, '']);
});
