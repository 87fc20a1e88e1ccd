/** A book in one SQLite file. Several programs may use it at the same time; what was acknowledged is on the disk. */
import { createHash } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import type { AppendOutcome, BookStore, Kept, Lying, Which } from '../../app/ports.ts';
import { CHAIN_START, canonical, FACT_FORMATS, type Fact, isProblem, redact, upcast } from '../../book/index.ts';
import { admit, mustAdmit, type Present, redactingIn } from '../admit.ts';
import { Group, type Outcome } from '../group.ts';
import { Listeners } from '../listeners.ts';
import { StoreError } from '../store-error.ts';
import { type Database, loadDriver } from './driver.ts';
import { storeError } from './faults.ts';
import { openDatabase } from './open.ts';
import { prepare, type Statements } from './statements.ts';

/** How often another program's facts are looked for, milliseconds. */
const POLL_MS = 500;

/** Opens the book in the file, made when it is new. Throws StoreError: not a book, newer format, damaged, cannot open, busy, disk full. */
export async function openSqliteStore(path: string): Promise<BookStore> {
  const driver = await loadDriver();
  let database: Database | undefined;
  try {
    database = openDatabase(driver, path);
    return storeOn(database, path);
  } catch (error) {
    database?.close(); // a table that is damaged shows when its statements are made
    throw storeError(error, path);
  }
}

/** On a database that `openDatabase` opened; `path` is for messages. */
export function storeOn(database: Database, path: string): BookStore {
  return new SqliteStore(database, path);
}

/** What of a batch is new, and what is said of it. */
type Work = () => { readonly fresh: readonly Fact[]; readonly value: unknown };

