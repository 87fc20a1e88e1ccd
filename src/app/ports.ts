/** What the core asks of the world around it. Adapters live in src/store, src/host and the web face. */
import type { Fact } from '../book/index.ts';
import type { KartRead } from '../kart/index.ts';

/** A fact as a store holds it: `row` grows in the order of arrival in this store and means nothing elsewhere. */
export type Kept = { readonly row: number; readonly fact: Fact };

/** A fact as it lies in a store, unread: for whoever trusts nothing. */
export type Lying = {
  readonly row: number;
  readonly id: string;
  readonly hash: string;
  readonly device: string;
  readonly seq: number;
  readonly body: string; // JSON
};

/** Facts by what a store can find at once; at most a few thousand rows at a time. */
export type Which =
  | { readonly rows: readonly number[] }
  | { readonly id: string }
  /** Of one device with seq > after, in the order of its chain. */
  | { readonly device: string; readonly after: number; readonly limit: number };

export type AppendOutcome =
  | { readonly kind: 'kept'; readonly added: number; readonly known: number } // known: same id and same hash was there already
  | { readonly kind: 'clash'; readonly id: string } // same id, other content: nothing was written
  | { readonly kind: 'broken chain'; readonly device: string; readonly expected: string; readonly got: string };

/** Append-only and atomic: all of a batch or nothing. Every store passes test/store-contract. */
export interface BookStore {
  append(facts: readonly Fact[]): Promise<AppendOutcome>;
  /**
   * Builds and appends in one transaction, so that two writers never take the same place in a device's chain:
   * `build` gets the last seq and hash of the device (0 and 64 zeros when it has none) and returns the next facts.
   */
  appendNext(device: string, build: (last: { seq: number; hash: string }) => readonly Fact[]): Promise<readonly Fact[]>;
  /** Facts with row > after, in row order. */
  read(after?: number, limit?: number): Promise<readonly Kept[]>;
  /** Those of them that are there, in row order. */
  pick(which: Which): Promise<readonly Kept[]>;
  /** Photos and raw files, kept once by sha-256 of their bytes; returns the hash, hex. */
  putFile(bytes: Uint8Array, mediaType: string): Promise<string>;
  getFile(hash: string): Promise<{ bytes: Uint8Array; mediaType: string } | undefined>;
  /** Calls back (at least once) after facts arrived, from this process or another. Returns the unsubscribe. */
  watch(listener: () => void): () => void;
  /** As `read`, but whatever lies there. */
  lying(after?: number, limit?: number): Promise<readonly Lying[]>;
  /** The hashes of all photos and raw files. */
  files(): Promise<readonly string[]>;
  /** What the medium itself finds wrong with the place, in its own words; empty when nothing, or when it cannot tell. */
  ailments(): Promise<readonly string[]>;
  close(): Promise<void>;
}

/** What one device keeps for itself beside its book, as plain data; goes where the book goes. */
export interface Own {
  get(key: string): Promise<unknown>;
  put(key: string, value: unknown): Promise<void>;
  /** Puts `value` if nothing is there yet; resolves to what is there then, the same for everybody who asks at once. */
  first(key: string, value: unknown): Promise<unknown>;
}

/**
 * Where a snapshot lies: lines of text beside the book, nothing but a way to open it faster. What was torn or changed reads as
 * none; failing to keep one is no failure of the book.
 */
export type Snapshots = {
  read(): Promise<readonly string[] | undefined>;
  /** In the place of the one before, in bites, so that nobody waits. */
  write(lines: Iterable<string>): Promise<void>;
  remove(): Promise<void>;
};

export interface Clock {
  now(): Date;
}
export interface Ids {
  next(): string;
  /** 128 random bits, hex: nobody guesses what a digest with it was made of. */
  salt(): string;
}
export type { KartRead };

/** Reads a kart file's text with the kinds, templates and rule sets at hand; a browser asks the server for the same. */
export interface KartReader {
  read(text: string): Promise<KartRead>;
}
