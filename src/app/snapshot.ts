/**
 * A snapshot of the shelf as lines of text: what it was folded from, then each kart. It is never trusted for itself: it must be
 * of this format, and the book must hold, in the same rows, the end of every device's chain it was folded at (each of which
 * holds the hash of the one before, down to the first).
 */
import { type Balance, type ChainEnd, FACT_FORMAT } from '../book/index.ts';
import type { BookStore } from './ports.ts';

/** To be raised whenever facts fold to another state than before; a test holds the two together. */
export const SNAPSHOT_FORMAT = 1;

export type End = ChainEnd & { readonly row: number };
export type Header = {
  readonly snapshot: number;
  readonly fact: number; // format of the facts
  readonly row: number; // of the last fact that is in there
  readonly ends: Readonly<Record<string, End>>; // by device
  readonly starts: Readonly<Record<string, string>>; // hash of the first fact, by device
  readonly karts: readonly string[]; // in the order of their lines
};
/** One kart: the rows of its facts, and its state carried forward; null where that was not known. */
export type KartLine = { readonly rows: readonly number[]; readonly balance: Balance | null };

export const headerLine = (header: Omit<Header, 'snapshot' | 'fact'>): string =>
  JSON.stringify({ snapshot: SNAPSHOT_FORMAT, fact: FACT_FORMAT, ...header });

/** Rows as steps from one to the next, which are small. */
export function kartLine({ rows, balance }: KartLine): string {
  const steps = rows.map((row, n) => row - (rows[n - 1] ?? 0));
  return JSON.stringify({ rows: steps, balance });
}

export function readKartLine(line: string): KartLine {
  const { rows, balance } = JSON.parse(line) as { rows: number[]; balance: Balance | null };
  let row = 0;
  for (let n = 0; n < rows.length; n++) rows[n] = row += rows[n] ?? 0;
  return { rows, balance };
}

/** Undefined when it is of another format, of another book, or of this book as it is no more. */
export async function fittingHeader(
  lines: readonly string[],
  store: Pick<BookStore, 'pick'>,
): Promise<Header | undefined> {
  const header = headerIn(lines[0] ?? '');
  if (header?.snapshot !== SNAPSHOT_FORMAT || header.fact !== FACT_FORMAT) return undefined;
  if (lines.length !== header.karts.length + 1) return undefined;
  for (const [device, end] of Object.entries(header.ends)) {
    const [kept] = await store.pick({ device, after: end.seq - 1, limit: 1 });
    if (kept?.row !== end.row || kept.fact.seq !== end.seq || kept.fact.hash !== end.hash) return undefined;
  }
  return header;
}

function headerIn(line: string): Header | undefined {
  try {
    return JSON.parse(line) as Header;
  } catch {
    return undefined;
  }
}
