/**
 * What one event means for the top. With Q the chance of the top, Q(1) and Q(0) that with the event sure and ruled out:
 *   birnbaum B = Q(1) - Q(0);  criticality B p / Q;  achievement Q(1) / Q;  reduction Q / Q(0);  diagnostic p Q(1) / Q
 *   fussellVesely: chance that a minimal cut set with the event has happened, over Q
 * For coherent trees criticality equals (Q - Q(0)) / Q. Definitions differ between books: names and rows say which.
 * Source: definitions as in Vesely et al. 1981, NUREG-0492 (memory); values checked by enumeration and another program.
 */
import { nodeChances, slopes } from './chance.ts';
import { involvedIn } from './fussell-vesely.ts';
import { TooLarge } from './nodes.ts';
import type { Solved } from './solve.ts';

export type Importance = {
  readonly birnbaum: number; // how fast the top rises with the chance of the event [1]
  readonly fussellVesely: number; // share of the top that it plays a part in [1]
  readonly criticality: number; // share of the top that goes when it is ruled out [1]
  readonly ifFailed: number; // chance of the top when it is sure, Q(1): "what it costs if forgotten" [1]
  readonly ifPerfect: number; // chance of the top when it is ruled out, Q(0) [1]
  readonly achievement: number; // risk achievement worth Q(1) / Q, 1 or more [1]
  readonly reduction: number; // risk reduction worth Q / Q(0), 1 or more; infinite where nothing happens without it [1]
  readonly diagnostic: number; // of the times the top happens, how often it has happened too [1]
};

type Given = {
  readonly chances: Float64Array; // by level
  readonly chance: Float64Array; // of every node
  readonly limit: number; // of nodes for the diagrams of Fussell-Vesely
};

/**
 * By number of an event and its chance. Undefined where a chance it hangs on is not known, where the top cannot happen,
 * or where its own diagrams outgrow the limit.
 */
export function importancesIn(
  solved: Solved,
  { chances, chance, limit }: Given,
): (event: number, p: number) => Importance | undefined {
  const q = chance.at(-1) ?? Number.NaN;
  const slope = once(() => slopes(solved, chances, chance));
  const involved = once(() => involvedIn(solved, chances, limit));
  const without = (level: number): number =>
    nodeChances(
      solved,
      chances.map((p, at) => (at === level ? 0 : p)),
    ).at(-1) ?? Number.NaN;
  return (event, p) => {
    const level = solved.eventLevel[event] as number;
    if (!(q > 0) || Number.isNaN(p)) return undefined;
    if (level < 0) return importanceOf({ p, q, slope: 0, involved: 0, ifPerfect: q });
    const rise = slope()[level] as number;
    // The difference of two nearly equal numbers says nothing: where almost all hangs on the event, Q(0) is worked anew.
    const rest = q - p * rise;
    const ifPerfect = rest > NEARLY_ALL * q ? rest : without(level);
    try {
      return importanceOf({ p, q, slope: rise, involved: involved()(event), ifPerfect });
    } catch (error) {
      if (error instanceof TooLarge) return undefined;
      throw error;
    }
  };
}
const NEARLY_ALL = 1e-6;

type Worth = {
  readonly p: number; // chance of the event
  readonly q: number; // of the top
  readonly slope: number; // Birnbaum
  readonly involved: number; // a minimal cut set with it has happened
  readonly ifPerfect: number; // Q(0)
};

export function importanceOf({ p, q, slope, involved, ifPerfect }: Worth): Importance {
  const ifFailed = q + (1 - p) * slope;
  return {
    birnbaum: slope,
    fussellVesely: involved / q,
    criticality: (p * slope) / q,
    ifFailed,
    ifPerfect,
    achievement: ifFailed / q,
    reduction: q / ifPerfect,
    diagnostic: (p * ifFailed) / q,
  };
}

function once<T>(make: () => T): () => T {
  let made: T | undefined;
  return () => {
    made ??= make();
    return made;
  };
}
