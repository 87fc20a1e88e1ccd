/** What goes in and comes out of `calc schedule`. */
import { describe, expect, it } from 'vitest';
import { bareSchedule } from './bare-schedule.ts';

const { ask, example } = bareSchedule;
const one = { cap: [1], dur: [3, 4], need: [[1], [1]], succ: [[1], []] };

describe('a schedule asked bare', () => {
  it('comes out with starts, bound and the schedules it took', () => {
    // By hand: 6 with both, 12 and 10 side by side; 6 + 12.
    expect(ask(example)).toMatchObject({ makespan: 18, bound: 18, schedules: expect.any(Number) });
  });

  it('is one of several when asked as an array, each with its name', () => {
    expect(
      ask([
        { id: 'a', ...one },
        { ...one, succ: [[], []], seed: 4, schedules: 9 },
      ]),
    ).toMatchObject([{ id: 'a', makespan: 7, start: [0, 3], bound: 7 }, { makespan: 7 }]);
  });

  it.each([
    ['a circle', { ...one, succ: [[1], [0]] }, 'activities', 'one among 0, 1'],
    ['a negative time', { ...one, dur: [-3, 4] }, 'dur/0', '-3'],
    ['more than there is', { ...one, need: [[2], [1]] }, 'activities/0/needs/0', '2'],
    ['nobody there', { ...one, cap: [0] }, 'activities/0/needs/0', '1'],
    ['a list too short', { ...one, need: [[1]] }, 'need', '1'],
    ['an unknown follower', { ...one, succ: [[7], []] }, 'succ/0', '7'],
    ['no schedules', { ...one, schedules: 0 }, 'schedules', '0'],
    ['an unknown key', { ...one, cup: [1] }, 'cup', '"cup"'],
  ])('refuses %s', (_, question, path, got) => {
    expect(ask(question)).toMatchObject({
      kind: 'problems',
      problems: expect.arrayContaining([expect.objectContaining({ path, got })]),
    });
  });
});
