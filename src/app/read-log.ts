/** A log as it streams by: read, hashed, and held for the book while it is small enough to be kept. */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import { type Imported, type ImportOptions, LogImport, type NotImported, type Progress } from '../laps/index.ts';

/** A larger log is read, and its laps are kept, but not the file. Eight hours at 25 fixes a second are 25 MB to 60 MB. */
export const MOST_KEPT = 64_000_000; // bytes

export type LogBytes = {
  readonly chunks: Iterable<Uint8Array> | AsyncIterable<Uint8Array>;
  readonly progress?: (so: Progress) => void | Promise<void>;
  readonly cancelled?: () => boolean;
};

export type ReadLog = {
  readonly read: Imported | NotImported;
  readonly hash: string;
  readonly bytes: number;
  /** The whole file; undefined when it is larger than is kept. */
  readonly file?: Uint8Array;
};

/** Undefined when the person stopped it: nothing was kept. */
export async function readLog(
  { chunks, progress = () => undefined, cancelled = () => false }: LogBytes,
  options: ImportOptions,
): Promise<ReadLog | undefined> {
  const into = new LogImport(options);
  const hasher = sha256.create();
  let held: Uint8Array[] | undefined = [];
  let bytes = 0;
  for await (const chunk of chunks) {
    if (cancelled()) return undefined;
    bytes += chunk.length;
    if (bytes > MOST_KEPT) held = undefined;
    held?.push(chunk.slice());
    hasher.update(chunk);
    await progress(into.push(chunk));
    if (into.isHopeless) break;
  }
  if (cancelled()) return undefined;
  const read = into.finish();
  return { read, hash: bytesToHex(hasher.digest()), bytes, ...(held && { file: joined(held, bytes) }) };
}

function joined(pieces: readonly Uint8Array[], bytes: number): Uint8Array {
  const all = new Uint8Array(bytes);
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}
