import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { type ChoiceProblem, chooser, pairOf } from './index.ts';

/** Hazards that any of their joints brings about. */
const anyOf = (weight: number, joints: readonly number[]) => ({
  weight,
  joints,
  chance: (x: Float64Array) => 1 - joints.reduce((none, joint) => none * (1 - (x[joint] as number)), 1),
});
/** That only all of them bring about. */
const allOf = (weight: number, joints: readonly number[]) => ({
  weight,
  joints,
  chance: (x: Float64Array) => joints.reduce((all, joint) => all * (x[joint] as number), 1),
});

const chance = fc.double({ min: 0.0001, max: 0.2, noNaN: true });
const problems: fc.Arbitrary<ChoiceProblem> = fc
  .record({
    chances: fc.array(chance, { minLength: 1, maxLength: 7 }),
    picks: fc.array(
      fc.record({
        joint: fc.nat(6),
        share: fc.double({ min: 0, max: 1, noNaN: true }),
        money: fc.nat(6),
        minutes: fc.nat(9),
      }),
      { maxLength: 9 },
    ),
    singles: fc.array(fc.constantFrom(0, 1, 2), { minLength: 7, maxLength: 7 }),
    sets: fc.array(fc.tuple(fc.boolean(), fc.uniqueArray(fc.nat(6), { minLength: 1, maxLength: 5 }), fc.nat(1000)), {
      minLength: 1,
      maxLength: 4,
    }),
  })
  .map(({ chances, picks, singles, sets }) => ({
    chances,
    singleOf: singles.slice(0, chances.length),
    options: picks
      .filter(({ joint }) => joint < chances.length)
      .map(({ joint, share, money, minutes }) => ({
        joint,
        chance: pairOf(chances[joint] as number, 0.02, share).chance,
        money: money / 2,
        minutes,
      })),
    hazards: sets.map(([every, joints, weight]) =>
      (every ? allOf : anyOf)(
        weight,
        joints.filter(joint => joint < chances.length),
      ),
    ),
  }));
const budgets = fc.record({ money: fc.nat(20), minutes: fc.nat(40) });

/** Every choice there is, the best by the rule. */
function byTrying({ chances, singleOf, options, hazards }: ChoiceProblem, budget: { money: number; minutes: number }) {
  let best = { singles: [0, 0] as readonly [number, number], risk: Number.POSITIVE_INFINITY };
  for (let mask = 0; mask < 1 << options.length; mask++) {
    const chosen = options.filter((_, n) => mask & (1 << n));
    if (new Set(chosen.map(({ joint }) => joint)).size < chosen.length) continue;
    const spent = (of: 'money' | 'minutes') => chosen.reduce((sum, one) => sum + one[of], 0);
    if (spent('money') > budget.money || spent('minutes') > budget.minutes) continue;
    const x = Float64Array.from(chances);
    for (const { joint, chance: then } of chosen) x[joint] = then;
    const risk = hazards.reduce((sum, { weight, chance: of }) => sum + weight * of(x), 0);
    const of = (severity: number) => chosen.filter(({ joint }) => singleOf[joint] === severity).length;
    const singles = [of(1), of(2)] as const;
    const before = singles[0] - best.singles[0] || singles[1] - best.singles[1];
    if (before > 0 || (before === 0 && risk < best.risk)) best = { singles, risk };
  }
  return best;
}

