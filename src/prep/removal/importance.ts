/**
 * What counts before what when not everything fits: safety first, by the number done of each class of severity, the
 * gravest first, so that no number of small jobs buys off a grave one; then the value done of each further tier. Safety
 * jobs of which none states a class count by their value; one without a class among others that have one counts as gravest.
 */
import type { WorkJob } from './bare-work.ts';

export type Importance = {
  /** How many measures there are, the most important first. */
  readonly count: number;
  /** Which measure a job counts in, and how much. */
  readonly of: (job: WorkJob) => { readonly rank: number; readonly worth: number };
};

const SAFETY = 0;
const GRAVEST = 1;

export const importanceOf = (jobs: readonly WorkJob[]): Importance => {
  const classed = jobs.some(job => job.tier === SAFETY && job.severity !== undefined);
  const counted = (job: WorkJob): boolean => classed && job.tier === SAFETY;
  const places = jobs.map(job => placeOf(job, counted(job)));
  const ranks = [...new Set(places)].sort((a, b) => a - b);
  return {
    count: ranks.length,
    of: job => ({
      rank: ranks.indexOf(placeOf(job, counted(job))),
      worth: counted(job) ? 1 : job.value,
    }),
  };
};

/** Tiers in their order; the classes of severity inside the first, all below 1. */
const placeOf = (job: WorkJob, counted: boolean): number => (counted ? 1 - 1 / (job.severity ?? GRAVEST) : job.tier);

/** Above 0 when `a` is more than `b` in the first measure in which they differ. */
export const compare = (a: readonly number[], b: readonly number[]): number => {
  for (let k = 0; k < a.length; k++) {
    const apart = (a[k] ?? 0) - (b[k] ?? 0);
    if (Math.abs(apart) > 1e-9) return apart;
  }
  return 0;
};
