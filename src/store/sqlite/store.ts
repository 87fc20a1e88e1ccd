/** A book in one SQLite file. Several programs may use it at the same time; what was acknowledged is on the disk. */
import { createHash } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import { type Generated, Kysely, type Transaction } from 'kysely';
import type { AppendOutcome, BookStore, Kept } from '../../app/ports.ts';
import { CHAIN_START, type ChainEnd, canonical, FACT_FORMAT, type Fact, isProblem, upcast } from '../../book/index.ts';
import { admit, mustAdmit, type Present } from '../admit.ts';
import { Listeners } from '../listeners.ts';
import { StoreError } from '../store-error.ts';
import { type Database, dialect, loadDriver } from './driver.ts';
import { storeError } from './faults.ts';
import { openDatabase } from './open.ts';

type FactRow = { row: number; id: string; hash: string; device: string; seq: number; body: string };
type FileRow = { hash: string; media_type: string; bytes: Uint8Array };
type Tables = { fact: Omit<FactRow, 'row'> & { row: Generated<number> }; file: FileRow };

/** Rows a statement: two shapes of each statement only, so that all of them stay prepared. */
const BATCH = 100;
/** How often another program's facts are looked for, milliseconds. */
const POLL_MS = 500;

/** Opens the book in the file, made when it is new. Throws StoreError: not a book, newer format, damaged, cannot open, busy, disk full. */
export async function openSqliteStore(path: string): Promise<BookStore> {
  const driver = await loadDriver();
  try {
    return storeOn(openDatabase(driver, path), path);
  } catch (error) {
    throw storeError(error, path);
  }
}

/** On a database that `openDatabase` opened; `path` is for messages. */
export function storeOn(database: Database, path: string): BookStore {
  return new SqliteStore(database, path);
}

class SqliteStore implements BookStore {
  readonly #database: Database;
  readonly #path: string;
  readonly #db: Kysely<Tables>;
  readonly #listeners = new Listeners();
  #poll: ReturnType<typeof setInterval> | undefined;
  #open = true;

  constructor(database: Database, path: string) {
    this.#database = database;
    this.#path = path;
    this.#db = new Kysely<Tables>({ dialect: dialect(database) });
  }

