/** What sets of jobs take: together, and the least that each adds to others whatever is done besides. */
import { partMinutes, type Work, type WorkJob } from './bare-work.ts';
import { needed } from './graph.ts';
import { asGraph } from './least.ts';
import { cannotDoWithout } from './reduce.ts';
import { type Steps, steps } from './steps.ts';

export type Priced = {
  /** No plan for these jobs takes less. */
  readonly least: number;
  /** A plan for them takes this; infinite when none was found. */
  readonly most: number;
  readonly plan: Steps;
};

export type Prices = {
  /** Of a set that holds whatever its jobs come after, by number. */
  readonly of: (jobs: ReadonlySet<number>) => Priced;
  readonly asked: () => number;
  /** A quick lower bound of the same. */
  readonly atLeast: (jobs: Iterable<number>) => number;
  /** Parts that come off for a job whichever way is taken. */
  readonly sure: (job: number) => ReadonlySet<number>;
  /** Parts that may come off for it. */
  readonly may: (job: number) => ReadonlySet<number>;
  /** The same of what lies off from the start. */
  readonly mayBeside: ReadonlySet<number>;
  readonly cost: (part: number) => number;
};

/** Jobs times parts. */
const MANY = 300_000;
/** For each set: there are many to price. */
const EFFORT = { states: 20_000, removal: 3_000 };

export const pricesOf = (work: Work, jobs: readonly WorkJob[]): Prices => {
  const { graph } = asGraph({
    parts: work.parts.map(part => ({ id: part.id, access: part.access, minutes: partMinutes(part) })),
    wishes: jobs.map(job => ({ id: job.id, ways: job.needsRemoved })),
    lyingOff: work.start.off,
  });
  const first = work.parts.length;
  const beside = first + jobs.length; // what lies off is asked for after the jobs
  const must = cannotDoWithout(graph, needed(graph));
  const may = (node: number): ReadonlySet<number> => {
    const order = needed({ ...graph, open: new Set([node]) });
    return new Set(order.filter(n => n < first));
  };
  // Where it would take long to find, every part may come off for every job: the bounds are then weaker, not wrong.
  const every = new Set(work.parts.keys());
  const mayOf = jobs.length * work.parts.length > MANY ? () => every : memo(n => may(first + n));
  const sure = (n: number): ReadonlySet<number> => must.get(first + n) ?? new Set();
  const lying = work.parts.filter(part => work.start.off.includes(part.id));
  const putBack = lying.reduce((sum, part) => sum + part.refitMin + part.verifyMin, 0);
  const cost = (part: number): number => graph.cost[part] ?? 0;
  const known = new Map<string, Priced>();
  return {
    cost,
    sure,
    may: mayOf,
    mayBeside: may(beside),
    asked: () => known.size,
    atLeast: set => {
      const off = new Set(must.get(beside) ?? []);
      let minutes = putBack;
      for (const n of set) {
        minutes += jobs[n]?.minutes ?? 0;
        for (const p of sure(n)) off.add(p);
      }
      for (const p of off) minutes += cost(p);
      return minutes;
    },
    of: set => {
      const list = [...set].sort((a, b) => a - b);
      const key = list.join(' ');
      const before = known.get(key);
      if (before) return before;
      const plan = steps(
        work,
        list.flatMap(n => jobs[n] ?? []),
        EFFORT,
      );
      const priced: Priced =
        plan.kind === 'found'
          ? { least: plan.bound, most: plan.minutes, plan }
          : { least: plan.proven ? Number.POSITIVE_INFINITY : 0, most: Number.POSITIVE_INFINITY, plan };
      known.set(key, priced);
      return priced;
    },
  };
};

const memo = <T>(of: (n: number) => T): ((n: number) => T) => {
  const known = new Map<number, T>();
  return n => {
    const before = known.get(n);
    if (before !== undefined) return before;
    const value = of(n);
    known.set(n, value);
    return value;
  };
};
