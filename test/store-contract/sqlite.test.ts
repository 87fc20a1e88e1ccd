import { type ChildProcess, spawn } from 'node:child_process';
import { once } from 'node:events';
import { mkdtemp, open, readdir, rm, stat } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { type Fact, sealNext, verifyChain } from '../../src/book/index.ts';
import { openSqliteStore } from '../../src/store/sqlite/index.ts';
import { bookStoreContract } from './book-store.ts';
import { note } from './note.ts';

const newFolder = (): Promise<string> => mkdtemp(join(tmpdir(), 'kartwright-book-'));

bookStoreContract({
  name: 'a SQLite file',
  shared: true,
  place: async () => {
    const folder = await newFolder();
    return {
      open: () => openSqliteStore(join(folder, 'book.db')),
      remove: () => rm(folder, { recursive: true, force: true }),
    };
  },
});

/** The writer is TypeScript, which Node 20 does not run by itself: Vite, which runs these tests, runs it. */
const RUN = `
  const { runnerImport } = await import('vite');
  await runnerImport(process.argv[1], { configFile: false, logLevel: 'error' });
`;

type Writer = { readonly process: ChildProcess; readonly acknowledged: string[]; readonly ended: Promise<unknown> };

function startWriter(path: string, name: string, count: number): Writer {
  const file = fileURLToPath(new URL('./writer.ts', import.meta.url));
  const child = spawn(process.execPath, ['--input-type=module', '-e', RUN, file, path, name, String(count)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  const acknowledged: string[] = [];
  let rest = '';
  child.stdout.setEncoding('utf8').on('data', (text: string) => {
    const lines = (rest + text).split('\n');
    rest = lines.pop() ?? '';
    acknowledged.push(...lines);
  });
  return { process: child, acknowledged, ended: once(child, 'close') };
}

describe('a book in a SQLite file that several programs use', () => {
  let folder: string;
  let path: string;
  beforeEach(async () => {
    folder = await newFolder();
    path = join(folder, 'book.db');
  });
  afterEach(() => rm(folder, { recursive: true, force: true }));

  async function facts(): Promise<readonly Fact[]> {
    const store = await openSqliteStore(path);
    const all = (await store.read()).map(kept => kept.fact);
    await store.close();
    return all;
  }

  it('takes the facts of three programs that make the book and write to one chain at the same time', async () => {
    const writers = ['first', 'second', 'third'].map(name => startWriter(path, name, 100));
    await Promise.all(writers.map(writer => writer.ended));
    expect(writers.map(writer => writer.process.exitCode)).toEqual([0, 0, 0]);
    const all = await facts();
    expect(verifyChain(all)).toEqual([]);
    expect(new Set(all.map(fact => fact.id))).toEqual(new Set(writers.flatMap(writer => writer.acknowledged)));
    expect(all.length).toBe(300);
  });

  it('has every fact that was acknowledged before the writer was killed, again and again', async () => {
    const acknowledged: string[] = [];
    for (let round = 0; round < 3; round++) {
      const writer = startWriter(path, `round${round}`, 1_000_000);
      await expect.poll(() => writer.acknowledged.length, { timeout: 30_000 }).toBeGreaterThan(50 + 37 * round);
      writer.process.kill('SIGKILL');
      await writer.ended;
      acknowledged.push(...writer.acknowledged);
      const all = await facts();
      const ids = new Set(all.map(fact => fact.id));
      expect(acknowledged.filter(id => !ids.has(id))).toEqual([]);
      expect(verifyChain(all)).toEqual([]);
      expect(all.length - acknowledged.length).toBeLessThanOrEqual(round + 1); // kept, but killed before it could say so
    }
  });

  it('loses only what was being written when the last write is torn', async () => {
    const writer = startWriter(path, 'torn', 1_000_000);
    await expect.poll(() => writer.acknowledged.length, { timeout: 30_000 }).toBeGreaterThan(20);
    writer.process.kill('SIGKILL');
    await writer.ended;
    expect(await readdir(folder)).toContain('book.db-wal');
    const log = await open(`${path}-wal`, 'r+');
    await log.truncate((await stat(`${path}-wal`)).size - 100);
    await log.close();
    const all = await facts();
    expect(verifyChain(all)).toEqual([]);
    expect(all.length).toBeGreaterThanOrEqual(writer.acknowledged.length - 1);
    const store = await openSqliteStore(path);
    await store.appendNext('bench', last => [sealNext(last, note('after'))]);
    await store.close();
    expect((await facts()).at(-1)?.id).toBe('after');
  });
});