class SqliteStore implements BookStore {
  readonly #database: Database;
  readonly #path: string;
  readonly #do: Statements;
  readonly #listeners = new Listeners();
  readonly #group = new Group<Work>(works => this.#together(works));
  readonly #present: Present = {
    hash: id => this.#do.hash(id),
    end: device => this.#do.end(device) ?? CHAIN_START,
    redactions: id => this.#do.redactions(id),
  };
  #poll: ReturnType<typeof setInterval> | undefined;
  #open = true;
  /** The file says that it holds facts an older program cannot read; `raising`: from this transaction on. */
  #raised = false;
  #raising = false;
  #redacted = false;

  constructor(database: Database, path: string) {
    this.#database = database;
    this.#path = path;
    this.#do = prepare(database);
  }

  async append(facts: readonly Fact[]): Promise<AppendOutcome> {
    this.#mustBeOpen();
    return this.#group.add<AppendOutcome>(() => {
      const admission = admit(facts, this.#present);
      if (admission.kind !== 'admitted') return { fresh: [], value: admission };
      const { fresh, known } = admission;
      return { fresh, value: { kind: 'kept', added: fresh.length, known } };
    });
  }

  async appendNext(device: string, build: (last: { seq: number; hash: string }) => readonly Fact[]) {
    this.#mustBeOpen();
    return this.#group.add<readonly Fact[]>(() => {
      const { seq, hash } = this.#present.end(device);
      const fresh = mustAdmit(build({ seq, hash }), device, this.#present);
      return { fresh, value: fresh };
    });
  }

  async read(after = 0, limit = Number.MAX_SAFE_INTEGER): Promise<readonly Kept[]> {
    return this.#try(() => this.#do.rows(after, atMost(limit)).map(this.#kept));
  }

  async pick(which: Which): Promise<readonly Kept[]> {
    return this.#try(() => {
      if ('rows' in which) return this.#do.these(which.rows).map(this.#kept);
      if ('id' in which) return this.#do.one(which.id).map(this.#kept);
      return this.#do.chain(which.device, which.after, atMost(which.limit)).map(this.#kept);
    });
  }

  async putFile(bytes: Uint8Array, mediaType: string): Promise<string> {
    const hash = createHash('sha256').update(bytes).digest('hex');
    this.#try(() => this.#do.redactions(hash).length > 0 || this.#do.keepFile(hash, mediaType, bytes));
    return hash;
  }

  async getFile(hash: string) {
    const file = this.#try(() => this.#do.file(hash));
    return file && { bytes: new Uint8Array(file.bytes), mediaType: file.media_type };
  }

  async lying(after = 0, limit = Number.MAX_SAFE_INTEGER): Promise<readonly Lying[]> {
    return this.#try(() => this.#do.lying(after, atMost(limit)));
  }

  async files(): Promise<readonly string[]> {
    return this.#try(() => this.#do.files());
  }

  async ailments(): Promise<readonly string[]> {
    return this.#try(() => this.#do.ailments());
  }

  watch(listener: () => void): () => void {
    this.#poll ??= this.#startPolling();
    return this.#listeners.add(listener);
  }

  async close(): Promise<void> {
    await this.#group.settled();
    if (!this.#open) return;
    this.#open = false;
    clearInterval(this.#poll);
    this.#listeners.clear();
    closeWhole(this.#database);
  }

  /** All of it or nothing. Waits for nothing but the disk: nobody else on this connection gets in between. */
  async #together(works: readonly Work[]): Promise<readonly Outcome[]> {
    let added = 0;
    const outcomes = this.#try(() => {
      this.#do.begin();
      this.#raising = false;
      try {
        const all = works.map((work): Outcome => {
          const judged = this.#judged(work);
          if ('error' in judged) return judged;
          this.#insert(judged.fresh);
          added += judged.fresh.length;
          return judged;
        });
        this.#do.commit();
        this.#raised ||= this.#raising;
        if (this.#redacted) this.#emptyLog();
        return all;
      } catch (error) {
        undo(this.#database);
        throw error;
      }
    });
    if (added > 0) this.#listeners.tell();
    return outcomes;
  }

  /** What is wrong with the facts concerns who brought them; what is wrong with the file, everybody. */
  #judged(work: Work): ReturnType<Work> | { readonly error: unknown } {
    try {
      return work();
    } catch (error) {
      if (storeError(error, this.#path) !== error) throw error;
      return { error };
    }
  }

  /** Writes facts of one batch, and takes out of those that are kept what they ask. */
  #insert(facts: readonly Fact[]): void {
    // All bodies first: what cannot be written as text must not leave half a batch.
    const bodies = facts.map(canonical);
    this.#raising ||= facts.some(({ v }) => v > 1);
    if (this.#raising && !this.#raised) this.#do.raise();
    for (const [n, fact] of facts.entries()) this.#do.keep(fact, bodies[n] ?? '');
    const { facts: targets, files } = redactingIn(facts);
    for (const [id, redactions] of targets) {
      for (const one of redactions) this.#do.keepRedaction(id, canonical(one));
      const body = this.#do.body(id);
      if (body !== undefined) this.#do.rewrite(id, canonical(redact(JSON.parse(body) as Fact, redactions)));
    }
    for (const hash of files) {
      this.#do.keepRedaction(hash, '{}');
      this.#do.dropFile(hash);
    }
    this.#redacted ||= targets.size > 0;
  }

  /** What was taken out stands in the log until that is written anew. Another program that reads holds it up until it is done. */
  #emptyLog(): void {
    this.#redacted = false;
    try {
      this.#database.exec('pragma wal_checkpoint(truncate)');
    } catch {
      // The log is written anew by whoever comes next; what was asked is done.
    }
  }

  #try<T>(work: () => T): T {
    this.#mustBeOpen();
    try {
      return work();
    } catch (error) {
      throw storeError(error, this.#path);
    }
  }

  #mustBeOpen(): void {
    if (!this.#open) throw new StoreError('closed', `${this.#path}: the book was closed`, 'open it again');
  }

  readonly #kept = ({ row, body }: { readonly row: number; readonly body: string }): Kept => ({
    row,
    fact: this.#factIn(row, body),
  });

  /** The store checked the fact when it came in; here only an older format is brought up to date. */
  #factIn(row: number, body: string): Fact {
    let raw: Fact | undefined;
    try {
      raw = JSON.parse(body) as Fact;
    } catch {
      raw = undefined;
    }
    if (raw && FACT_FORMATS.includes(raw.v)) return raw;
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

/** On a full disk SQLite may have undone the transaction itself; a second undoing would hide the reason. */
function undo(database: Database): void {
  try {
    database.exec('rollback');
  } catch (error) {
    if (!String(error).includes('no transaction is active')) throw error;
  }
}

/** SQLite knows no infinity. */
const atMost = (limit: number): number => Math.min(limit, Number.MAX_SAFE_INTEGER);
