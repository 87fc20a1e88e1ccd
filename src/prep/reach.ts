/**
 * What must come off so that all due work can be reached, cheapest first: the question of this kart put to `removal`,
 * with no part but those that some way in may need.
 */
import type { PartId } from '../kart/index.ts';
import { leastRemoval } from './removal/index.ts';

export type Wish = { readonly id: string; readonly ways: readonly (readonly PartId[])[] };

export type Reach = {
  /** Everything that is off at some time, what lay off already included. */
  readonly off: ReadonlySet<PartId>;
  /** The way chosen for each wish and each part of `off`, by id. */
  readonly wayOf: (kind: 'part' | 'wish', id: string) => readonly PartId[];
  readonly proven: boolean;
};

type Input = {
  readonly wishes: readonly Wish[];
  readonly lyingOff: readonly PartId[];
  readonly behind: (part: PartId) => readonly (readonly PartId[])[];
  readonly cost: (part: PartId) => number; // minutes to take off, refit and make good; 0 for what lies off already
  readonly effort?: number;
};

/** undefined when no set of ways exists (a reach that goes in a circle; the kart file reader refuses those). */
export const reach = ({ wishes, lyingOff, behind, cost, effort }: Input): Reach | undefined => {
  const known = new Set([...lyingOff, ...wishes.flatMap(wish => wish.ways.flat())]);
  for (const part of known) for (const next of behind(part).flat()) known.add(next); // a set grows while it is walked
  const found = leastRemoval({
    parts: [...known].map(id => ({ id, access: behind(id), minutes: cost(id) })),
    wishes,
    lyingOff,
    ...(effort === undefined ? {} : { effort }),
  });
  if (found.kind === 'no way') return undefined;
  return { off: new Set(found.off), wayOf: found.wayOf, proven: found.proven };
};
