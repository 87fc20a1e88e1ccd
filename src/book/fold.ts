/** From facts to the state of one kart (SPEC B11 to B20). Pure: the same facts give the same state in whatever order they come. */
import type { Fact } from './fact.ts';
import { inOrder } from './order.ts';
import type { State } from './state.ts';
import { struckFacts } from './strikes.ts';
import { Tally } from './tally.ts';

/**
 * The state of one kart, from the facts of that kart alone (`factsOf`). With `at` (RFC 3339, UTC, milliseconds): as the book stood at that
 * moment, from what had happened and had been written by then.
 */
export function fold(facts: readonly Fact[], at?: string): State {
  return tallyOf(inOrder(at === undefined ? facts : knownAt(facts, at))).state();
}

/** What had happened and had been written by a moment. */
export const knownAt = (facts: readonly Fact[], at: string): readonly Fact[] =>
  facts.filter(fact => fact.at <= at && fact.recorded <= at);

/** Works on facts that are in order, each once. */
export function tallyOf(ordered: readonly Fact[], struck = struckFacts(ordered)): Tally {
  const tally = new Tally(struck);
  for (const fact of ordered) if (happened(fact) && !struck.has(fact.id)) tally.add(fact);
  return tally;
}

/** Strikes and redactions are about the book; nothing happened to the kart. */
export const happened = ({ kind }: Fact): boolean => kind !== 'struck' && kind !== 'redacted';
