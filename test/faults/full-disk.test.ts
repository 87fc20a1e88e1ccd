/**
 * A disk that is full at every write of a run: a real one of a few thousand pages, filled up but for 0, 1, 2 … of them. What was
 * acknowledged is there once, what was refused is not there at all, and the same store goes on when there is space again.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, rmSync, statfsSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type BookStore, createApp, proofOf } from '../../src/app/index.ts';
import { sealNext } from '../../src/book/index.ts';
import { fileSnapshots, kartReader, libraryFiles, randomIds } from '../../src/host/index.ts';
import { loadDriver } from '../../src/store/sqlite/driver.ts';
import { openSqliteStore } from '../../src/store/sqlite/index.ts';
import { openDatabase } from '../../src/store/sqlite/open.ts';
import { storeOn } from '../../src/store/sqlite/store.ts';
import { note } from '../store-contract/note.ts';
import { report, tries } from './size.ts';

const PAGE = 4096;
/** Its log grows to 1000 pages before it is brought into the file. Source: SQLite documentation, wal_autocheckpoint. */
const PAGES = 4000;
const bytes = (length: number, seed: number): Uint8Array =>
  Uint8Array.from({ length }, (_, n) => (n * 31 + seed) % 251);

type Said = { readonly kept: string[]; readonly files: Map<string, Uint8Array>; refused: number };

/** Facts, photos and raw logs, by turns; a refusal must be one in words. */
async function aRun(store: BookStore, part: string, said: Said): Promise<void> {
  const tried = async (work: () => Promise<unknown>, done: () => void): Promise<void> => {
    try {
      await work();
      done();
    } catch (error) {
      expect(error).toMatchObject({ name: 'StoreError', remedy: expect.stringMatching(/\w{3}/) });
      said.refused++;
    }
  };
  const fact = (id: string, text: string): Promise<void> =>
    tried(
      () => store.appendNext('bench', last => [sealNext(last, note(id, 'bench', text))]),
      () => said.kept.push(id),
    );
  for (let n = 0; n < 4; n++) {
    await fact(`${part}-${n}`, `said ${'again '.repeat(n * 150)}`);
    const [photo, log] = [bytes(9_000 + n, n), bytes(30_000 + n, n + 7)];
    for (const [file, type] of [
      [photo, 'image/jpeg'],
      [log, 'text/csv'],
    ] as const) {
      let hash = '';
      await tried(
        async () => {
          hash = await store.putFile(file, type);
        },
        () => said.files.set(hash, file),
      );
    }
  }
}

async function isWhole(path: string, said: Said): Promise<void> {
  const other = await openSqliteStore(path); // what the same connection believes proves nothing
  try {
    expect((await proofOf(other)).problems).toEqual([]);
    expect((await other.read()).map(({ fact }) => fact.id)).toEqual(said.kept);
    for (const [hash, file] of said.files) expect((await other.getFile(hash))?.bytes).toEqual(file);
  } finally {
    await other.close();
  }
}

function mounted(folder: string): boolean {
  try {
    execFileSync('mount', ['-t', 'tmpfs', '-o', `size=${PAGES * PAGE}`, 'kartwright-faults', folder], {
      stdio: 'pipe',
    });
    return true;
  } catch {
    return false;
  }
}

const folder = mkdtempSync(join(tmpdir(), 'kartwright-full-'));
const isDisk = mounted(folder);
afterAll(() => {
  // A driver that keeps its statements lets go of a closed file late: the disk goes when the last has.
  if (isDisk) execFileSync('umount', ['-l', folder]);
  rmSync(folder, { recursive: true, force: true });
});

