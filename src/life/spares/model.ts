/** The spares box as every face shows it: plain JSON. */
import type { PartId, System } from '../../kart/index.ts';

/** A chance with its band and in words. */
export type Told = { readonly chance: number; readonly low: number; readonly high: number; readonly words: string };

/** Spares that serve one or several parts. */
export type Pile = {
  readonly name: string; // the kind; the part where no two are alike
  readonly kind: string;
  readonly system: System;
  readonly parts: readonly PartId[];
  readonly fails: Told; // at least one of its parts, over the event
  readonly held: Told; // that what is carried is enough
  readonly basis: string;
  readonly have: number; // in the box now
  readonly counted: boolean; // false: nobody ever counted, taken as none
  readonly carry: number;
  readonly buy: number;
  readonly price: number | null; // of one; null: not known
  readonly kilograms: number | null;
  readonly changeMinutes: number;
  readonly why: string | null; // why none can be proposed
};

export type Purchase = {
  readonly name: string;
  readonly count: number;
  readonly price: number;
  readonly money: number;
};

export type SparesBox = {
  readonly hours: number; // of the event
  readonly budget: {
    readonly money: number | null;
    readonly kilograms: number | null;
    readonly minutes: number | null;
  };
  /** That nothing that is known ends the weekend: with no spares, with the box as it is, with what is proposed. */
  readonly finish: { readonly none: Told; readonly box: Told; readonly chosen: Told };
  /** Those most likely to be needed first. */
  readonly piles: readonly Pile[];
  readonly buy: readonly Purchase[];
  readonly money: number;
  readonly kilograms: number; // of what is carried, as far as it is known
  readonly more: { readonly money: number; readonly finish: Told; readonly buy: readonly Purchase[] } | null;
  readonly frontier: readonly { readonly money: number; readonly finish: Told }[];
  /** Parts that can end a weekend and have no chance to count with: they are not counted as 0. */
  readonly unknown: readonly { readonly part: PartId; readonly why: string }[];
  readonly note: string;
};
