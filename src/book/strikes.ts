/**
 * Which facts are struck (SPEC B8 to B10). A fact counts when no strike that counts names it, and a strike is a fact,
 * so it may be struck itself; then what it struck counts again.
 */
import type { Fact, FactOf } from './fact.ts';

export type Struck = { readonly by: string; readonly why: string };

/**
 * Fact id → who struck it and why. Follows the strikes from those that nobody struck back to what they name, which is from
 * the latest to the earliest as they were written, and does not mind a phone whose clock is wrong. Strikes that strike
 * each other in a ring decide nothing: none of them counts as struck, and a ring reaches no other fact.
 */
export function struckFacts(facts: readonly Fact[]): ReadonlyMap<string, Struck> {
  const strikes = new Map<string, FactOf<'struck'>>();
  for (const fact of facts) if (fact.kind === 'struck') strikes.set(fact.id, fact);
  const struck = new Map<string, Struck>();
  if (strikes.size === 0) return struck;

  /** For each strike: how many strikes against it are undecided still. */
  const undecided = new Map<string, number>();
  for (const strike of strikes.values()) {
    if (strikes.has(strike.fact)) undecided.set(strike.fact, (undecided.get(strike.fact) ?? 0) + 1);
  }
  const standing = [...strikes.keys()].filter(id => !undecided.has(id));
  const settled = new Set<string>(standing);
  const settle = (id: string): void => {
    if (!settled.has(id)) standing.push(id);
    settled.add(id);
  };

  for (let id = standing.pop(); id !== undefined; id = standing.pop()) {
    const strike = strikes.get(id) as FactOf<'struck'>;
    const counts = !struck.has(id);
    if (counts && !struck.has(strike.fact)) struck.set(strike.fact, { by: strike.by, why: strike.why });
    if (!strikes.has(strike.fact)) continue;
    const left = (undecided.get(strike.fact) ?? 1) - 1;
    undecided.set(strike.fact, left);
    if (counts || left === 0) settle(strike.fact);
  }
  return struck;
}
