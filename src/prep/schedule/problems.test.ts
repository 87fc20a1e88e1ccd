import { describe, expect, it, test } from 'vitest';
import { EFFORT } from '../../../test/schedules.ts';
import { problemsOf, type ScheduleProblem, solve } from './index.ts';

describe('what can not be planned', () => {
  const one = { id: 'a', ticks: 3, needs: [1], after: [] };
  const kart = { people: 1, posture: 0, unknown: [0], change: [[0]] };
  it.each<[string, ScheduleProblem, string]>([
    [
      'a circle',
      {
        capacity: [1],
        activities: [
          { ...one, after: [1] },
          { ...one, id: 'b', after: [0] },
        ],
      },
      'one among a, b',
    ],
    ['a negative time', { capacity: [1], activities: [{ ...one, ticks: -2 }] }, '-2'],
    ['half a tick', { capacity: [1], activities: [{ ...one, ticks: 0.5 }] }, '0.5'],
    ['no number', { capacity: [1], activities: [{ ...one, ticks: Number.NaN }] }, 'NaN'],
    ['more than there is', { capacity: [1], activities: [{ ...one, needs: [2] }] }, '2'],
    ['an unknown place', { capacity: [1], activities: [{ ...one, after: [9] }] }, '9'],
    ['zero people', { capacity: [1], activities: [one], kart: { ...kart, people: 0 } }, '0'],
    ['two people where there is one', { capacity: [1], activities: [{ ...one, crew: 2 }], kart }, '2'],
    ['a window that is over', { capacity: [1], activities: [one], kart: { ...kart, windows: [-5] } }, '[-5]'],
    ['an order with a gap', { capacity: [1], activities: [one], order: [] }, '0 of 1'],
    ['too many', { capacity: [1], activities: Array.from({ length: 20_001 }, () => one) }, '20001'],
    ['too long', { capacity: [1], activities: [{ ...one, ticks: 3e6 }] }, '3000000'],
  ])('%s is told and refused', (_, problem, got) => {
    const against = problemsOf(problem);
    expect(against.map(a => a.got)).toContain(got);
    expect(() => solve(problem, EFFORT)).toThrow(/must be/);
  });

  test('all problems are told at once', () => {
    const activities = [
      { ...one, ticks: -1, needs: [3] },
      { ...one, needs: [1, 1] },
    ];
    expect(problemsOf({ capacity: [1], activities }).map(p => p.path)).toEqual([
      'activities/0/ticks',
      'activities/0/needs/0',
      'activities/1/needs',
    ]);
  });
});
