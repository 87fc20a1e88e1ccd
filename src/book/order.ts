/** The one order of all facts (SPEC B7). It depends on what the facts say, never on when they arrived here. */
import type { Fact } from './fact.ts';

/** What decides where a fact stands. */
export type Place = Pick<Fact, 'at' | 'recorded' | 'device' | 'seq' | 'id' | 'hash'>;

/** By `at`, then `recorded`, device, seq, id; the hash only tells two claims to one id apart. Compares code units, so every machine agrees. */
export function compareFacts(a: Place, b: Place): number {
  return (
    compare(a.at, b.at) ||
    compare(a.recorded, b.recorded) ||
    compare(a.device, b.device) ||
    a.seq - b.seq ||
    compare(a.id, b.id) ||
    compare(a.hash, b.hash)
  );
}

/** The facts in order, each id once: of two claims to one id the first in order stands. */
export function inOrder(facts: readonly Fact[]): readonly Fact[] {
  const seen = new Set<string>();
  const isNew = (id: string): boolean => seen.size < seen.add(id).size;
  return sorted(facts).filter(fact => isNew(fact.id));
}

/** Facts mostly come in order; then nothing is copied or sorted. */
function sorted(facts: readonly Fact[]): readonly Fact[] {
  for (let i = 1; i < facts.length; i++) {
    if (compareFacts(facts[i - 1] as Fact, facts[i] as Fact) > 0) return [...facts].sort(compareFacts);
  }
  return facts;
}

export function factsOf(facts: readonly Fact[], kart: string): readonly Fact[] {
  return facts.filter(fact => fact.kart === kart);
}

const compare = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
