/** What the page shows of one kart, and how old that is. */
import type { FirstAnswers, KartLine, Problem } from '../app/index.ts';
import type { PlanDifference } from '../prep/index.ts';
import type { SyncState } from './book/sync.ts';
import type { Crew } from './plan/crew.ts';
import type { Planned } from './plan/planner.ts';

/** Everything the sheets show, of one moment; the newest facts first; the plan for the hands and times that were said. */
export type Snapshot = FirstAnswers;

export type View = {
  readonly karts: readonly KartLine[];
  /** The kart that was picked and is still being read: what is shown is another one. */
  readonly picked?: string | undefined;
  /** The book on this device has been looked into: with no kart above, it holds none. */
  readonly isRead: boolean;
  readonly snapshot?: Snapshot | undefined;
  /** What is shown is as things stood then: the book itself is being read. */
  readonly stood?: string | undefined;
  /** A fact is on its way into the book. */
  readonly writing: boolean;
  readonly sync: SyncState;
  /** False where the browser keeps nothing of the book. */
  readonly kept: boolean;
  readonly trouble: readonly Problem[];
  readonly crew: Crew;
  /** A better plan is being looked for. */
  readonly searching: boolean;
  /** What the plan does otherwise than before, until somebody has read it. */
  readonly changed?: PlanDifference | undefined;
};

export const shownOf = ({ plan, problems, ...how }: Planned, snapshot: Snapshot | undefined): Partial<View> => ({
  ...how,
  ...(snapshot && { snapshot: { ...snapshot, plan } }),
  ...(problems.length > 0 && { trouble: problems }),
});

/** What a page worked out less than a minute ago still holds when no fact came since: only days make items due by themselves. */
export const isFresh = (snapshot: Snapshot): boolean => ageOf(snapshot) < 60_000;
/** A page that was left for an hour is met like one that is opened. */
export const isLongAgo = (snapshot: Snapshot): boolean => ageOf(snapshot) > 3_600_000;

const ageOf = ({ fitness }: Snapshot): number => Date.now() - Date.parse(fitness.at);
