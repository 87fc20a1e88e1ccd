/** Is a snapshot what the facts give? Everything in it is made anew from them and compared; what does not fit is thrown away. */
import { type Balance, Carried, canonical, type Fact } from '../book/index.ts';
import { inBatches } from './in-batches.ts';
import type { BookStore, Snapshots } from './ports.ts';
import { type End, fittingHeader, type Header, type KartLine, readKartLine } from './snapshot.ts';

export type SnapshotProof = 'none' | 'fits' | 'thrown away';

const ROWS = 5000;

export async function snapshotProof(
  store: Pick<BookStore, 'read' | 'pick'>,
  snapshots: Snapshots,
): Promise<SnapshotProof> {
  const lines = await snapshots.read();
  if (lines === undefined) return 'none';
  const header = await fittingHeader(lines, store);
  if (header && (await isOfFacts(header, lines, store))) return 'fits';
  await snapshots.remove();
  return 'thrown away';
}

async function isOfFacts(
  header: Header,
  lines: readonly string[],
  store: Pick<BookStore, 'read' | 'pick'>,
): Promise<boolean> {
  const { ends, starts, rows } = await seenUpTo(header.row, store);
  const said = { ends: header.ends, starts: header.starts, karts: [...header.karts].sort() };
  const found = { ends: Object.fromEntries(ends), starts: Object.fromEntries(starts), karts: [...rows.keys()].sort() };
  if (canonical(said) !== canonical(found)) return false;
  for (const [n, name] of header.karts.entries())
    if (!(await isOfKart(readKartLine(lines[n + 1] ?? ''), rows.get(name) ?? [], store))) return false;
  return true;
}

async function seenUpTo(last: number, store: Pick<BookStore, 'read'>) {
  const [ends, starts] = [new Map<string, End>(), new Map<string, string>()];
  const rows = new Map<string, number[]>();
  for await (const batch of inBatches((after, most) => store.read(after, most), ROWS)) {
    for (const { row, fact } of batch) {
      if (row > last) return { ends, starts, rows };
      ends.set(fact.device, { seq: fact.seq, hash: fact.hash, row });
      if (fact.seq === 1) starts.set(fact.device, fact.hash);
      const known = rows.get(fact.kart);
      if (known) known.push(row);
      else rows.set(fact.kart, [row]);
    }
  }
  return { ends, starts, rows };
}

async function isOfKart(line: KartLine, rows: readonly number[], store: Pick<BookStore, 'pick'>): Promise<boolean> {
  if (canonical(line.rows) !== canonical(rows)) return false;
  if (line.balance === null) return true;
  const facts: Fact[] = [];
  for (let n = 0; n < rows.length; n += ROWS)
    for (const { fact } of await store.pick({ rows: rows.slice(n, n + ROWS) })) facts.push(fact);
  const anew = Carried.of(facts, Math.max(1, line.balance.tail.length)).balance();
  return anew !== undefined && textOf(anew) === textOf(line.balance);
}

const textOf = (balance: Balance): string => canonical({ ...balance, named: [...new Set(balance.named)].sort() });
