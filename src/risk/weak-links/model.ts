/** Weak links as every face shows them: plain JSON, each link with its place on the kart. */
import type { Corner, JointId, PartId, System } from '../../kart/index.ts';
import type { Severity } from '../risk-code.ts';

/** How likely over the event, and how far off that may be; shown only where record or starting guess bears it. */
export type Likely = {
  readonly chance: number;
  readonly low: number;
  readonly high: number;
  readonly words: string; // '3 in 1,000, between 1 and 9'
  readonly basis: string; // from what it is known
};

export type Sort =
  | 'part' // the part itself
  | 'joint' // a joint with one retention
  | 'first' // of two retentions
  | 'second'
  | 'one hand' // what makes both let go: made and looked at by too few
  | 'shared'; // fluid, mounting: takes several parts with it

export type Link = {
  readonly id: string; // name of its event in the tree
  readonly sort: Sort;
  readonly part?: PartId; // 'shared' has none of its own
  readonly joint?: JointId;
  readonly system?: System;
  readonly corner: Corner;
  readonly place?: { readonly x: number; readonly y: number };
  readonly says: string; // 'brake push rod, clevis pins: spring clip'
  readonly latent?: true; // a second retention that nobody looked at since it was last open: it may be gone
  readonly likely: Likely | null;
  readonly unknown: string | null; // why there is no number
};

/** One link that is enough. */
export type SinglePoint = Link & {
  /** 'One spring clip stands between you and no brakes: brake push rod, clevis pins.' */
  readonly sentence: string;
  readonly couldAdd: readonly string[]; // second retentions that go with its joint
};

/** What one link means for its hazard. Null where it cannot be worked out. */
export type Worth = Link & {
  readonly ifPerfect: number; // chance of the hazard if it never let go
  readonly ifForgotten: number; // chance of the hazard if it had let go
  readonly buys: string; // 'from 4 to 2 of 1,000 if it never let go'
  readonly costs: string; // '60 of 100 if it is forgotten'
};

/** Two links that are enough together, and neither alone. */
export type LinkPair = {
  readonly ids: readonly [string, string];
  readonly says: readonly [string, string];
  readonly likely: Pick<Likely, 'chance' | 'words'> | null; // of both at one event; null where one of them has no number
};

export type Hazard = {
  readonly function: string;
  readonly hazard: string; // what there is without it: 'no brakes'
  readonly severity: Severity;
  /** Complete, worst to find first: joints, then what one pair of hands or one fluid takes, then parts themselves. */
  readonly singlePoints: readonly SinglePoint[];
  /** How few things together are enough: how many sets of 1, of 2, of 3 … Null when the tree is too large to say. */
  readonly cutSets: { readonly count: number; readonly byOrder: readonly number[] } | null;
  /** The likeliest few pairs, those without a number after them; how many there are says `cutSets`. */
  readonly pairs: readonly LinkPair[];
  /** The whole hazard; null where any link of it has neither record nor guess. */
  readonly top: Likely | null;
  /** What is known of it alone: at least so likely. Null where nothing is known. */
  readonly atLeast: Likely | null;
  /** Links without a number. */
  readonly unknown: readonly Link[];
  /** Links with a number, those that buy most first. Of what is known alone, where not all is. */
  readonly links: readonly Worth[];
};

export type WeakLinks = {
  readonly kart: string;
  readonly at: string;
  readonly event: string | null;
  readonly hazards: readonly Hazard[]; // worst severity first
  readonly note: string;
};

export const NOTE =
  'Chances are starting guesses and your own record. They order weak links; a low one permits nothing, and fitness is judged apart from them.';
