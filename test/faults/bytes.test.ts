/** What a dying disk does to the file of a book: `verify` finds it, or nothing of the book has changed. */
import { cpSync, mkdtempSync, readFileSync, rmSync, statSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { proofOf } from '../../src/app/index.ts';
import { type Fact, sealNext } from '../../src/book/index.ts';
import { backUpSqlite, openSqliteStore } from '../../src/store/sqlite/index.ts';
import { note } from '../store-contract/note.ts';
import { onTheWay, randoms, report, SEED, tries } from './size.ts';

/** Of SQLite, by default. */
const PAGE = 4096;
let folder = '';
let whole: Buffer;
let facts: readonly Fact[];
let photo = '';
const text = (n: number): string => `what was seen on lap ${n}`;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'kartwright-bytes-'));
  const store = await openSqliteStore(join(folder, 'book.sqlite'));
  for (let n = 0; n < 12; n++)
    await store.appendNext(n % 3 ? 'bench' : 'phone', last => [
      sealNext(last, note(`f${n}`, n % 3 ? 'bench' : 'phone', text(n))),
    ]);
  photo = await store.putFile(
    Uint8Array.from({ length: 6000 }, (_, n) => n % 251),
    'image/jpeg',
  );
  facts = (await store.read()).map(({ fact }) => fact);
  await store.close();
  whole = readFileSync(join(folder, 'book.sqlite'));
});
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** 'found', or 'as before' when every fact and every byte of the photo still reads as it was written; anything else fails the test. */
async function judged(bytes: Uint8Array): Promise<'found' | 'as before'> {
  await new Promise(done => setImmediate(done)); // a file is let go when its statements are collected, which takes a turn of its own
  const path = join(folder, 'hurt.sqlite');
  for (const end of ['-wal', '-shm', '-journal']) rmSync(path + end, { force: true });
  writeFileSync(path, bytes);
  let store: Awaited<ReturnType<typeof openSqliteStore>>;
  try {
    store = await openSqliteStore(path);
  } catch (error) {
    expect(error).toMatchObject({ name: 'StoreError', remedy: expect.stringMatching(/\w/) });
    return 'found';
  }
  try {
    const { problems } = await proofOf(store);
    if (problems.length > 0) {
      for (const { where, message, remedy } of problems)
        expect([where, message, remedy].every(said => said !== '')).toBe(true);
      return 'found';
    }
    expect((await store.read()).map(({ fact }) => fact)).toEqual(facts);
    expect((await store.getFile(photo))?.bytes).toEqual(Uint8Array.from({ length: 6000 }, (_, n) => n % 251));
    return 'as before';
  } finally {
    await store.close();
  }
}

describe('a damaged file', () => {
  test('with a byte flipped anywhere is found out, or the byte was none of the book’s', async () => {
    const random = randoms(SEED);
    const places = tries(
      Array.from({ length: 120 }, () => Math.floor(random() * whole.length)),
      Array.from({ length: whole.length }, (_, n) => n),
    );
    let found = 0;
    for (const [n, at] of places.entries()) {
      onTheWay('bytes flipped', n, places.length);
      const hurt = Buffer.from(whole);
      hurt[at] = (hurt[at] ?? 0) ^ (1 + Math.floor(random() * 255));
      if ((await judged(hurt)) === 'found') found++;
    }
    report(`${places.length} bytes flipped in a book of ${whole.length}: ${found} found, the others were nobody’s`);
    expect(found).toBeGreaterThan(places.length / 10);
  }, 3_600_000);

  test('with a byte of what was written flipped is always found out, and the fact is named', async () => {
    const random = randoms(SEED + 1);
    for (let n = 0; n < 12; n++) {
      const hurt = Buffer.from(whole);
      const letter = Math.floor(random() * text(n).length);
      // Where a page was divided, an old copy of the text lies about that is nobody's any more.
      for (let at = whole.indexOf(`${text(n)}"`); at >= 0; at = whole.indexOf(`${text(n)}"`, at + 1))
        hurt[at + letter] = (hurt[at + letter] ?? 0) ^ 1;
      writeFileSync(join(folder, 'one.sqlite'), hurt);
      const store = await openSqliteStore(join(folder, 'one.sqlite'));
      const { problems } = await proofOf(store);
      await store.close();
      expect(problems.map(({ where }) => where)).toEqual([expect.stringContaining(`fact f${n}`)]);
    }
  });

  test('torn at any place is found out', async () => {
    const random = randoms(SEED + 2);
    const pages = Array.from({ length: Math.floor(whole.length / PAGE) - 1 }, (_, n) => (n + 1) * PAGE);
    const others = Array.from({ length: tries(20, 500) }, () => 1 + Math.floor(random() * (whole.length - 2)));
    for (const end of [...pages, ...others]) expect(await judged(whole.subarray(0, end))).toBe('found');
    report(`torn at ${pages.length} page ends and ${others.length} other places: each found`);
  });
});

test('a log torn at every end of a page, and between, loses only what was written last', async () => {
  const path = join(folder, 'logged.sqlite');
  const store = await openSqliteStore(path);
  for (let n = 0; n < 15; n++) await store.append([sealNext(await end(store), note(`w${n}`))]);
  const copy = join(folder, 'log.sqlite');
  const size = statSync(`${path}-wal`).size;
  const ends = [0, size];
  for (let at = 32; at < size; at += (PAGE + 24) / 2) ends.push(at); // 32 bytes, then frames of 24 bytes and a page
  ends.sort((a, b) => a - b);
  let last = 0;
  for (const at of ends) {
    cpSync(path, copy);
    cpSync(`${path}-wal`, `${copy}-wal`);
    rmSync(`${copy}-shm`, { force: true });
    truncateSync(`${copy}-wal`, at);
    const torn = await openSqliteStore(copy);
    const proof = await proofOf(torn);
    const ids = (await torn.read()).map(({ fact }) => fact.id);
    await torn.close();
    expect(proof.problems).toEqual([]);
    expect(ids).toEqual(Array.from({ length: ids.length }, (_, n) => `w${n}`));
    expect(ids.length).toBeGreaterThanOrEqual(last);
    last = ids.length;
  }
  await store.close();
  expect(last).toBe(15);
  report(`log torn at ${ends.length} places: each time whole up to there`);
});

test('a backup made while facts are written holds a whole beginning of the book', async () => {
  const path = join(folder, 'busy.sqlite');
  const store = await openSqliteStore(path);
  let written = 0;
  let going = true;
  const writing = (async () => {
    while (going) {
      await store.appendNext('bench', last => [sealNext(last, note(`b${written}`))]);
      written++;
      await new Promise(done => setImmediate(done));
    }
  })();
  for (let n = 0; n < tries(5, 50); n++) {
    const to = join(folder, `busy-${n}.sqlite`);
    const before = written;
    await backUpSqlite(path, to);
    const backup = await openSqliteStore(to);
    const proof = await proofOf(backup);
    expect(proof.problems).toEqual([]);
    expect(proof.facts).toBeGreaterThanOrEqual(before);
    expect((await backup.read()).map(({ fact }) => fact.id)).toEqual(
      Array.from({ length: proof.facts }, (_, k) => `b${k}`),
    );
    await backup.close();
  }
  going = false;
  await writing;
  await store.close();
});

async function end(store: Awaited<ReturnType<typeof openSqliteStore>>) {
  const last = (await store.read()).at(-1)?.fact;
  return last ? { seq: last.seq, hash: last.hash } : { seq: 0, hash: '0'.repeat(64) };
}
