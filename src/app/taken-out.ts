/**
 * A backup of before a person was taken out holds them again when it is restored (ADR 0009). What is known of that comes from
 * a later copy of the same book; what came after the latest of them nobody here can know.
 */
import { type Fact, redactionsIn, stillSays } from '../book/index.ts';
import { inBatches } from './in-batches.ts';
import type { BookStore } from './ports.ts';

export type TakenOut = {
  /** Recorded last in the backup: who was taken out since then stands in it again. '' when it holds no fact. */
  readonly until: string;
  /** Known from a later copy: under which names they stood there, and in which facts of the backup they stand again. */
  readonly again: readonly { readonly as: string; readonly facts: readonly string[] }[];
};

/** So many facts are read at once. */
const BATCH = 2000;

/** @param later copies of the same book, or of another: those say nothing */
export async function takenOutSince(backup: BookStore, later: readonly BookStore[]): Promise<TakenOut> {
  const redacting = new Map<string, Fact>();
  for (const copy of later)
    for await (const fact of factsOf(copy)) if (fact.kind === 'redacted') redacting.set(fact.id, fact);
  const entries = redactionsIn([...redacting.values()]);
  const again = new Map<string, string[]>();
  let until = '';
  for await (const fact of factsOf(backup)) {
    if (fact.recorded > until) until = fact.recorded;
    for (const one of entries.get(fact.id) ?? [])
      if (stillSays(fact, [one])) again.set(one.as, [...(again.get(one.as) ?? []), fact.id]);
  }
  return { until, again: [...again].map(([as, facts]) => ({ as, facts })) };
}

async function* factsOf(store: BookStore): AsyncGenerator<Fact> {
  for await (const rows of inBatches((after, most) => store.read(after, most), BATCH))
    for (const { fact } of rows) yield fact;
}
