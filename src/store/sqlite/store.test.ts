import { copyFile, mkdtemp, readdir, readFile, rm, truncate, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import { note } from '../../../test/store-contract/note.ts';
import { redactionOf } from '../../../test/store-contract/redacting.ts';
import { CHAIN_START, sealAll, sealNext } from '../../book/index.ts';
import { type Database, loadDriver } from './driver.ts';
import { openDatabase } from './open.ts';
import { openSqliteStore, storeOn } from './store.ts';

const driver = await loadDriver();
let folder: string;
let path: string;
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'kartwright-sqlite-'));
  path = join(folder, 'book.db');
});
afterEach(() => rm(folder, { recursive: true, force: true }));

const some = (count: number) =>
  sealAll(
    CHAIN_START,
    Array.from({ length: count }, (_, i) => note(`f${i}`)),
  );

function raw<T>(work: (database: Database) => T, file = path): T {
  const database = new driver.DatabaseSync(file);
  try {
    return work(database);
  } finally {
    database.close();
  }
}

async function bookOf(count: number): Promise<void> {
  const store = await openSqliteStore(path);
  await store.append(some(count));
  await store.close();
}

/** Refused, with a remedy, and no byte and no file beside it changed. */
async function expectRefused(code: string, message: RegExp): Promise<void> {
  const [before, files] = [await readFile(path), await readdir(folder)];
  await expect(openSqliteStore(path)).rejects.toMatchObject({
    name: 'StoreError',
    code,
    message: expect.stringMatching(message),
    remedy: expect.stringMatching(/\w/),
  });
  expect((await readFile(path)).equals(before)).toBe(true);
  expect(await readdir(folder)).toEqual(files);
}

describe('a file that is opened', () => {
  it('waits for the disk at every fact and keeps a log beside the file', async () => {
    const database = openDatabase(driver, path);
    const get = (name: string) => Object.values(database.prepare(`pragma ${name}`).get() as object)[0];
    // Source: SQLite documentation, PRAGMA synchronous: 2 is FULL.
    expect([get('journal_mode'), get('synchronous'), get('user_version')]).toEqual(['wal', 2, 1]);
    database.close();
  });

  it('B22 is refused when a newer version of the program wrote it, and stays as it was', async () => {
    await bookOf(3);
    raw(database => database.exec('pragma user_version = 3'));
    await expectRefused('newer format', /up to format 2, got format 3/);
  });

  it('B22 is refused when its fact is of a newer format', async () => {
    await bookOf(1);
    const [fact] = some(1);
    raw(database =>
      database
        .prepare("insert into fact (id, hash, device, seq, body) values ('n', 'n', 'n', 1, ?)")
        .run(JSON.stringify({ ...fact, v: 3 })),
    );
    const store = await openSqliteStore(path);
    await expect(store.read()).rejects.toMatchObject({ code: 'newer format' });
    await store.close();
  });

  it('B22 stays open to an older program until something is written that it could not read', async () => {
    const format = () => raw(database => Object.values(database.prepare('pragma user_version').get() as object)[0]);
    await bookOf(2);
    expect(format()).toBe(1);
    const store = await openSqliteStore(path);
    await store.appendNext('phone', last => [sealNext(last, note('old', 'phone'))]);
    expect(format()).toBe(1);
    await store.appendNext('phone', last => [sealNext(last, { ...note('new', 'phone'), salt: '0'.repeat(32) })]);
    expect(format()).toBe(2);
    await store.close();
  });

  it('B35 holds no letter of what was taken out, nor does its log', async () => {
    const store = await openSqliteStore(path);
    const facts = sealAll(
      CHAIN_START,
      Array.from({ length: 50 }, (_, i) => ({ ...note(`n${i}`), by: 'Somebody Rare' })),
    );
    await store.append(facts);
    const photo = new TextEncoder().encode('a rare picture '.repeat(1000));
    const hash = await store.putFile(photo, 'image/png');
    const holds = async (text: string): Promise<boolean> => {
      const files = await readdir(folder);
      const all = await Promise.all(files.map(file => readFile(join(folder, file))));
      return all.some(bytes => bytes.includes(text));
    };
    expect(await holds('Somebody Rare')).toBe(true);
    expect(await holds('a rare picture')).toBe(true);
    await store.append([redactionOf(facts, [hash])]);
    expect(await holds('Somebody Rare')).toBe(false);
    expect(await holds('a rare picture')).toBe(false);
    await store.close();
  });

  it('is refused when it belongs to another program, and stays as it was', async () => {
    raw(database => database.exec('create table recipe (name text)'));
    await expectRefused('not a book', /an SQLite file of another/);
  });

  it('is refused when it is no database, and stays as it was', async () => {
    await writeFile(path, 'a shopping list\n'.repeat(100));
    await expectRefused('not a book', /no book/);
  });

  it('is refused when its folder is missing', async () => {
    await expect(openSqliteStore(join(folder, 'none', 'book.db'))).rejects.toMatchObject({ code: 'cannot open' });
  });

  it('is made when it is empty', async () => {
    await writeFile(path, '');
    await bookOf(2);
    expect((await readFile(path)).length).toBeGreaterThan(0);
  });

  it('B4 lets nobody change or delete a fact, not even past the program', async () => {
    await bookOf(2);
    expect(() => raw(database => database.exec("update fact set body = '{}'"))).toThrow('a fact is never changed');
    expect(() => raw(database => database.exec('delete from fact'))).toThrow('a fact is never deleted');
  });
});

