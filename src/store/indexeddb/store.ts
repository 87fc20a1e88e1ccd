/**
 * A book in the browser (Indexed Database API 3.0): what is acknowledged has been handed to the disk, for every write asks
 * for strict durability. Pages of one browser share it and tell each other.
 */
import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB, unwrap } from 'idb';
import type { AppendOutcome, BookStore, Kept, Lying, Own, Which } from '../../app/ports.ts';
import { CHAIN_START, type ChainEnd, type Fact, type NamedRedaction, redact } from '../../book/index.ts';
import { admit, lyingAs, mustAdmit, type Present, redactingIn } from '../admit.ts';
import { Listeners } from '../listeners.ts';
import { StoreError } from '../store-error.ts';
import { storeError } from './faults.ts';
import { hashOf } from './hash.ts';

/** 2 added `own`, 3 `redactions`. */
const VERSION = 3;

export type BrowserStore = BookStore & { readonly own: Own };

interface Book extends DBSchema {
  /** By row, which the database counts up. */
  facts: { key: number; value: Fact; indexes: { id: string; device: [string, number] } };
  files: { key: string; value: { readonly bytes: Uint8Array; readonly mediaType: string } };
  own: { key: string; value: unknown };
  /** Of a fact by its id, of a file by its hash. */
  redactions: { key: string; value: readonly NamedRedaction[] };
}
type Stores = ('facts' | 'files' | 'redactions')[];

/** Opens the book of this name, or begins it. Rejects with `StoreError` where the browser keeps nothing. */
export async function indexedDbStore(name: string): Promise<BrowserStore> {
  const channel = new BroadcastChannel(`kartwright book ${name}`);
  try {
    const db = await openDB<Book>(name, VERSION, {
      upgrade(book, before) {
        if (before < 1) {
          const facts = book.createObjectStore('facts', { autoIncrement: true });
          facts.createIndex('id', 'id', { unique: true });
          facts.createIndex('device', ['device', 'seq'], { unique: true });
          book.createObjectStore('files');
        }
        if (before < 2) book.createObjectStore('own');
        book.createObjectStore('redactions');
      },
      blocking: (_, __, event) => (event.target as IDBDatabase).close(), // a newer page wants it
    });
    return new IndexedDbStore(db, channel);
  } catch (error) {
    channel.close();
    throw storeError(error);
  }
}

class IndexedDbStore implements BrowserStore {
  readonly #db: IDBPDatabase<Book>;
  readonly #channel: BroadcastChannel;
  readonly #listeners = new Listeners();
  #open = true;

  constructor(db: IDBPDatabase<Book>, channel: BroadcastChannel) {
    this.#db = db;
    this.#channel = channel;
    channel.onmessage = () => this.#listeners.tell();
  }

