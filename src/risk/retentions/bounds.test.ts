import { describe, expect, it } from 'vitest';
import { boundsOf } from './bounds.ts';
import type { ChoiceProblem } from './choose.ts';

/** A hazard for each joint, weighed ten: what an option brings is ten times what it takes away. */
const problem = (singleOf: readonly number[] = [0, 0, 0, 0]): ChoiceProblem => ({
  chances: [0.1, 0.25, 0.4, 0.3],
  singleOf,
  options: [
    { joint: 0, chance: 0.05, money: 1, minutes: 1 }, // brings 0.5
    { joint: 1, chance: 0.1, money: 2, minutes: 4 }, // 1.5
    { joint: 1, chance: 0, money: 8, minutes: 4 }, // 2.5
    { joint: 2, chance: 0.1, money: 2, minutes: 2 }, // 3
    { joint: 3, chance: 0.3, money: 1, minutes: 1 }, // nothing
  ],
  hazards: [0, 1, 2].map(joint => ({ weight: 10, joints: [joint], chance: x => x[joint] as number })),
});

describe('the most that what is still open can bring', () => {
  it('takes the joints first that bring most for their minutes, of each the option that brings most, and none that brings nothing', () => {
    const { groups, value, singles } = boundsOf(problem());
    expect(groups).toEqual([[3], [2, 1], [0]]);
    expect([value, singles]).toEqual([
      [0, 0, 0, 0, 0],
      [0, 0, 0, 0],
    ]);
  });

  it.each([
    [0, 100, 100, 6],
    [1, 100, 100, 3],
    [2, 100, 100, 0.5],
    [3, 100, 100, 0],
    [0, 100, 2, 3],
    [0, 100, 3, 3.5],
    [0, 2, 100, 3],
    [0, 4, 100, 4.5],
    [0, 5, 100, 5],
    [0, 0, 100, 0],
    [0, 100, 0, 0],
    [1, 2, 4, 1.5],
    [1, 8, 4, 2.5],
  ])('from group %d on with money %d and %d minutes is exact where costs are whole', (n, money, minutes, brings) => {
    expect(boundsOf(problem()).rest(n, { money, minutes })).toBeCloseTo(brings, 12);
  });

  it('counts what a joint brings while the others are as bad or as good as they can be, whichever is more', () => {
    const both: ChoiceProblem = {
      ...problem(),
      hazards: [{ weight: 10, joints: [0, 2], chance: x => (x[0] as number) * (x[2] as number) }],
    };
    const most = boundsOf(both);
    expect(most.groups.flat().toSorted()).toEqual([0, 3]);
    // what is brought alone, and what both bring together: no more than the bound says
    expect(most.rest(0, { money: 100, minutes: 100 })).toBeGreaterThanOrEqual(10 * (0.1 * 0.4 - 0.05 * 0.1));
  });

  it('holds one single point of severity 1 above all of severity 2, and one of those above all risk', () => {
    const { value: of } = boundsOf(problem([1, 2, 2, 0]));
    const [one, two] = [of[0] ?? 0, of[3] ?? 0];
    expect(of).toEqual([one, two, two, two, 0]);
    expect(two).toBeGreaterThan(0.5 + 1.5 + 2.5 + 3);
    expect(one).toBeGreaterThan(2 * two + 7.5);
  });
});
