/**
 * A fault tree: what must go wrong together for the top event to happen. Coherent only: a failure never helps, so there
 * is no "not". The same name in two places is the same event; that is what makes a shared cause visible.
 */

/** How the inputs of a gate bring it about: all of them, any of them, at least `k` of them. Words of Open-PSA MEF. */
export type Gate =
  | { readonly op: 'and' | 'or'; readonly inputs: readonly string[] }
  | { readonly op: 'atleast'; readonly k: number; readonly inputs: readonly string[] };

/**
 * What is known of an event that is not taken apart further: its chance over the next event, 0 to 1; `undefined` where
 * neither record nor prior exists; `true` or `false` where it is a given of the question, as a part that is off.
 */
export type Basic = number | boolean | undefined;

export type FaultTree = {
  readonly top: string; // a gate or an event
  readonly gates: ReadonlyMap<string, Gate>;
  readonly events: ReadonlyMap<string, Basic>;
};

/** Beyond any kart: what is larger is refused, not half done. The depth of recursion in the diagrams is within the events. */
export const LIMITS = { events: 2000, gates: 4000, inputs: 40_000 } as const;
