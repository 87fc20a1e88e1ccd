/**
 * Chance that a minimal cut set with a given event has happened: the part an event plays in the top. Exact, from the
 * union of its sets, and so less than the sum over them and less than the share of tops in which the event merely
 * happened too.
 * Source: Fussell-Vesely importance as in Vesely et al. 1981, NUREG-0492 (memory); checked by enumeration.
 */
import { Functions } from './functions.ts';
import { ONE, ZERO } from './nodes.ts';
import type { Solved } from './solve.ts';

/** By number of an event, from the chances by level. Keeps what it made for one for the next. Throws `TooLarge`. */
export function involvedIn(solved: Solved, chances: Float64Array, limit: number): (event: number) => number {
  const { cutSets, eventLevel, moduleLevel, moduleAt } = solved;
  const { level, high, low, roots } = cutSets;
  const functions = new Functions(limit);
  const unions = new Map<number, number>([
    [ZERO, ZERO],
    [ONE, ONE],
  ]);

  /** The function that a set of sets stands for. */
  const union = (sets: number): number => {
    const kept = unions.get(sets);
    if (kept !== undefined) return kept;
    const needing = functions.and(functions.event(level[sets] as number), union(high[sets] as number));
    const made = functions.or(needing, union(low[sets] as number));
    unions.set(sets, made);
    return made;
  };

  /** The same of the sets with what is asked at level `at`, which is left out of them. */
  const unionWith = (root: number, at: number): number => {
    const done = new Map<number, number>();
    const walk = (sets: number): number => {
      const own = sets > ONE ? (level[sets] as number) : Number.POSITIVE_INFINITY;
      if (own > at) return ZERO;
      if (own === at) return union(high[sets] as number);
      const kept = done.get(sets);
      if (kept !== undefined) return kept;
      const needing = functions.and(functions.event(own), walk(high[sets] as number));
      const made = functions.or(needing, walk(low[sets] as number));
      done.set(sets, made);
      return made;
    };
    return walk(root);
  };

  const known = new Map<number, number>([
    [ZERO, 0],
    [ONE, 1],
  ]);
  const chanceOf = (n: number): number => {
    const kept = known.get(n);
    if (kept !== undefined) return kept;
    const p = chances[functions.nodes.level[n] as number] as number;
    const high = chanceOf(functions.nodes.high[n] as number);
    const chance = p * high + (1 - p) * chanceOf(functions.nodes.low[n] as number);
    known.set(n, chance);
    return chance;
  };

  /** A set with the event holds one of its module, of the module that asks for that, and so on up to the top. */
  return event => {
    let at = eventLevel[event] as number;
    let chance = at < 0 ? 0 : (chances[at] as number);
    while (at >= 0) {
      const module = moduleAt[at] as number;
      chance *= chanceOf(unionWith(roots[module] as number, at));
      at = moduleLevel[module] as number;
    }
    return chance;
  };
}