describe('the choice of second retentions', () => {
  it('is the best of all there are: single points of severity 1 first, then 2, then risk', () => {
    fc.assert(
      fc.property(problems, budgets, (problem, budget) => {
        const found = chooser(problem).within(budget);
        const best = byTrying(problem, budget);
        expect(found.singles).toEqual(best.singles);
        expect(found.risk).toBeCloseTo(best.risk, 9);
        expect(found.money <= budget.money && found.minutes <= budget.minutes).toBe(true);
      }),
      { numRuns: 400 },
    );
  });

  it('never gets worse with more money or more minutes', () => {
    fc.assert(
      fc.property(problems, budgets, fc.nat(10), (problem, budget, more) => {
        const of = chooser(problem);
        const [less, longer] = [of.within(budget), of.within({ ...budget, minutes: budget.minutes + more })];
        const gained = longer.singles[0] - less.singles[0] || longer.singles[1] - less.singles[1];
        expect(gained > 0 || (gained === 0 && longer.risk <= less.risk + 1e-9)).toBe(true);
      }),
    );
  });

  it('with no budget is nothing, and says the risk as it is', () => {
    const problem = {
      chances: [0.1],
      singleOf: [1],
      options: [{ joint: 0, chance: 0.01, money: 1, minutes: 1 }],
      hazards: [anyOf(10, [0])],
    };
    expect(chooser(problem).within({ money: 0, minutes: 0 })).toMatchObject({ options: [], singles: [0, 0] });
    expect(chooser(problem).risk).toBeCloseTo(1, 12);
    expect(chooser(problem).within({ money: Number.POSITIVE_INFINITY, minutes: 1 })).toMatchObject({
      options: [0],
      singles: [1, 0],
    });
  });

  it.each([
    [{ chances: [1.5] }, /chances\[0\] must lie in 0…1, got 1.5/],
    [{ chances: [Number.NaN] }, /chances\[0\]/],
    [{ chances: [-0.1] }, /chances\[0\] must lie in 0…1, got -0.1/],
    [{ options: [{ joint: 0, chance: -0.1, money: 0, minutes: 0 }] }, /chance must lie in 0…0.1, got -0.1/],
    [
      { options: [{ joint: 3, chance: 0, money: 0, minutes: 0 }] },
      /options\[0\].joint must be one of the joints, got 3/,
    ],
    [{ options: [{ joint: 0, chance: 0.5, money: 0, minutes: 0 }] }, /options\[0\].chance must lie in 0…0.1/],
    [{ options: [{ joint: 0, chance: 0, money: -1, minutes: 0 }] }, /money must be 0 or more, got -1/],
    [{ options: [{ joint: 0, chance: 0, money: 1, minutes: Number.NaN }] }, /minutes must be 0 or more/],
  ])('refuses %o', (wrong, said) => {
    expect(() => chooser({ chances: [0.1], singleOf: [0], options: [], hazards: [], ...wrong })).toThrow(said);
  });

  it('is told in the order of the problem, and stays within money where minutes would do, and the other way round', () => {
    const problem: ChoiceProblem = {
      chances: [0.1, 0.2],
      singleOf: [0, 0],
      options: [
        { joint: 0, chance: 0.05, money: 3, minutes: 5 },
        { joint: 1, chance: 0.05, money: 4, minutes: 2 },
      ],
      hazards: [anyOf(1, [0]), anyOf(1, [1])],
    };
    const within = (money: number, minutes: number) => chooser(problem).within({ money, minutes });
    const both = within(7, 7);
    expect(both).toMatchObject({ options: [0, 1], money: 7, minutes: 7, singles: [0, 0] });
    expect(both.risk).toBeCloseTo(0.05 + 0.05, 12);
    expect(within(6.9, 100)).toMatchObject({ options: [1], money: 4, minutes: 2 }); // it takes away more
    expect(within(100, 6.9)).toMatchObject({ options: [1], money: 4, minutes: 2 });
    expect(within(3, 100)).toMatchObject({ options: [0], money: 3, minutes: 5 });
    expect(within(2.9, 100)).toMatchObject({ options: [], money: 0, minutes: 0 });
    expect(within(100, 1.9).options).toEqual([]);
  });

  it('of two alike is the one that stands first', () => {
    const option = { chance: 0.05, money: 1, minutes: 1 };
    const twins: ChoiceProblem = {
      chances: [0.1, 0.1],
      singleOf: [0, 0],
      options: [0, 1].map(joint => ({ joint, ...option })),
      hazards: [anyOf(1, [0]), anyOf(1, [1])],
    };
    expect(chooser(twins).within({ money: 1, minutes: 9 }).options).toEqual([0]);
  });

  it('takes chances of none and of certainty, and a second that changes nothing', () => {
    const options = [{ joint: 1, chance: 1, money: 0, minutes: 0 }];
    const found = chooser({ chances: [0, 1], singleOf: [0, 0], options, hazards: [anyOf(1, [0, 1])] });
    expect(found.within({ money: 1, minutes: 1 }).options).toEqual([]);
  });
});
