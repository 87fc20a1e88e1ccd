/** What is said of the life of parts, as every face shows it: plain JSON. Hours are running hours. */
import type { PartId, System } from '../../kart/index.ts';
import type { Survival, WeibullPaper } from '../plots/index.ts';
import type { Spread } from '../posterior/index.ts';
import type { Replacement, RunningCost } from '../replacement/index.ts';

/** One part at its age over the event to come. */
export type LifeLine = {
  readonly part: PartId;
  readonly kind: string;
  readonly system: System;
  readonly age: number | null; // null: the record does not hold it
  readonly fate: 'running' | 'failed'; // found failed or cracked, and still there
  readonly severity: 1 | 2 | 3 | 4 | null; // of the worst function that needs it; null: none does
  readonly chance: { readonly mean: number; readonly low: number; readonly high: number } | null;
  readonly words: { readonly short: string; readonly long: string } | null;
  readonly basis: string | null; // from what it is known, and how much of it is a guess
  readonly mostlyGuess: boolean;
  readonly unknown: string | null; // why there is no number
};

/** Mean over all lives that fit, and where 9 of 10 of them have it. */
export type Known = Omit<Spread, 'middle'> & { readonly mean: number };

/** All that is known of one part. What is worked out of a life is null where neither record nor guess bears one. */
export type LifeSheet = LifeLine & {
  readonly hours: number | null; // of the event
  readonly record: {
    readonly lives: number;
    readonly failed: number;
    readonly karts: readonly string[];
    readonly facts: readonly string[]; // that the lives rest on
  };
  readonly guess: string | null; // its source
  /** The share that lasts, from the record alone; empty where none has failed. */
  readonly survival: readonly Survival[];
  /** Ages by which half of them, and one in ten, are gone. */
  readonly median: Known | null;
  readonly tenth: Known | null;
  /** The shape as it was guessed and as it is now: how much the record has moved it. */
  readonly shape: { readonly guessed: Spread; readonly now: Spread } | null;
  readonly paper: WeibullPaper | null;
  readonly replacement: Replacement | null;
  readonly cost: {
    readonly perHour: RunningCost;
    readonly perEvent: RunningCost | null;
    readonly counts: string;
  } | null;
  /** What is lacking for more to be said, each with the way to say it. */
  readonly lacking: readonly string[];
};
