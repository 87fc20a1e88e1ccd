/** What lies in the spares box: what was counted last, less what went on the kart since (SPEC B33). */
import { type Fact, inOrder, struckFacts } from '../../book/index.ts';
import type { Kart, Part } from '../../kart/index.ts';

/** Parts of a kind share their spares; where the kart file says they are not alike, each has its own. */
export const pileOf = ({ costs }: Kart, { kind, id }: Part): string =>
  costs?.spares[kind]?.alike === false ? id : kind;

/** By pile; one that was never counted is not there. */
export function inBox(kart: Kart, facts: readonly Fact[]): ReadonlyMap<string, number> {
  const struck = struckFacts(facts);
  const box = new Map<string, number>();
  for (const fact of inOrder(facts)) {
    if (struck.has(fact.id)) continue;
    const part = fact.kind === 'fitted' ? kart.parts[fact.part] : undefined;
    if (fact.kind === 'spares counted') {
      const named = kart.parts[fact.of];
      box.set(named ? pileOf(kart, named) : fact.of, fact.count);
    } else if (part && fact.kind === 'fitted' && fact.fresh) {
      const pile = pileOf(kart, part);
      const left = box.get(pile);
      if (left !== undefined) box.set(pile, Math.max(0, left - 1));
    }
  }
  return box;
}
