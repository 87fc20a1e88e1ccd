/** Which jobs to do when there are only so many minutes, what is left out and what it would take to have it in. */
import type { Work, WorkStep } from './bare-work.ts';
import { choose, type Selection } from './choose.ts';
import { importanceOf } from './importance.ts';
import { type Prices, pricesOf } from './prices.ts';

export type LeftOut = {
  readonly job: string;
  /** What doing it too would add to this plan, found exactly or not; null when it cannot be done at all. */
  readonly adds: { readonly minutes: number; readonly exact: boolean } | null;
  /** The smallest window in which it enters, or, when that is not proven, one in which it does; null as above. */
  readonly window: { readonly minutes: number; readonly smallest: boolean } | null;
};

export type Budget =
  | {
      readonly kind: 'chosen';
      /** Ids of the jobs that are done at the end, what was done before included. */
      readonly chosen: readonly string[];
      readonly minutes: number;
      readonly off: readonly string[];
      readonly steps: readonly WorkStep[];
      /** No other choice for this window is better. */
      readonly proven: boolean;
      /** What is chosen in each measure of importance, and what no choice has more of. */
      readonly worth: readonly number[];
      readonly atMost: readonly number[];
      readonly leftOut: readonly LeftOut[];
      /** When safety work is left out: a window that holds all of it, and what no window below can; null when it cannot be done. */
      readonly safetyNeeds: { readonly minutes: number; readonly bound: number } | null | undefined;
    }
  /** Even to close up takes longer. */
  | { readonly kind: 'too short'; readonly needs: number }
  | { readonly kind: 'no plan'; readonly why: string };

/** So few jobs that every set of them can be priced. */
const FEW = 9;
/** Sets of jobs priced before the search gives its best: fewer where each takes longer. */
const effortFor = (work: Work): number =>
  Math.max(20, Math.min(1500, Math.round(40_000 / (work.parts.length + work.jobs.length))));

/**
 * The choice for a window of `minutes`: closed and checked at the end always; then importance (see importance.ts); then
 * the fewest minutes. More minutes never make it worse in the first measure that changes, as long as it is proven.
 */
export const chooseUnderBudget = (work: Work, minutes: number, effort = effortFor(work)): Budget => {
  if (!(minutes >= 0)) throw new Error(`chooseUnderBudget: minutes must be 0 or more, got ${minutes}`);
  const jobs = work.jobs.filter(job => !work.start.done.includes(job.id));
  const importance = importanceOf(work.jobs);
  const prices = pricesOf(work, jobs);
  const closing = prices.of(new Set());
  if (closing.plan.kind === 'no plan') return { kind: 'no plan', why: closing.plan.why };
  const ask = (window: number): Selection | undefined => choose({ jobs, importance, prices, window, effort });
  const chosen = ask(minutes);
  if (!chosen) return { kind: 'too short', needs: closing.most };
  const { plan } = prices.of(chosen.taken);
  if (plan.kind === 'no plan') return { kind: 'no plan', why: plan.why };

  const numberOf = new Map(jobs.map((job, n) => [job.id, n]));
  const withEarlier = (from: Iterable<number>): ReadonlySet<number> => {
    const all = new Set(from);
    for (const n of all) for (const id of jobs[n]?.after ?? []) all.add(numberOf.get(id) ?? n); // it grows while it is walked
    return all;
  };
  const now = prices.of(chosen.taken);
  const lastAsk = prices.asked() + effort;
  const adds = (n: number): LeftOut['adds'] => {
    if (prices.asked() >= lastAsk) return { minutes: jobs[n]?.minutes ?? 0, exact: false };
    const then = prices.of(withEarlier([...chosen.taken, n]));
    if (then.most === Number.POSITIVE_INFINITY) return null;
    return { minutes: then.most - now.most, exact: then.least === then.most && now.least === now.most };
  };
  const left = jobs.map((_, n) => n).filter(n => !chosen.taken.has(n));
  const windows =
    left.length === 0
      ? []
      : jobs.length <= FEW
        ? smallest(left, ask, prices, withEarlier, minutes, jobs.length)
        : asImportant();
  const done = new Set([...work.start.done, ...[...chosen.taken].map(n => jobs[n]?.id ?? '')]);
  const safety = jobs.flatMap((job, n) => (job.tier === 0 ? [n] : []));
  return {
    kind: 'chosen',
    chosen: work.jobs.flatMap(job => (done.has(job.id) ? [job.id] : [])),
    minutes: chosen.minutes,
    off: plan.off,
    steps: plan.steps,
    proven: chosen.proven,
    worth: chosen.worth,
    atMost: chosen.atMost,
    leftOut: left.map((n, i) => ({ job: jobs[n]?.id ?? '', adds: adds(n), window: windows[i] ?? null })),
    safetyNeeds: safety.every(n => chosen.taken.has(n)) ? undefined : needs(prices, withEarlier(safety)),
  };

  /** A window that surely has it: all that is as important or more. */
  function asImportant(): LeftOut['window'][] {
    const ranks = jobs.map(job => importance.of(job).rank);
    const windows = Array.from({ length: importance.count }, (_, rank) => {
      if (!left.some(n => ranks[n] === rank)) return null;
      const most = finite(prices.of(withEarlier([...jobs.keys()].filter(k => (ranks[k] ?? 0) <= rank))).most);
      return most === null ? null : { minutes: most, smallest: false };
    });
    return left.map(n => windows[ranks[n] ?? 0] ?? null);
  }
};

/** Goes from window to window at which a choice changes: those in which another set of jobs just fits. */
const smallest = (
  left: readonly number[],
  ask: (window: number) => Selection | undefined,
  prices: Prices,
  withEarlier: (from: Iterable<number>) => ReadonlySet<number>,
  from: number,
  jobs: number,
): LeftOut['window'][] => {
  const fits = new Set<number>();
  for (let set = 0; set < 2 ** jobs; set++) {
    const chosen = Array.from({ length: jobs }, (_, n) => n).filter(n => set & (1 << n));
    if (withEarlier(chosen).size > chosen.length) continue;
    const { most } = prices.of(new Set(chosen));
    if (most > from && most < Number.POSITIVE_INFINITY) fits.add(most);
  }
  const found = new Map<number, LeftOut['window']>();
  for (const window of [...fits].sort((a, b) => a - b)) {
    if (found.size === left.length) break;
    const then = ask(window);
    for (const n of left)
      if (then?.taken.has(n) && !found.has(n)) found.set(n, { minutes: window, smallest: then.proven });
  }
  return left.map(n => found.get(n) ?? null);
};

const needs = (
  prices: Prices,
  set: ReadonlySet<number>,
): { readonly minutes: number; readonly bound: number } | null => {
  const { most, least } = prices.of(set);
  return most < Number.POSITIVE_INFINITY ? { minutes: most, bound: least } : null;
};

const finite = (minutes: number): number | null => (minutes < Number.POSITIVE_INFINITY ? minutes : null);
