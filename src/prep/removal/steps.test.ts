import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { everySet, randomWork, wrongWith } from '../../../test/removal-work.ts';
import { steps } from './steps.ts';

const ids = (of: readonly { readonly id: string }[]): string[] => of.map(one => one.id);
const runs = { numRuns: 300 };

describe('the steps of small work', () => {
  it('take the least minutes there are, against walking through every state of the kart', () => {
    let planned = 0;
    fc.assert(
      fc.property(randomWork(), work => {
        const least = everySet(work).get(ids(work.jobs).sort().join(' '));
        const found = steps(work);
        if (found.kind === 'found') planned++;
        expect(found.kind === 'found' ? found.minutes : undefined).toBe(least);
        if (found.kind === 'found') expect(found.bound).toBe(found.minutes);
      }),
      runs,
    );
    expect(planned).toBeGreaterThan(runs.numRuns / 5); // it looked at real plans
  });

  it('can be taken one by one, end closed, and last as long as is said', () => {
    fc.assert(
      fc.property(randomWork(6, 5), work => {
        const found = steps(work);
        if (found.kind !== 'found') return;
        expect(wrongWith(work, ids(work.jobs), found.steps)).toBeUndefined();
        expect(found.steps.reduce((sum, step) => sum + step.minutes, 0)).toBe(found.minutes);
        const off = found.steps.flatMap(step => (step.step === 'remove' ? [step.part] : []));
        expect([...new Set([...work.start.off, ...off])].sort()).toEqual([...found.off].sort());
      }),
      { numRuns: 1000 },
    );
  });
});

describe('the quick order, when the search has no effort left', () => {
  it('can be taken one by one too, and its bound is never above the true least', () => {
    let found = 0;
    fc.assert(
      fc.property(randomWork(), work => {
        const quick = steps(work, work.jobs, { states: 0, removal: 1000 });
        if (quick.kind !== 'found') return;
        found++;
        const least = everySet(work).get(ids(work.jobs).sort().join(' ')) ?? Number.POSITIVE_INFINITY;
        expect(wrongWith(work, ids(work.jobs), quick.steps)).toBeUndefined();
        expect(quick.steps.reduce((sum, step) => sum + step.minutes, 0)).toBe(quick.minutes);
        expect(quick.minutes).toBeGreaterThanOrEqual(least);
        expect(quick.bound).toBeLessThanOrEqual(least);
      }),
      runs,
    );
    expect(found).toBeGreaterThan(runs.numRuns / 10);
  });
});