describe.skipIf(!isDisk)('a disk of its own', () => {
  test('that is full at every write of a run', async () => {
    let [refused, kept, whole] = [0, 0, 0];
    for (let left = 0; ; left += tries(40, 1)) {
      const path = join(folder, 'book.sqlite');
      for (const end of ['', '-wal', '-shm']) rmSync(path + end, { force: true });
      const store = await openSqliteStore(path);
      const said: Said = { kept: [], files: new Map(), refused: 0 };
      await store.append([sealNext({ seq: 0, hash: '0'.repeat(64) }, note('first'))]);
      said.kept.push('first');
      const ballast = join(folder, 'ballast');
      writeFileSync(ballast, Buffer.alloc(Math.max(0, statfsSync(folder).bfree - left) * PAGE, 1));
      await aRun(store, 'full', said);
      const full = said.refused;
      rmSync(ballast);
      await isWhole(path, said);
      said.refused = 0;
      await aRun(store, 'after', said);
      expect(said.refused).toBe(0);
      await isWhole(path, said);
      await store.close();
      [refused, kept, whole] = [refused + full, kept + said.kept.length, whole + 1];
      if (full === 0) break;
    }
    report(
      `disk full with ${whole} different amounts of space left: ${refused} writes refused in words, ${kept} facts kept, all there`,
    );
    expect(refused).toBeGreaterThan(0);
  }, 1_800_000);

  test('that is full when a snapshot is written takes nothing from the book', async () => {
    const path = join(folder, 'snapshot.sqlite');
    const store = await openSqliteStore(path);
    const snapshots = fileSnapshots(join(folder, 'book.snapshot'));
    const clock = { now: () => new Date('2026-05-01T10:00:00Z') };
    const app = createApp({
      store,
      clock,
      ids: randomIds,
      reader: kartReader(libraryFiles()),
      device: 'bench',
      snapshots,
    });
    for (let n = 0; n < 2500; n += 500)
      await store.appendNext('bench', last => {
        let end = last;
        return Array.from({ length: 500 }, (_, k) => {
          const fact = sealNext(end, note(`s${n + k}`));
          end = fact;
          return fact;
        });
      });
    await app.ends();
    const ballast = join(folder, 'ballast');
    writeFileSync(ballast, Buffer.alloc(Math.max(0, statfsSync(folder).bfree - 2) * PAGE, 1));
    await app.close(); // a snapshot is due, and finds no space
    rmSync(ballast);
    expect(await snapshots.read()).toBeUndefined();
    const again = await openSqliteStore(path);
    expect((await proofOf(again)).facts).toBe(2500);
    await again.close();
    for (const end of ['', '-wal', '-shm']) rmSync(path + end, { force: true });
  }, 120_000);
});

describe('a file that may not grow', () => {
  let driver: Awaited<ReturnType<typeof loadDriver>>;
  beforeAll(async () => {
    driver = await loadDriver();
  });

  test('by one page more at every try', async () => {
    const place = isDisk ? folder : mkdtempSync(join(tmpdir(), 'kartwright-grow-'));
    let [refused, tried] = [0, 0];
    for (let pages = 8; ; pages += tries(40, 1)) {
      const path = join(place, `book-${pages}.sqlite`);
      const database = openDatabase(driver, path);
      const store = storeOn(database, path);
      const said: Said = { kept: [], files: new Map(), refused: 0 };
      database.exec(`pragma max_page_count = ${pages}`);
      await aRun(store, 'full', said);
      const full = said.refused;
      await isWhole(path, said);
      database.exec('pragma max_page_count = 1000000');
      said.refused = 0;
      await aRun(store, 'after', said);
      expect(said.refused).toBe(0);
      await isWhole(path, said);
      await store.close();
      for (const end of ['', '-wal', '-shm']) rmSync(path + end, { force: true });
      [refused, tried] = [refused + full, tried + 1];
      if (full === 0) break;
    }
    if (!isDisk) rmSync(place, { recursive: true, force: true });
    report(`a file that may not grow, at ${tried} sizes: ${refused} writes refused in words, nothing half written`);
    expect(refused).toBeGreaterThan(0);
  }, 1_800_000);
});
