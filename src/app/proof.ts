/**
 * Is a book whole? Trusts nothing of the store: every fact is read as it lies there, held against its own hash, against what
 * the store says of it, and against the end of its device's chain; every photo and raw file against its name.
 */
import { sha256 } from '@noble/hashes/sha2.js';
import { bytesToHex } from '@noble/hashes/utils.js';
import {
  CHAIN_START,
  type ChainEnd,
  type Fact,
  isProblem,
  type NamedRedaction,
  redactionsIn,
  stillSays,
  unvouched,
  upcast,
} from '../book/index.ts';
import { DAMAGED, inBatches } from './in-batches.ts';
import type { BookStore, Lying } from './ports.ts';
import { type Problem, refuse, sentence } from './problem.ts';

export type Proof = {
  readonly facts: number;
  /** Of these, how many were redacted; what was taken out of them nobody can prove any more. */
  readonly redacted: number;
  readonly files: number;
  /** What is damaged: where, what was expected, what was found, what to do. Empty when the book is whole. */
  readonly problems: readonly Problem[];
  /** Files that facts name and that are not here: on another device still, or lost. */
  readonly lacking: readonly string[];
};

export type Inspected = Pick<BookStore, 'lying' | 'files' | 'getFile' | 'ailments'>;

/** So many facts are in memory at once. */
const ROWS = 2000;

export async function proofOf(store: Inspected): Promise<Proof> {
  const problems: Problem[] = [];
  const named = new Set<string>();
  let facts = 0;
  const redacted: Fact[] = [];
  const redactions: Fact[] = [];
  await tried(problems, 'the place of the book', async () => {
    for (const said of await store.ailments())
      problems.push(damage('the place of the book', 'a place without fault', said));
  });
  await tried(problems, 'the facts', async () => {
    const ends = new Map<string, ChainEnd>();
    for await (const rows of lyingIn(store))
      for (const row of rows) {
        facts++;
        const fact = factOf(row, problems);
        linked(row, fact, ends, problems);
        if (fact?.gone) redacted.push(fact);
        if (fact?.kind === 'redacted') redactions.push(fact);
        if (fact) for (const file of filesOf(fact)) named.add(file);
      }
    await takenOut(store, redactions, problems);
    for (const fact of unvouched([...redacted, ...redactions.filter(({ gone }) => gone === undefined)]))
      problems.push(damage(`fact ${fact.id}`, 'a redaction in this book that fits what is left of it', 'none'));
  });
  const files = await provenFiles(store, problems);
  return {
    facts,
    redacted: redacted.length,
    files: files.size,
    problems,
    lacking: [...named].filter(hash => !files.has(hash)),
  };
}

/** Photos and raw files that a fact names. */
export function filesOf(fact: Fact): readonly string[] {
  if ((fact.kind === 'found' || fact.kind === 'failed') && fact.photo !== undefined) return [fact.photo];
  return fact.kind === 'laps' && fact.file !== undefined && fact.fileKept !== false ? [fact.file] : [];
}

/** What redactions take out must not lie there any more: looked for only where there are any. */
async function takenOut(store: Inspected, redactions: readonly Fact[], problems: Problem[]): Promise<void> {
  if (redactions.length === 0) return;
  const wanted = redactionsIn(redactions);
  for await (const rows of lyingIn(store))
    for (const row of rows) {
      const asked = wanted.get(row.id);
      if (asked && says(row, asked))
        problems.push(damage(whereOf(row), 'what a redaction asks for to be taken out', 'it still there'));
    }
}

const lyingIn = (store: Inspected) => inBatches((after, most) => store.lying(after, most), ROWS);

/** What does not read has been named already. */
function says(row: Lying, asked: readonly NamedRedaction[]): boolean {
  const fact = factOf(row, []);
  return fact !== undefined && stillSays(fact, asked);
}

function factOf(row: Lying, problems: Problem[]): Fact | undefined {
  const where = whereOf(row);
  let raw: unknown;
  try {
    raw = JSON.parse(row.body);
  } catch {
    problems.push(damage(where, 'one fact as JSON', `"${row.body.slice(0, 60)}"`));
    return undefined;
  }
  const fact = upcast(raw);
  if (isProblem(fact)) {
    problems.push(refuse('book', where, sentence(fact.message), DAMAGED));
    return undefined;
  }
  for (const key of ['id', 'hash', 'device', 'seq'] as const)
    if (fact[key] !== row[key])
      problems.push(damage(where, `${key} ${fact[key]}, as the fact says`, `${row[key]} beside it`));
  return fact;
}

/** Rows never show a chain with a hole, so each fact follows the one of its device before. What does not read still holds its place. */
function linked(row: Lying, fact: Fact | undefined, ends: Map<string, ChainEnd>, problems: Problem[]): void {
  const end = ends.get(row.device) ?? CHAIN_START;
  ends.set(row.device, { seq: row.seq, hash: row.hash });
  const whose = `of device ${row.device}`;
  if (row.seq !== end.seq + 1)
    problems.push(damage(whereOf(row), `number ${end.seq + 1} ${whose}`, `number ${row.seq}`));
  else if (fact && fact.prev !== end.hash)
    problems.push(damage(whereOf(row), `a fact that follows ${end.hash} ${whose}`, `one that follows ${fact.prev}`));
}

async function provenFiles(store: Inspected, problems: Problem[]): Promise<ReadonlySet<string>> {
  const there = new Set<string>();
  await tried(problems, 'the files', async () => {
    for (const hash of await store.files()) {
      there.add(hash);
      await tried(problems, `file ${hash}`, async () => {
        const file = await store.getFile(hash);
        const found = file && bytesToHex(sha256(file.bytes));
        if (found !== hash)
          problems.push(damage(`file ${hash}`, 'bytes that give its name', `bytes that give ${found ?? 'none'}`));
      });
    }
  });
  return there;
}

/** A store that says so tells nothing about the book. */
const OUT_OF_REACH: readonly unknown[] = ['busy', 'cannot open', 'closed', 'read only'];

/** A place that cannot be read on is damage too; what can be read beside it is still looked at. */
async function tried(problems: Problem[], where: string, look: () => Promise<void>): Promise<void> {
  try {
    await look();
  } catch (error) {
    if (OUT_OF_REACH.includes((error as { code?: unknown }).code)) throw error;
    problems.push(damage(where, 'it to be read', error instanceof Error ? error.message : String(error)));
  }
}

const whereOf = ({ row, id }: Lying): string => `row ${row}, fact ${id}`;
const damage = (where: string, expected: string, got: string): Problem =>
  refuse('book', where, sentence(`Expected ${expected}, got ${got}`), DAMAGED);
