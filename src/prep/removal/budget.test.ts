import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { everySet, randomWork, wrongWith } from '../../../test/removal-work.ts';
import type { Work, WorkJob } from './bare-work.ts';
import { chooseUnderBudget } from './budget.ts';

const GRAVE = [1, 2];

/** Safety by class, gravest first, else by value; then the value of each tier: told anew, as a list to compare. */
const measures = (work: Work, done: ReadonlySet<string>): number[] => {
  const sum = (of: (j: WorkJob) => boolean, worth: (j: WorkJob) => number) =>
    work.jobs.filter(j => of(j) && done.has(j.id)).reduce((total, j) => total + worth(j), 0);
  const classed = work.jobs.some(j => j.tier === 0 && j.severity !== undefined);
  const safety = classed
    ? GRAVE.map(c =>
        sum(
          j => j.tier === 0 && (j.severity ?? 1) === c,
          () => 1,
        ),
      )
    : [
        sum(
          j => j.tier === 0,
          j => j.value,
        ),
      ];
  return [
    ...safety,
    ...[1, 2].map(tier =>
      sum(
        j => j.tier === tier,
        j => j.value,
      ),
    ),
  ];
};
const better = (a: readonly number[], b: readonly number[]): number =>
  a.map((x, k) => x - (b[k] ?? 0)).find(apart => apart !== 0) ?? 0;

/** The best set of jobs that can be closed up after in the window, by pricing every set. */
const byTryingAll = (work: Work, sets: ReadonlyMap<string, number>, window: number) => {
  let best: { worth: number[]; minutes: number } | undefined;
  for (const [set, minutes] of sets) {
    if (minutes > window) continue;
    const worth = measures(work, new Set(set.split(' ')));
    const apart = best ? better(worth, best.worth) : 1;
    if (apart > 0 || (apart === 0 && minutes < (best?.minutes ?? 0))) best = { worth, minutes };
  }
  return best;
};

const asked = fc.tuple(randomWork(), fc.integer({ min: 0, max: 70 }));

describe('the choice for a window', () => {
  it('is the best there is, against pricing every set of jobs, and its steps can be taken', () => {
    let chosen = 0;
    fc.assert(
      fc.property(asked, ([work, window]) => {
        const sets = everySet(work);
        const best = byTryingAll(work, sets, window);
        const found = chooseUnderBudget(work, window);
        expect(found.kind === 'chosen').toBe(best !== undefined);
        if (found.kind !== 'chosen') return;
        chosen++;
        expect(found.proven).toBe(true);
        expect({ worth: measures(work, new Set(found.chosen)), minutes: found.minutes }).toEqual(best);
        expect(wrongWith(work, found.chosen, found.steps)).toBeUndefined();
        expect(found.steps.reduce((sum, step) => sum + step.minutes, 0)).toBe(found.minutes);
        expect(found.atMost).toEqual(found.worth);
      }),
      { numRuns: 120 },
    );
    expect(chosen).toBeGreaterThan(50);
  });

  it('never gets worse in the first measure that changes when there is more time', () => {
    fc.assert(
      fc.property(asked, fc.integer({ min: 1, max: 20 }), ([work, window], more) => {
        const found = chooseUnderBudget(work, window);
        const then = chooseUnderBudget(work, window + more);
        if (found.kind !== 'chosen') return;
        expect(then.kind).toBe('chosen');
        if (then.kind !== 'chosen') return;
        expect(
          better(measures(work, new Set(then.chosen)), measures(work, new Set(found.chosen))),
        ).toBeGreaterThanOrEqual(0);
      }),
      { numRuns: 120 },
    );
  });

  it('says of each job left out what it adds and the smallest window in which it enters', () => {
    let looked = 0;
    fc.assert(
      fc.property(asked, ([work, window]) => {
        const found = chooseUnderBudget(work, window);
        if (found.kind !== 'chosen') return;
        for (const { job, adds, window: enters } of found.leftOut) {
          looked++;
          if (!enters) continue;
          expect(enters.smallest).toBe(true);
          const has = (minutes: number) => {
            const then = chooseUnderBudget(work, minutes);
            return then.kind === 'chosen' && then.chosen.includes(job);
          };
          expect(has(enters.minutes)).toBe(true);
          for (let less = window; less < enters.minutes; less++) expect(has(less)).toBe(false);
          if (adds) expect(adds.exact && adds.minutes + found.minutes > window).toBe(true);
        }
      }),
      { numRuns: 20 },
    );
    expect(looked).toBeGreaterThan(10);
  });

  it('says in which window all safety work fits when it does not in this one, and how long closing up takes', () => {
    fc.assert(
      fc.property(asked, ([work, window]) => {
        const sets = everySet(work);
        const found = chooseUnderBudget(work, window);
        const closing = sets.get([...work.start.done].sort().join(' '));
        if (found.kind === 'too short') expect(found.needs).toBe(closing);
        if (found.kind !== 'chosen') return;
        const safety = work.jobs.filter(j => j.tier === 0);
        if (safety.every(j => found.chosen.includes(j.id))) {
          expect(found.safetyNeeds).toBeUndefined();
          return;
        }
        const all = [...sets].flatMap(([set, minutes]) =>
          safety.every(j => set.split(' ').includes(j.id)) ? [minutes] : [],
        );
        const least = all.length > 0 ? Math.min(...all) : undefined;
        expect(found.safetyNeeds?.minutes).toBe(least);
        expect(found.safetyNeeds?.bound).toBe(least);
      }),
      { numRuns: 120 },
    );
  });

  it('keeps what it has when the effort ends, and no choice has more than it says', () => {
    fc.assert(
      fc.property(asked, fc.integer({ min: 1, max: 4 }), ([work, window], effort) => {
        const best = byTryingAll(work, everySet(work), window);
        const found = chooseUnderBudget(work, window, effort);
        if (found.kind !== 'chosen' || !best) return;
        expect(found.minutes).toBeLessThanOrEqual(window);
        expect(wrongWith(work, found.chosen, found.steps)).toBeUndefined();
        if (found.proven) {
          expect(measures(work, new Set(found.chosen))).toEqual(best.worth);
          return;
        }
        const before = measures(work, new Set(work.start.done));
        const there = measures(work, new Set(work.jobs.map(j => j.id))).flatMap((all, k) => (all > 0 ? [k] : []));
        for (const [set, minutes] of everySet(work))
          for (const [rank, k] of there.entries())
            if (minutes <= window)
              expect(found.atMost[rank]).toBeGreaterThanOrEqual(
                (measures(work, new Set(set.split(' ')))[k] ?? 0) - (before[k] ?? 0),
              );
      }),
      { numRuns: 120 },
    );
  });

  it('refuses a window that is no number of minutes', () => {
    const [work] = fc.sample(randomWork(), 1);
    if (work) expect(() => chooseUnderBudget(work, Number.NaN)).toThrow(/0 or more, got NaN/);
    if (work) expect(() => chooseUnderBudget(work, -1)).toThrow(/0 or more, got -1/);
  });
});