  append(facts: readonly Fact[]): Promise<AppendOutcome> {
    return this.#writing<AppendOutcome>(async tx => {
      const devices = new Set(facts.map(({ device }) => device));
      const ids = facts.map(({ id }) => id);
      const admission = admit(facts, await presentIn(tx, ids, devices));
      if (admission.kind !== 'admitted') return { fresh: [], outcome: admission };
      return {
        fresh: admission.fresh,
        outcome: { kind: 'kept', added: admission.fresh.length, known: admission.known },
      };
    });
  }

  appendNext(
    device: string,
    build: (last: { seq: number; hash: string }) => readonly Fact[],
  ): Promise<readonly Fact[]> {
    return this.#writing(async tx => {
      const { end } = await presentIn(tx, [], [device]);
      const built = build({ ...end(device) });
      const ids = built.map(({ id }) => id);
      const present: Present = { ...(await presentIn(tx, ids, [])), end };
      const fresh = mustAdmit(built, device, present);
      return { fresh, outcome: fresh };
    });
  }

  async read(after = 0, limit = Number.POSITIVE_INFINITY): Promise<readonly Kept[]> {
    this.#mustBeOpen();
    if (limit <= 0) return [];
    const range = IDBKeyRange.lowerBound(after, true);
    const most = Number.isFinite(limit) ? limit : undefined;
    const tx = this.#db.transaction('facts');
    const [rows, facts] = await Promise.all([tx.store.getAllKeys(range, most), tx.store.getAll(range, most)]);
    return facts.map((fact, n) => ({ row: rows[n] ?? Number.NaN, fact }));
  }

  async pick(which: Which): Promise<readonly Kept[]> {
    this.#mustBeOpen();
    const { store } = this.#db.transaction('facts');
    if ('rows' in which) {
      const facts = await Promise.all(
        [...new Set(which.rows)].sort((a, b) => a - b).map(async row => ({ row, fact: await store.get(row) })),
      );
      return facts.filter((one): one is Kept => one.fact !== undefined);
    }
    if ('id' in which) {
      const index = store.index('id');
      const [row, fact] = await Promise.all([index.getKey(which.id), index.get(which.id)]);
      return row === undefined || fact === undefined ? [] : [{ row, fact }];
    }
    const { device, after, limit } = which;
    if (limit <= 0) return [];
    const range = IDBKeyRange.bound([device, after], [device, Number.MAX_SAFE_INTEGER], true);
    const most = Number.isFinite(limit) ? limit : undefined;
    const index = store.index('device');
    const [rows, facts] = await Promise.all([index.getAllKeys(range, most), index.getAll(range, most)]);
    return facts.map((fact, n) => ({ row: rows[n] ?? Number.NaN, fact }));
  }

  async putFile(bytes: Uint8Array, mediaType: string): Promise<string> {
    const hash = await hashOf(bytes);
    this.#mustBeOpen();
    const tx = this.#db.transaction(['files', 'redactions'], 'readwrite', { durability: 'strict' });
    const files = tx.objectStore('files');
    try {
      const forgotten = (await tx.objectStore('redactions').getKey(hash)) !== undefined;
      if (!forgotten && (await files.getKey(hash)) === undefined)
        await files.put({ bytes: bytes.slice(), mediaType }, hash);
      await tx.done;
    } catch (error) {
      throw storeError(error);
    }
    return hash;
  }

  async getFile(hash: string) {
    this.#mustBeOpen();
    return this.#db.get('files', hash);
  }

  async lying(after?: number, limit?: number): Promise<readonly Lying[]> {
    return (await this.read(after, limit)).map(lyingAs);
  }

  async files(): Promise<readonly string[]> {
    this.#mustBeOpen();
    return this.#db.getAllKeys('files');
  }

  async ailments(): Promise<readonly string[]> {
    return []; // a browser does not tell
  }

  watch(listener: () => void): () => void {
    return this.#listeners.add(listener);
  }

  readonly own: Own = {
    get: async key => {
      this.#mustBeOpen();
      return this.#db.get('own', key);
    },
    put: async (key, value) => void (await this.#keeping(key, () => value)),
    first: (key, value) => this.#keeping(key, before => before ?? value),
  };

  /** Puts what `choose` makes of what is there, in one transaction. */
  async #keeping(key: string, choose: (before: unknown) => unknown): Promise<unknown> {
    this.#mustBeOpen();
    const tx = this.#db.transaction('own', 'readwrite', { durability: 'strict' });
    try {
      const before = await tx.store.get(key);
      const value = choose(before);
      if (value !== before) await tx.store.put(value, key); // what is there already asks for no room
      await tx.done;
      return value;
    } catch (error) {
      throw storeError(error);
    }
  }

  async close(): Promise<void> {
    if (!this.#open) return;
    this.#open = false;
    this.#listeners.clear();
    this.#channel.close();
    this.#db.close();
  }

  /** One transaction: what `work` finds new is written, or, when anything at all goes wrong, nothing. */
  async #writing<T>(
    work: (
      tx: IDBPTransaction<Book, Stores, 'readwrite'>,
    ) => Promise<{ readonly fresh: readonly Fact[]; readonly outcome: T }>,
  ): Promise<T> {
    this.#mustBeOpen();
    const tx = this.#db.transaction(['facts', 'files', 'redactions'] satisfies Stores, 'readwrite', {
      durability: 'strict',
    });
    tx.done.catch(() => undefined); // told below, once
    try {
      const { fresh, outcome } = await work(tx);
      const facts = unwrap(tx.objectStore('facts')); // a promise for each would take longer than the writing; what fails, `done` tells
      for (const fact of fresh) facts.add(fact);
      await redactKept(tx, fresh);
      await tx.done;
      if (fresh.length > 0) {
        this.#listeners.tell();
        this.#channel.postMessage('facts');
      }
      return outcome;
    } catch (error) {
      abort(tx);
      throw storeError(error);
    }
  }

  #mustBeOpen(): void {
    if (!this.#open) throw new StoreError('closed', 'the book was closed', 'open it again');
  }
}

/** With more to look for, whether there is anything at all is asked first: a device that is new meets a whole book. */
const FEW = 50;

/** Fetched beforehand, for a decision inside a transaction may wait for nothing else. */
async function presentIn(
  tx: IDBPTransaction<Book, Stores, 'readwrite'>,
  ids: readonly string[],
  devices: Iterable<string>,
): Promise<Present> {
  const facts = tx.objectStore('facts');
  const [hashes, ends] = [new Map<string, string>(), new Map<string, ChainEnd>()];
  const redactions = new Map<string, readonly NamedRedaction[]>();
  const kept = tx.objectStore('redactions');
  const forgot = (await kept.count()) > 0;
  if (ids.length > FEW && !forgot && (await facts.count()) === 0)
    return { hash: () => undefined, end: () => CHAIN_START, redactions: () => [] };
  await Promise.all([
    ...ids.map(async id => {
      const fact = await facts.index('id').get(id);
      if (fact) hashes.set(id, fact.hash);
      const found = forgot ? await kept.get(id) : undefined;
      if (found) redactions.set(id, found);
    }),
    ...[...devices].map(async device => {
      const range = IDBKeyRange.bound([device, 0], [device, Number.MAX_SAFE_INTEGER]);
      const last = await facts.index('device').openCursor(range, 'prev');
      if (last) ends.set(device, { seq: last.value.seq, hash: last.value.hash });
    }),
  ]);
  return {
    hash: id => hashes.get(id),
    end: device => ends.get(device) ?? CHAIN_START,
    redactions: id => redactions.get(id) ?? [],
  };
}

/** Takes out of the facts that are kept what new ones ask. */
async function redactKept(tx: IDBPTransaction<Book, Stores, 'readwrite'>, fresh: readonly Fact[]): Promise<void> {
  const { facts, files } = redactingIn(fresh);
  const kept = tx.objectStore('redactions');
  for (const [id, redactions] of facts) {
    await kept.put([...((await kept.get(id)) ?? []), ...redactions], id);
    const cursor = await tx.objectStore('facts').index('id').openCursor(id);
    if (cursor) await cursor.update(redact(cursor.value, redactions));
  }
  for (const hash of files) {
    await kept.put([], hash);
    await tx.objectStore('files').delete(hash);
  }
}

/** One that has ended by itself cannot be aborted, and need not be. */
function abort(tx: IDBPTransaction<Book, Stores, 'readwrite'>): void {
  try {
    tx.abort();
  } catch {
    // It has ended.
  }
}
