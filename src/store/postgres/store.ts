/**
 * A book in a PostgreSQL database, for several servers at once, and beside it one of each team (place.ts). What was acknowledged has been committed with
 * `synchronous_commit` on. One writer at a time (an advisory lock), so that who reads on from a row misses none.
 */
import { createHash } from 'node:crypto';
import pg from 'pg';
import type { AppendOutcome, BookStore, Kept, Lying, Which } from '../../app/ports.ts';
import {
  CHAIN_START,
  type ChainEnd,
  canonical,
  FACT_FORMATS,
  type Fact,
  isProblem,
  type NamedRedaction,
  redact,
  upcast,
} from '../../book/index.ts';
import { admit, mustAdmit, type Present, redactingIn } from '../admit.ts';
import { Group, type Outcome } from '../group.ts';
import { Listeners } from '../listeners.ts';
import { StoreError } from '../store-error.ts';
import { storeError } from './faults.ts';
import { beginBook, POSTGRES_FORMAT } from './open.ts';
import { type Place, placeIn } from './place.ts';
import { type Statements, statementsIn } from './statements.ts';
import { Watcher } from './watcher.ts';

const CONNECTIONS = 8;
const CONNECT_MS = 10_000;
/** How long one writer waits for another, milliseconds. */
const BUSY_MS = 10_000;

/**
 * Opens the book in the database, or with `?team=` that of a team, made when it is new. Throws StoreError: newer format,
 * cannot open, read only, busy, disk full.
 */
export async function openPostgresStore(address: string): Promise<BookStore> {
  const place = placeIn(address);
  const pool = new pg.Pool({ connectionString: place.url, max: CONNECTIONS, connectionTimeoutMillis: CONNECT_MS });
  // A connection that drops is replaced when one is needed; whoever was using it hears of it by the query that failed.
  pool.on('error', () => undefined);
  pool.on('connect', client => client.on('error', () => undefined));
  const store = new PostgresStore(pool, place);
  try {
    await store.begin();
    return store;
  } catch (error) {
    await store.close();
    throw error;
  }
}

/** What of a batch is new, and what is said of it. */
type Work = (client: pg.PoolClient) => Promise<{ readonly fresh: readonly Fact[]; readonly value: unknown }>;

/** What is wrong with the facts concerns who brought them; what is wrong with the database, everybody. */
class Judged extends Error {}
function judged<T>(judge: () => T): T {
  try {
    return judge();
  } catch (cause) {
    throw new Judged('a batch that is not right', { cause });
  }
}

class PostgresStore implements BookStore {
  readonly #pool: pg.Pool;
  readonly #place: Place;
  readonly #where: string;
  readonly #sql: Statements;
  readonly #listeners = new Listeners();
  readonly #group = new Group<Work>(works => this.#together(works));
  readonly #watcher: Watcher;
  #open = true;
  /** The database says that it holds facts an older program cannot read; `raising`: from this transaction on. */
  #raised = false;
  #raising = false;
  #redacted = false;

  constructor(pool: pg.Pool, place: Place) {
    this.#pool = pool;
    this.#place = place;
    this.#where = place.where;
    this.#sql = statementsIn(place);
    this.#watcher = new Watcher(place, () => this.#listeners.tell());
  }

  begin(): Promise<void> {
    return this.#writing(client => beginBook(client, this.#place));
  }