describe('a file that was damaged', () => {
  it('is told as damaged when it was cut off', async () => {
    await bookOf(500);
    await truncate(path, Math.floor((await readFile(path)).length / 2 / 4096) * 4096);
    const work = openSqliteStore(path).then(store => store.read().finally(() => store.close()));
    await expect(work).rejects.toMatchObject({ code: 'damaged', remedy: expect.stringContaining('last export') });
  });

  it('is told as damaged when a page of it is rubbish', async () => {
    await bookOf(500);
    const bytes = await readFile(path);
    await writeFile(path, bytes.fill(0xa5, 8 * 4096, 40 * 4096));
    const work = openSqliteStore(path).then(store => store.read().finally(() => store.close()));
    await expect(work).rejects.toMatchObject({ code: 'damaged' });
  });

  it('is told as damaged, with its row, when a fact is not to be read', async () => {
    await bookOf(1);
    raw(database =>
      database.exec("insert into fact (id, hash, device, seq, body) values ('x', 'x', 'x', 1, '{\"v\":')"),
    );
    const store = await openSqliteStore(path);
    await expect(store.read()).rejects.toMatchObject({ code: 'damaged', message: expect.stringContaining('row 2') });
    await store.close();
  });
});

describe('a disk that is full', () => {
  const FULL_PAGES = 20;

  it('is told with its remedy, nothing is half written, and the book goes on once there is space', async () => {
    const database = openDatabase(driver, path);
    const store = storeOn(database, path);
    const kept = some(20);
    await store.append(kept);
    database.exec(`pragma max_page_count = ${FULL_PAGES}`);
    let end = kept.at(-1) ?? CHAIN_START;
    const next = Array.from({ length: 300 }, (_, i) => {
      const fact = sealNext(end, note(`more${i}`));
      end = fact;
      return fact;
    });

    await expect(store.append(next)).rejects.toMatchObject({
      name: 'StoreError',
      code: 'disk full',
      remedy: expect.stringContaining('free some space'),
    });
    await expect(store.putFile(new Uint8Array(200_000), 'image/jpeg')).rejects.toMatchObject({ code: 'disk full' });

    // Through another connection: what this one believes proves nothing.
    const other = await openSqliteStore(path);
    expect((await other.read()).map(k => k.fact)).toEqual(kept);
    await other.close();

    database.exec('pragma max_page_count = 1000000');
    expect(await store.append(next)).toEqual({ kind: 'kept', added: 300, known: 0 });
    await store.close();
  });
});

describe('a book that another program holds', () => {
  it('is told as busy, nothing is written, and it goes on after', async () => {
    const database = openDatabase(driver, path);
    database.exec('pragma busy_timeout = 30');
    const store = storeOn(database, path);
    const holder = new driver.DatabaseSync(path);
    holder.exec('begin immediate');
    await expect(store.append(some(1))).rejects.toMatchObject({
      code: 'busy',
      remedy: expect.stringContaining('wait'),
    });
    expect(await store.read()).toEqual([]);
    holder.exec('rollback');
    holder.close();
    expect(await store.append(some(1))).toEqual({ kind: 'kept', added: 1, known: 0 });
    await store.close();
  });

  it('can be copied whole while it is closed', async () => {
    await bookOf(10);
    const copy = join(folder, 'copy.db');
    await copyFile(path, copy);
    const store = await openSqliteStore(copy);
    expect((await store.read()).length).toBe(10);
    await store.close();
  });
});
