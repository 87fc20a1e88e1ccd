/** The built server killed at random moments under load: what it acknowledged is in the book, once, and the book is whole. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { onTheWay, randoms, report, SEED, tries } from '../faults/size.ts';
import { type Postgres, postgresBinaries, startPostgres } from '../postgres.ts';
import { runCli } from './run-cli.ts';

const WRITERS = 4;
let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-killed-'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Starts, loads and kills the server once; ids of the facts it acknowledged. */
async function onceUnderLoad(more: Record<string, string>, after: number): Promise<readonly string[]> {
  const env = { ...process.env, KARTWRIGHT_DATA: join(folder, 'book'), ...more };
  const child = spawn(process.execPath, ['dist/cli.js', 'serve', '--port', '0', '--json', '--no-backup'], {
    env,
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const [line] = (await once(child.stdout, 'data')) as [Buffer];
  const { url } = JSON.parse(line.toString()) as { url: string };
  const acknowledged: string[] = [];
  let dead = false;
  const writing = Array.from({ length: WRITERS }, async (_, writer) => {
    for (let n = 0; !dead; n++) {
      const body = JSON.stringify({ payloads: [{ kind: 'note', text: `writer ${writer}, ${n}` }], by: 'A. Bench' });
      const answer = await fetch(new URL('/api/karts/41/facts', url), {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body,
      }).catch(() => undefined);
      const said = answer?.ok ? await answer.json().catch(() => undefined) : undefined;
      for (const { id } of (said as { facts?: { id: string }[] } | undefined)?.facts ?? []) acknowledged.push(id);
    }
  });
  // The first answer waits for the kart file to be read; a moment before it proves nothing.
  while (acknowledged.length === 0 && !dead) await new Promise(done => setTimeout(done, 5));
  await new Promise(done => setTimeout(done, after));
  child.kill('SIGKILL');
  dead = true;
  await Promise.all([once(child, 'exit'), ...writing]);
  return acknowledged;
}

async function killedAgainAndAgain(what: string, times: number, more: Record<string, string>): Promise<void> {
  const kw = (words: readonly string[], input = '') => runCli(folder, words, { input, more });
  expect((await kw(['book', 'import'], (await kw(['book', 'export', '--demo'])).out)).code).toBe(0);
  const random = randoms(SEED);
  const acknowledged: string[] = [];
  for (let n = 0; n < times; n++) {
    acknowledged.push(...(await onceUnderLoad(more, random() * 150)));
    onTheWay(what, n + 1, times);
  }
  const verified = await kw(['verify']);
  expect([verified.code, verified.err]).toEqual([0, '']);
  const kept = new Map<string, number>();
  for (const text of (await kw(['book', 'export'])).out.split('\n').slice(1)) {
    const id = text === '' ? undefined : (JSON.parse(text) as { id: string }).id;
    if (id !== undefined) kept.set(id, (kept.get(id) ?? 0) + 1);
  }
  expect(acknowledged.filter(id => kept.get(id) !== 1)).toEqual([]);
  expect(acknowledged.length).toBeGreaterThan(0);
  report(
    `${what}: server killed ${times} times under load, ${acknowledged.length} facts acknowledged, none lost, none doubled`,
  );
}

test('a book in a file', () => killedAgainAndAgain('SQLite', tries(2, 1000), {}), 7_200_000);

const bin = postgresBinaries();
describe.skipIf(bin === undefined)('a book in a database', () => {
  let server: Postgres;
  beforeAll(async () => {
    server = await startPostgres(bin ?? '');
  }, 120_000);
  afterAll(() => server?.stop(), 60_000);

  test('keeps what was acknowledged as well', async () => {
    await killedAgainAndAgain('PostgreSQL', tries(1, 1000), { DATABASE_URL: await server.newDatabase() });
  }, 7_200_000);
});