  async append(facts: readonly Fact[]): Promise<AppendOutcome> {
    this.#mustBeOpen();
    return this.#group.add<AppendOutcome>(async client => {
      const ids = facts.map(({ id }) => id);
      const devices = [...new Set(facts.map(({ device }) => device))];
      const present = await presentIn(client, this.#sql, ids, devices);
      const admission = judged(() => admit(facts, present));
      if (admission.kind !== 'admitted') return { fresh: [], value: admission };
      const { fresh, known } = admission;
      return { fresh, value: { kind: 'kept', added: fresh.length, known } };
    });
  }

  async appendNext(device: string, build: (last: { seq: number; hash: string }) => readonly Fact[]) {
    this.#mustBeOpen();
    return this.#group.add<readonly Fact[]>(async client => {
      const { end } = await presentIn(client, this.#sql, [], [device]);
      const built = judged(() => build({ ...end(device) }));
      const ids = built.map(({ id }) => id);
      const present = await presentIn(client, this.#sql, ids, [device]);
      const fresh = judged(() => mustAdmit(built, device, present));
      return { fresh, value: fresh };
    });
  }

  async read(after = 0, limit = Number.POSITIVE_INFINITY): Promise<readonly Kept[]> {
    return this.#facts(this.#sql.rows, [after, atMost(limit)]);
  }

  pick(which: Which): Promise<readonly Kept[]> {
    if ('rows' in which) return this.#facts(this.#sql.these, [which.rows]);
    if ('id' in which) return this.#facts(this.#sql.one, [which.id]);
    const { device, after, limit } = which;
    return this.#facts(this.#sql.chain, [device, after, atMost(limit)]);
  }

  async #facts(text: string, values: readonly unknown[]): Promise<readonly Kept[]> {
    const { rows } = await this.#ask<{ row: string; body: string }>(text, values);
    return rows.map(({ row, body }) => ({ row: Number(row), fact: this.#factIn(row, body) }));
  }

  async lying(after = 0, limit = Number.POSITIVE_INFINITY): Promise<readonly Lying[]> {
    const { rows } = await this.#ask<{
      row: string;
      id: string;
      hash: string;
      device: string;
      seq: string;
      body: string;
    }>(this.#sql.lying, [after, atMost(limit)]);
    return rows.map(({ row, seq, ...rest }) => ({ row: Number(row), ...rest, seq: Number(seq) }));
  }

  async files(): Promise<readonly string[]> {
    const { rows } = await this.#ask<{ hash: string }>(this.#sql.files, []);
    return rows.map(({ hash }) => hash);
  }

  async ailments(): Promise<readonly string[]> {
    return []; // the server's own check needs an extension and rights that a book must not ask for
  }

  async putFile(bytes: Uint8Array, mediaType: string): Promise<string> {
    const hash = createHash('sha256').update(bytes).digest('hex');
    await this.#ask(this.#sql.keepFile, [hash, mediaType, Buffer.from(bytes)]);
    return hash;
  }

  async getFile(hash: string) {
    const { rows } = await this.#ask<{ media_type: string; bytes: Buffer }>(this.#sql.file, [hash]);
    return rows[0] && { bytes: new Uint8Array(rows[0].bytes), mediaType: rows[0].media_type };
  }

  watch(listener: () => void): () => void {
    this.#watcher.start();
    return this.#listeners.add(listener);
  }

  async close(): Promise<void> {
    await this.#group.settled();
    if (!this.#open) return;
    this.#open = false;
    this.#listeners.clear();
    await this.#watcher.stop();
    await this.#pool.end();
  }

  async #ask<R extends pg.QueryResultRow>(text: string, values: readonly unknown[]): Promise<pg.QueryResult<R>> {
    this.#mustBeOpen();
    try {
      return await this.#pool.query<R>(text, [...values]);
    } catch (error) {
      throw storeError(error, this.#where);
    }
  }

  async #together(works: readonly Work[]): Promise<readonly Outcome[]> {
    let added = 0;
    const all = async (client: pg.PoolClient): Promise<readonly Outcome[]> => {
      const outcomes: Outcome[] = [];
      for (const work of works) {
        try {
          const done = await work(client);
          await this.#insert(client, done.fresh);
          added += done.fresh.length;
          outcomes.push(done);
        } catch (error) {
          if (!(error instanceof Judged)) throw error;
          outcomes.push({ error: error.cause });
        }
      }
      return outcomes;
    };
    return this.#writing(all, () => added > 0);
  }

  async #insert(client: pg.PoolClient, facts: readonly Fact[]): Promise<void> {
    if (!this.#raised && facts.some(({ v }) => v > 1)) {
      await client.query(this.#sql.raise, [POSTGRES_FORMAT]);
      this.#raising = true;
    }
    await insert(client, this.#sql, facts);
    if (await redactKept(client, this.#sql, facts)) this.#redacted = true;
  }

  /** One transaction, one writer at a time: all of it or nothing. @param hasNews whether others are to be told, with the commit */
  async #writing<T>(work: (client: pg.PoolClient) => Promise<T>, hasNews = (): boolean => false): Promise<T> {
    this.#mustBeOpen();
    let client: pg.PoolClient | undefined;
    let broken = false;
    try {
      client = await this.#pool.connect();
      await client.query(
        `begin; set local synchronous_commit = on; set local lock_timeout = ${BUSY_MS}; ${this.#sql.lock}`,
      );
      this.#raising = false; // one writer at a time is here
      const done = await work(client);
      await client.query(hasNews() ? `${this.#sql.tell}; commit` : 'commit');
      this.#raised ||= this.#raising;
      if (this.#redacted) await client.query(this.#sql.clear).catch(() => undefined);
      this.#redacted = false;
      return done;
    } catch (error) {
      broken = !(await rolledBack(client));
      throw storeError(error, this.#where);
    } finally {
      client?.release(broken);
    }
  }

  /** The store checked the fact when it came in; here only an older format is brought up to date. */
  #factIn(row: string, body: string): Fact {
    const raw = JSON.parse(body) as Fact;
    if (FACT_FORMATS.includes(raw.v)) return raw;
    const fact = upcast(raw);
    if (!isProblem(fact)) return fact;
    const code = fact.code === 'newer format' ? 'newer format' : 'damaged';
    throw new StoreError(code, `${this.#where}, row ${row}: ${fact.message}`, fact.remedy);
  }

  #mustBeOpen(): void {
    if (!this.#open) throw new StoreError('closed', `${this.#where}: the book was closed`, 'open it again');
  }
}

/** PostgreSQL takes null for no limit. */
const atMost = (limit: number): number | null => (Number.isFinite(limit) ? limit : null);

async function rolledBack(client: pg.PoolClient | undefined): Promise<boolean> {
  try {
    await client?.query('rollback');
    return true;
  } catch {
    return false; // the connection is gone, and with it the transaction
  }
}

async function presentIn(
  client: pg.PoolClient,
  sql: Statements,
  ids: readonly string[],
  devices: readonly string[],
): Promise<Present> {
  // Asked in one go: the second does not wait till the first has been heard.
  const [{ rows: kept }, last] = await Promise.all([
    ids.length === 0 ? NOBODY : client.query<Found>({ name: 'known', text: sql.known, values: [ids] }),
    client.query<{ device: string; seq: string; hash: string }>({ name: 'ends', text: sql.ends, values: [devices] }),
  ]);
  const hashes = new Map(kept.flatMap(({ id, hash }) => (hash === null ? [] : [[id, hash]])));
  const ends = new Map<string, ChainEnd>(
    last.rows.map(({ device, seq, hash }) => [device, { seq: Number(seq), hash }]),
  );
  return {
    hash: id => hashes.get(id),
    end: device => ends.get(device) ?? CHAIN_START,
    redactions: id =>
      kept.flatMap(one =>
        one.id === id && one.redaction !== null ? [JSON.parse(one.redaction) as NamedRedaction] : [],
      ),
  };
}

const NOBODY = { rows: [] as readonly Found[] };
type Found = { readonly id: string; readonly hash: string | null; readonly redaction: string | null };

/** Takes out of the facts that are kept what new ones ask; false when they ask nothing. */
async function redactKept(client: pg.PoolClient, sql: Statements, fresh: readonly Fact[]): Promise<boolean> {
  const { facts, files } = redactingIn(fresh);
  for (const [id, redactions] of facts) {
    for (const one of redactions) await client.query(sql.keepRedaction, [id, canonical(one)]);
    const kept = await client.query<{ body: string }>(sql.body, [id]);
    const [row] = kept.rows;
    if (row) await client.query(sql.rewrite, [canonical(redact(JSON.parse(row.body) as Fact, redactions)), id]);
  }
  for (const hash of files) {
    await client.query(sql.keepRedaction, [hash, '{}']);
    await client.query(sql.dropFile, [hash]);
  }
  return facts.size > 0;
}

async function insert(client: pg.PoolClient, sql: Statements, facts: readonly Fact[]): Promise<void> {
  if (facts.length === 0) return;
  await client.query({
    name: 'keep',
    text: sql.keep,
    values: [
      facts.map(({ id }) => id),
      facts.map(({ hash }) => hash),
      facts.map(({ device }) => device),
      facts.map(({ seq }) => seq),
      facts.map(canonical),
    ],
  });
}
