/**
 * What one event means for the top. With Q the chance of the top, Q(1) and Q(0) that with the event sure and ruled out:
 *   birnbaum B = Q(1) - Q(0);  criticality B p / Q;  achievement Q(1) / Q;  reduction Q / Q(0);  diagnostic p Q(1) / Q
 *   fussellVesely: chance that a minimal cut set with the event has happened, over Q
 * For coherent trees criticality equals (Q - Q(0)) / Q. Definitions differ between books: names and rows say which.
 * Source: definitions as in Vesely et al. 1981, NUREG-0492 (memory); values checked by enumeration and another program.
 */
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

export type Worth = {
  readonly p: number; // chance of the event
  readonly q: number; // of the top
  readonly slope: number; // Birnbaum
  readonly involved: number; // a minimal cut set with it has happened
  /** Chance of the top with the event ruled out, worked anew. */
  readonly without: () => number;
};

/** Undefined where a chance it hangs on is not known, or where the top cannot happen at all. */
export function importanceOf({ p, q, slope, involved, without }: Worth): Importance | undefined {
  if (!(q > 0) || Number.isNaN(p * slope * involved)) return undefined;
  // The difference of two nearly equal numbers says nothing: where almost all hangs on the event, Q(0) is worked anew.
  const rest = q - p * slope;
  const ifPerfect = rest > NEARLY_ALL * q ? rest : without();
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
const NEARLY_ALL = 1e-6;
