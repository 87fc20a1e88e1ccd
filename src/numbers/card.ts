import type { SourceKey } from './bibliography.ts';

/** Where a number comes from, shown under "how was this worked out". */
export type Card = {
  readonly what: string; // a sentence
  readonly equation: string;
  /** Each symbol with its meaning and [unit]. */
  readonly symbols: Readonly<Record<string, string>>;
  readonly validity: string;
  readonly sources: readonly SourceKey[];
};
