import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { EFFORT, faults, kartProblems } from '../../../test/schedules.ts';
import { type ScheduleProblem, solve } from './index.ts';

describe('at the kart', () => {
  test('every plan keeps postures, people, windows and second looks', () => {
    fc.assert(
      fc.property(kartProblems, fc.nat(), (problem, seed) => {
        expect(faults(problem, solve(problem, { ...EFFORT, seed }))).toEqual([]);
      }),
    );
  });

  test('another pair of hands never makes it longer', () => {
    fc.assert(
      fc.property(kartProblems, problem => {
        const kart = problem.kart as NonNullable<typeof problem.kart>;
        const alone = problem.activities.map(a => ({ ...a, crew: 1 }));
        const spans = [1, 2, 3].map(people =>
          solve({ ...problem, activities: alone, kart: { ...kart, people } }, EFFORT),
        );
        const figures = spans.map(s => [s.kart?.tooSoon.length ?? 0, s.makespan] as const);
        for (const [k, [soon, span]] of figures.entries()) {
          const [before, longer] = figures[k - 1] ?? [soon, span];
          expect(soon < before || (soon === before && span <= longer)).toBe(true);
        }
      }),
      { numRuns: 50 },
    );
  });

  test('postures are gone through in the cheapest order: 20 of work and the way 2 + 4 + 4', () => {
    const problem: ScheduleProblem = {
      capacity: [],
      activities: [1, 2, 1, 0].map((p, i) => ({
        id: `j${i}`,
        ticks: 5,
        needs: [],
        after: i === 3 ? [0, 1, 2] : [],
        postures: [p],
      })),
      kart: {
        people: 1,
        posture: 0,
        unknown: [2, 2, 4],
        change: [
          [0, 2, 4],
          [2, 0, 4],
          [4, 4, 0],
        ],
      },
    };
    expect(solve(problem, EFFORT)).toMatchObject({ makespan: 30 });
  });

  test('of plans as long as each other, the nearest to the order that was wished', () => {
    const activities = [0, 1, 2, 3, 4].map(i => ({ id: `${i}`, ticks: 4, needs: [], after: [] }));
    const order = [3, 1, 4, 0, 2];
    const kart = { people: 1, posture: 0, unknown: [0], change: [[0]] };
    const { start } = solve({ capacity: [], activities, order, kart }, EFFORT);
    expect(order.map(i => start[i])).toEqual([0, 4, 8, 12, 16]);
  });

  test('alone, the second look waits for another row; with two it is the other who looks', () => {
    const problem = (people: number): ScheduleProblem => ({
      capacity: [],
      activities: [
        { id: 'make', ticks: 5, needs: [], after: [] },
        { id: 'look', ticks: 2, needs: [], after: [0], looksAt: 0 },
        { id: 'else', ticks: 3, needs: [], after: [] },
      ],
      order: [0, 1, 2],
      kart: { people, posture: 0, unknown: [0], change: [[0]] },
    });
    expect(solve(problem(1), EFFORT)).toMatchObject({ makespan: 10, start: [0, 8, 5], kart: { tooSoon: [] } });
    const two = solve(problem(2), EFFORT);
    expect(two.makespan).toBe(7);
    expect(two.kart?.people[1]).not.toEqual(two.kart?.people[0]);
  });

  test('with nothing else to do, a second look alone is told as too soon', () => {
    const activities = [
      { id: 'make', ticks: 5, needs: [], after: [] },
      { id: 'look', ticks: 2, needs: [], after: [0], looksAt: 0 },
    ];
    const kart = { people: 1, posture: 0, unknown: [0], change: [[0]] };
    expect(solve({ capacity: [], activities, kart }, EFFORT)).toMatchObject({ makespan: 7, kart: { tooSoon: [1] } });
  });

  test('a row does not go over the end of a window, and what is beyond the last is told', () => {
    const activities = [6, 6, 6].map((ticks, i) => ({ id: `${i}`, ticks, needs: [], after: [] }));
    const kart = { people: 1, posture: 0, unknown: [0], change: [[0]], windows: [10, 8] };
    expect(solve({ capacity: [], activities, kart }, EFFORT)).toMatchObject({ makespan: 22, kart: { beyond: 4 } });
  });
});
