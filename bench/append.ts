/** One fact a transaction, on the disk when it returns (WAL, synchronous=FULL): our store against the bare driver. */
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { DatabaseSync } from '@photostructure/sqlite';
import { canonical, type Fact } from '../src/book/index.ts';
import { openSqliteStore } from '../src/store/sqlite/index.ts';
import { inventBook } from './facts.ts';
import { benchKart } from './kart.ts';
import { type Figure, times } from './measure.ts';

const FACTS = 1_000;
/** Turn about, and the best of each: a neighbour on the machine slows a round, never quickens it. */
const ROUNDS = 9;

export async function appends(): Promise<readonly Figure[]> {
  const facts = inventBook(benchKart(), FACTS);
  const bare: number[] = [];
  const ours: number[] = [];
  for (let round = 0; round < ROUNDS; round++) {
    bare.push(await inFolder(path => bareAppends(path, facts)));
    ours.push(await inFolder(path => storeAppends(path, facts)));
  }
  const [driver, store] = [Math.max(...bare), Math.max(...ours)];
  const batch = await inFolder(path => storeAtOnce(path, facts));
  return [
    { what: 'bare driver, same statements', value: rate(driver) },
    { what: 'store, one fact a transaction', value: rate(store), ratio: times(store, driver, 'the bare driver') },
    { what: `store, ${FACTS} facts in one transaction`, value: rate(batch), ratio: times(batch, store, 'one by one') },
  ];
}

const rate = (perSecond: number): string => `${Math.round(perSecond)} /s`;

async function inFolder(work: (path: string) => Promise<number>): Promise<number> {
  const folder = mkdtempSync(join(tmpdir(), 'kartwright-bench-'));
  try {
    return await work(join(folder, 'book.sqlite'));
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

/** Facts a second. */
async function timed(count: number, work: () => Promise<void> | void): Promise<number> {
  const from = performance.now();
  await work();
  return (count / (performance.now() - from)) * 1000;
}

async function storeAppends(path: string, facts: readonly Fact[]): Promise<number> {
  const store = await openSqliteStore(path);
  const rate = await timed(facts.length, async () => {
    for (const fact of facts) {
      const outcome = await store.append([fact]);
      if (outcome.kind !== 'kept') throw new Error(`bench: the store must keep ${fact.id}, got ${outcome.kind}`);
    }
  });
  await store.close();
  return rate;
}

async function storeAtOnce(path: string, facts: readonly Fact[]): Promise<number> {
  const store = await openSqliteStore(path);
  const rate = await timed(facts.length, async () => {
    await store.append(facts);
  });
  await store.close();
  return rate;
}

/** The statements of the store's append, prepared once, on a book that the store has made. */
async function bareAppends(path: string, facts: readonly Fact[]): Promise<number> {
  await (await openSqliteStore(path)).close();
  const db = new DatabaseSync(path);
  db.exec('pragma journal_mode = wal; pragma synchronous = full');
  const begin = db.prepare('begin immediate');
  const known = db.prepare('select hash from fact where id = ?');
  const last = db.prepare('select seq, hash from fact where device = ? order by seq desc limit 1');
  const insert = db.prepare('insert into fact (id, hash, device, seq, body) values (?, ?, ?, ?, ?)');
  const commit = db.prepare('commit');
  const rate = await timed(facts.length, () => {
    for (const fact of facts) {
      begin.run();
      known.get(fact.id);
      last.get(fact.device);
      insert.run(fact.id, fact.hash, fact.device, fact.seq, canonical(fact));
      commit.run();
    }
  });
  db.close();
  return rate;
}
