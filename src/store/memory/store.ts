/** A book in memory: for a throw-away demo and for tests. It forgets everything when the program ends. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import type { AppendOutcome, BookStore, Kept, Lying, Which } from '../../app/ports.ts';
import { CHAIN_START, type ChainEnd, type Fact, type NamedRedaction, redact } from '../../book/index.ts';
import { admit, lyingAs, mustAdmit, redactingIn } from '../admit.ts';
import { Listeners } from '../listeners.ts';
import { StoreError } from '../store-error.ts';

export function memoryStore(): BookStore {
  return new MemoryStore();
}

class MemoryStore implements BookStore {
  readonly #kept: Kept[] = [];
  readonly #redactions = new Map<string, readonly NamedRedaction[]>();
  readonly #forgotten = new Set<string>();
  readonly #hashes = new Map<string, string>();
  readonly #ends = new Map<string, ChainEnd>();
  readonly #files = new Map<string, { bytes: Uint8Array; mediaType: string }>();
  readonly #listeners = new Listeners();
  readonly #present = {
    hash: (id: string) => this.#hashes.get(id),
    end: (device: string) => this.#ends.get(device) ?? CHAIN_START,
    redactions: (id: string) => this.#redactions.get(id) ?? [],
  };
  #open = true;

  async append(facts: readonly Fact[]): Promise<AppendOutcome> {
    this.#mustBeOpen();
    const admission = admit(facts, this.#present);
    if (admission.kind !== 'admitted') return admission;
    this.#keep(admission.fresh);
    return { kind: 'kept', added: admission.fresh.length, known: admission.known };
  }

  async appendNext(device: string, build: (last: { seq: number; hash: string }) => readonly Fact[]) {
    this.#mustBeOpen();
    const { seq, hash } = this.#present.end(device);
    const fresh = mustAdmit(build({ seq, hash }), device, this.#present);
    this.#keep(fresh);
    return fresh;
  }

  async read(after = 0, limit = Number.POSITIVE_INFINITY): Promise<readonly Kept[]> {
    this.#mustBeOpen();
    return this.#kept.slice(after, after + limit);
  }

  async pick(which: Which): Promise<readonly Kept[]> {
    this.#mustBeOpen();
    if ('rows' in which) {
      const rows = new Set(which.rows);
      return this.#kept.filter(({ row }) => rows.has(row));
    }
    if ('id' in which) return this.#kept.filter(({ fact }) => fact.id === which.id);
    const { device, after, limit } = which;
    return this.#kept.filter(({ fact }) => fact.device === device && fact.seq > after).slice(0, limit);
  }

  async putFile(bytes: Uint8Array, mediaType: string): Promise<string> {
    this.#mustBeOpen();
    const hash = bytesToHex(sha256(bytes));
    if (!this.#files.has(hash) && !this.#forgotten.has(hash))
      this.#files.set(hash, { bytes: bytes.slice(), mediaType });
    return hash;
  }

  async getFile(hash: string) {
    this.#mustBeOpen();
    const file = this.#files.get(hash);
    return file && { bytes: file.bytes.slice(), mediaType: file.mediaType };
  }

  async lying(after?: number, limit?: number): Promise<readonly Lying[]> {
    return (await this.read(after, limit)).map(lyingAs);
  }

  async files(): Promise<readonly string[]> {
    return [...this.#files.keys()];
  }

  async ailments(): Promise<readonly string[]> {
    return [];
  }

  watch(listener: () => void): () => void {
    return this.#listeners.add(listener);
  }

  async close(): Promise<void> {
    this.#open = false;
    this.#listeners.clear();
  }

  /** Rows are numbered from 1, so a fact's row is its place in the list plus one. */
  #keep(facts: readonly Fact[]): void {
    for (const fact of facts) {
      this.#kept.push({ row: this.#kept.length + 1, fact });
      this.#hashes.set(fact.id, fact.hash);
      this.#ends.set(fact.device, { seq: fact.seq, hash: fact.hash });
    }
    this.#redact(facts);
    if (facts.length > 0) this.#listeners.tell();
  }

  #redact(fresh: readonly Fact[]): void {
    const { facts, files } = redactingIn(fresh);
    for (const [id, redactions] of facts) {
      this.#redactions.set(id, [...this.#present.redactions(id), ...redactions]);
      const place = this.#kept.findIndex(({ fact }) => fact.id === id);
      const kept = this.#kept[place];
      if (kept) this.#kept[place] = { ...kept, fact: redact(kept.fact, redactions) };
    }
    for (const hash of files) {
      this.#forgotten.add(hash);
      this.#files.delete(hash);
    }
  }

  #mustBeOpen(): void {
    if (!this.#open) throw new StoreError('closed', 'the book was closed', 'open it again');
  }
}