  async append(facts: readonly Fact[]): Promise<AppendOutcome> {
    const outcome = await this.#write<AppendOutcome>(async transaction => {
      const admission = admit(facts, await presentFor(transaction, facts));
      if (admission.kind !== 'admitted') return admission;
      await insert(transaction, admission.fresh);
      return { kind: 'kept', added: admission.fresh.length, known: admission.known };
    });
    if (outcome.kind === 'kept' && outcome.added > 0) this.#listeners.tell();
    return outcome;
  }

  async appendNext(device: string, build: (last: { seq: number; hash: string }) => readonly Fact[]) {
    const added = await this.#write(async transaction => {
      const { seq, hash } = await chainEnd(transaction, device);
      const facts = build({ seq, hash });
      const fresh = mustAdmit(facts, device, await presentFor(transaction, facts));
      await insert(transaction, fresh);
      return fresh;
    });
    if (added.length > 0) this.#listeners.tell();
    return added;
  }

  read(after = 0, limit = Number.MAX_SAFE_INTEGER): Promise<readonly Kept[]> {
    const rows = this.#db
      .selectFrom('fact')
      .select(['row', 'body'])
      .where('row', '>', after)
      .orderBy('row')
      .limit(Math.min(limit, Number.MAX_SAFE_INTEGER));
    return this.#try(async () =>
      (await rows.execute()).map(({ row, body }) => ({ row, fact: this.#factIn(row, body) })),
    );
  }

  async putFile(bytes: Uint8Array, mediaType: string): Promise<string> {
    const hash = createHash('sha256').update(bytes).digest('hex');
    const row = { hash, media_type: mediaType, bytes };
    await this.#try(() =>
      this.#db
        .insertInto('file')
        .values(row)
        .onConflict(clash => clash.doNothing())
        .execute(),
    );
    return hash;
  }

  async getFile(hash: string) {
    const file = await this.#try(() =>
      this.#db.selectFrom('file').select(['media_type', 'bytes']).where('hash', '=', hash).executeTakeFirst(),
    );
    return file && { bytes: new Uint8Array(file.bytes), mediaType: file.media_type };
  }

  watch(listener: () => void): () => void {
    this.#poll ??= this.#startPolling();
    return this.#listeners.add(listener);
  }

  async close(): Promise<void> {
    if (!this.#open) return;
    this.#open = false;
    clearInterval(this.#poll);
    this.#listeners.clear();
    await this.#db.destroy();
    closeWhole(this.#database);
  }

  /** All of it or nothing. */
  #write<T>(work: (transaction: Transaction<Tables>) => Promise<T>): Promise<T> {
    return this.#try(() => this.#db.transaction().execute(work));
  }

  async #try<T>(work: () => Promise<T>): Promise<T> {
    if (!this.#open) throw new StoreError('closed', `${this.#path}: the book was closed`, 'open it again');
    try {
      return await work();
    } catch (error) {
      throw storeError(error, this.#path);
    }
  }

  /** The store checked the fact when it came in; here only an older format is brought up to date. */
  #factIn(row: number, body: string): Fact {
    let raw: Fact | undefined;
    try {
      raw = JSON.parse(body) as Fact;
    } catch {
      raw = undefined;
    }
    if (raw?.v === FACT_FORMAT) return raw;
    const fact = upcast(raw);
    if (!isProblem(fact)) return fact;
    const code = fact.code === 'newer format' ? 'newer format' : 'damaged';
    throw new StoreError(code, `${this.#path}, row ${row}: ${fact.message}`, fact.remedy);
  }

  /** `data_version` changes when another connection has written. Source: SQLite documentation, PRAGMA data_version. */
  #startPolling(): ReturnType<typeof setInterval> {
    const version = this.#database.prepare('pragma data_version');
    let seen = version.get();
    const timer = setInterval(() => {
      try {
        const now = version.get();
        if (!isDeepStrictEqual(now, seen)) this.#listeners.tell();
        seen = now;
      } catch {
        // A fault of the file is met again, and named, by whoever reads next.
        this.#listeners.tell();
      }
    }, POLL_MS);
    timer.unref();
    return timer;
  }
}

/**
 * Brings the log into the file first, as far as no other program still reads it, so that a closed book is one whole file
 * to copy: a driver that keeps statements leaves that undone when it closes.
 */
function closeWhole(database: Database): void {
  try {
    database.exec('pragma wal_checkpoint(passive)');
  } catch {
    // What stays in the log is not lost: whoever opens the book next reads it there.
  }
  database.close();
}

async function insert(db: Kysely<Tables>, facts: readonly Fact[]): Promise<void> {
  const rows = facts.map(fact => ({
    id: fact.id,
    hash: fact.hash,
    device: fact.device,
    seq: fact.seq,
    body: canonical(fact),
  }));
  for (const batch of batches(rows)) await db.insertInto('fact').values(batch).execute();
}

async function presentFor(db: Kysely<Tables>, facts: readonly Fact[]): Promise<Present> {
  const hashes = new Map<string, string>();
  for (const ids of batches(facts.map(fact => fact.id))) {
    const rows = await db.selectFrom('fact').select(['id', 'hash']).where('id', 'in', ids).execute();
    for (const { id, hash } of rows) hashes.set(id, hash);
  }
  const ends = new Map<string, ChainEnd>();
  for (const device of new Set(facts.map(fact => fact.device))) ends.set(device, await chainEnd(db, device));
  return { hash: id => hashes.get(id), end: device => ends.get(device) ?? CHAIN_START };
}

async function chainEnd(db: Kysely<Tables>, device: string): Promise<ChainEnd> {
  const last = db
    .selectFrom('fact')
    .select(['seq', 'hash'])
    .where('device', '=', device)
    .orderBy('seq', 'desc')
    .limit(1);
  return (await last.executeTakeFirst()) ?? CHAIN_START;
}

/** Full batches, then what is left one by one. */
function* batches<T>(all: readonly T[]): Generator<readonly T[]> {
  const full = all.length - (all.length % BATCH);
  for (let i = 0; i < full; i += BATCH) yield all.slice(i, i + BATCH);
  for (let i = full; i < all.length; i++) yield all.slice(i, i + 1);
}
