import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { createApp } from '../app/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { readPages } from './pages.ts';
import { createServer } from './server.ts';

/** How a path out of a folder is written, plain and in disguise. Source: usual lists of traversal strings, from memory. */
const OUT = [
  '../secret.txt',
  '..%2fsecret.txt',
  '%2e%2e/secret.txt',
  '%2e%2e%2fsecret.txt',
  '..%252fsecret.txt',
  '..\\secret.txt',
  '..%5csecret.txt',
  '....//secret.txt',
  '..;/secret.txt',
  '%c0%ae%c0%ae/secret.txt',
  'assets/../../secret.txt',
  'assets/%2e%2e/%2e%2e/secret.txt',
  '/secret.txt',
  'secret.txt%00.html',
  'file:///secret.txt',
  'C:\\secret.txt',
  '\\\\server\\secret.txt',
];
let folder = '';
let server: ReturnType<typeof createServer>;
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-paths-'));
  mkdirSync(join(folder, 'web', 'assets'), { recursive: true });
  writeFileSync(join(folder, 'secret.txt'), 'the secret');
  writeFileSync(join(folder, 'web', 'index.html'), '<!doctype html>');
  writeFileSync(join(folder, 'web', 'assets', 'a.js'), 'void 0;');
  const reader = { read: async () => ({ ok: false, problems: [] }) as never };
  const clock = { now: () => new Date(0) };
  const app = createApp({
    store: memoryStore(),
    clock,
    ids: { next: () => 'id', salt: () => '0'.repeat(32) },
    reader,
    device: 'test',
  });
  server = createServer(app, { pages: readPages(join(folder, 'web')) });
  writeFileSync(join(folder, 'web', 'late.txt'), 'the secret'); // was not there at the start
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const ask = (path: string, init: RequestInit = {}) =>
  server.request(`http://localhost${path}`, { ...init, headers: { host: 'localhost', ...(init.headers as object) } });

test('no address leads to a file that is not of the built page', async () => {
  expect((await ask('/assets/a.js')).status).toBe(200);
  for (const path of [...OUT, 'late.txt'])
    for (const before of ['/', '/assets/', '/api/files/', '/api/karts/', '/api/karts/41/']) {
      const answer = await ask(`${before}${path}`);
      expect([before + path, answer.status >= 400]).toEqual([before + path, true]);
      expect(await answer.text()).not.toContain('the secret');
    }
});

test('a photo lies in the book by its hash, whatever its name and type want to be, and is never run', async () => {
  const put = (type: string) =>
    ask('/api/files', { method: 'PUT', body: '<script>', headers: { 'content-type': type } });
  for (const type of ['text/html', 'image/svg+xml', 'application/javascript', ...OUT]) {
    const answer = await Promise.resolve(put(type)).catch(() => undefined);
    expect([type, answer?.status ?? 415]).toEqual([type, 415]);
  }
  const { hash } = (await (await put('image/png; name="../../x"')).json()) as { hash: string };
  const answer = await ask(`/api/files/${hash}`);
  expect(answer.headers.get('content-type')).toBe('image/png');
  expect(answer.headers.get('x-content-type-options')).toBe('nosniff');
  expect(answer.headers.get('content-security-policy')).toContain("default-src 'none'");
});

test('an import that names paths makes no file: facts are looked at, and refused or kept as text', async () => {
  for (const path of OUT) {
    const facts = [{ v: 1, id: path, kart: path, device: path, file: path, photo: path, kind: 'found' }];
    const answer = await ask('/api/book/take', {
      method: 'POST',
      body: JSON.stringify({ facts }),
      headers: { 'content-type': 'application/json' },
    });
    expect(answer.status).toBe(409);
  }
});

test('what the API answers is kept in no cache', async () => {
  for (const path of ['/api/karts', '/api/export', '/api/nothing', `/api/files/${'0'.repeat(64)}`])
    expect((await ask(path)).headers.get('cache-control')).toBe('no-store');
});
