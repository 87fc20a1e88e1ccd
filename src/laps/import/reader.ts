/** What every format's reader does: takes text in pieces, hands fixes on, and says what day its seconds count from. */
import type { LogProblem, Zero } from '../model.ts';
import type { Gather } from './gather.ts';
import type { Tally } from './tally.ts';

export type Sink = { readonly gather: Gather; readonly tally: Tally };

export type Reader = {
  readonly feed: (text: string) => void;
  readonly end: () => void;
  readonly zero: () => Zero;
  /** Why it could not begin, or stopped before the end. What was read before stays. */
  readonly problem: () => LogProblem | undefined;
  /** What a person should know of how it was read. */
  readonly notes: () => readonly string[];
};
