import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { EFFORT, faults, kartProblems, plainProblems, shortest } from '../../../test/schedules.ts';
import { type ScheduleProblem, solve, solving } from './index.ts';

describe('plain problems', () => {
  test('every schedule keeps to precedence and resources, and its bound is not above it', () => {
    fc.assert(
      fc.property(plainProblems(25), fc.nat(), (problem, seed) => {
        const found = solve(problem, { ...EFFORT, seed });
        expect(faults(problem, found)).toEqual([]);
        expect(found.schedules).toBeLessThanOrEqual(EFFORT.schedules);
      }),
    );
  });

  test('small problems are solved to the shortest of all orders, and no bound is above it', () => {
    fc.assert(
      fc.property(plainProblems(6), problem => {
        const found = solve(problem, { schedules: 400, seed: 1 });
        const best = shortest(problem);
        expect(found.makespan).toBe(best);
        expect(found.bound.ticks).toBeLessThanOrEqual(best);
      }),
      { numRuns: 60 },
    );
  });

  it.each<[string, number, ScheduleProblem]>([
    // Arithmetic by hand: 12 and 10 side by side after the 6 that needs both, 12 + 6.
    [
      'two side by side, one that needs both',
      18,
      plain(
        [2],
        [
          [12, [1]],
          [10, [1]],
          [6, [2]],
        ],
      ),
    ],
    // 3 + 4 + 5 one after another on a resource of which there is one, whatever else.
    [
      'three that need the one tool',
      12,
      plain(
        [1, 9],
        [
          [3, [1, 1]],
          [4, [1, 2]],
          [5, [1, 3]],
          [7, [0, 2]],
        ],
      ),
    ],
    // The chain 4 + 4 leaves the resource for the 8 beside it.
    [
      'a chain beside a long one',
      8,
      plain(
        [2],
        [
          [4, [1]],
          [4, [1], [0]],
          [8, [1]],
        ],
      ),
    ],
    ['nothing to do', 0, plain([1], [])],
    [
      'only what takes no time',
      0,
      plain(
        [1],
        [
          [0, [1]],
          [0, [0], [0]],
        ],
      ),
    ],
  ])('%s: %i', (_, ticks, problem) => {
    const found = solve(problem, EFFORT);
    expect(found).toMatchObject({ makespan: ticks, bound: { ticks } });
    expect(faults(problem, found)).toEqual([]);
  });

  test('more resources than fit one word of bits are kept too', () => {
    const capacity = [200, 200, 200, 200, 200, 200];
    const activities = capacity.map((_, i) => ({
      id: `${i}`,
      ticks: 2,
      needs: capacity.map((_, r) => (r === i || r === 5 ? 150 : 0)),
      after: [],
    }));
    expect(solve({ capacity, activities }, EFFORT).makespan).toBe(12); // the last resource lets one run at a time
  });

  test('ten thousand activities give a plan with its gap', () => {
    const activities = Array.from({ length: 10_000 }, (_, i) => ({
      id: `${i}`,
      ticks: 1 + (i % 7),
      needs: [1 + (i % 3)],
      after: i < 50 ? [] : [i - 50],
    }));
    const problem = { capacity: [6], activities };
    const found = solve(problem, { schedules: 4, seed: 1 });
    expect(found.schedules).toBeLessThanOrEqual(4);
    expect(found.bound.ticks).toBeGreaterThan(0);
    expect(found.makespan).toBeGreaterThanOrEqual(found.bound.ticks);
  });
});

describe('the search', () => {
  test('the same seed gives the same schedule', () => {
    fc.assert(
      fc.property(fc.oneof(plainProblems(20), kartProblems), fc.nat(), (problem, seed) => {
        expect(solve(problem, { ...EFFORT, seed })).toEqual(solve(problem, { ...EFFORT, seed }));
      }),
      { numRuns: 30 },
    );
  });

  test('stopped at any step, it has a schedule that holds', () => {
    fc.assert(
      fc.property(fc.oneof(plainProblems(20), kartProblems), fc.nat({ max: 5 }), (problem, stop) => {
        const steps = solving(problem, { schedules: 2000, seed: 3 });
        let best = steps.next();
        for (let k = 0; k < stop && !best.done; k++) best = steps.next();
        expect(faults(problem, best.value)).toEqual([]);
        let asked = 0;
        expect(
          faults(
            problem,
            solve(problem, { schedules: 2000, seed: 3 }, () => asked++ < stop),
          ),
        ).toEqual([]);
      }),
      { numRuns: 40 },
    );
  });
});

function plain(
  capacity: readonly number[],
  rows: readonly (readonly [number, readonly number[], (readonly number[])?])[],
): ScheduleProblem {
  return { capacity, activities: rows.map(([ticks, needs, after = []], i) => ({ id: `${i}`, ticks, needs, after })) };
}
