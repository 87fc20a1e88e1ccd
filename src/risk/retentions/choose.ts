/**
 * Which additions under a budget of money and minutes: exact. First as many joints as can be that alone bring about a
 * hazard of severity 1, then of severity 2, then the most risk; of equals the one found first, those before that bring most for their minutes.
 *
 * A joint is a chance x; a hazard is any function of the chances of joints that is linear in each of them and never falls
 * with one, as every coherent fault tree is. What an addition can take from a hazard, whatever else is added, is at most
 *   (p - P) (Q(1) - Q(0))
 * p, P: chance of the joint without and with it; Q(1): the hazard with the joint failed and nothing else added; Q(0): with
 * the joint perfect and the best added everywhere. A table over both budgets adds these up exactly, and bounds the search;
 * what is chosen is reckoned exactly, with everything that hangs together.
 */
import { type Bounds, boundsOf } from './bounds.ts';

export type Option = {
  readonly joint: number; // index into `chances`
  readonly chance: number; // of the joint with it, not above that without
  readonly money: number;
  readonly minutes: number;
};
export type HazardOf = {
  readonly weight: number;
  readonly joints: readonly number[]; // that it hangs on
  readonly chance: (x: Float64Array) => number;
};
export type ChoiceProblem = {
  /** Of each joint, nothing added. */
  readonly chances: readonly number[];
  /** The worst severity of which the joint is a single point: 1, 2, or anything else for none that counts. */
  readonly singleOf: readonly number[];
  /** At most one of each joint is chosen. */
  readonly options: readonly Option[];
  readonly hazards: readonly HazardOf[];
};
export type Budget = { readonly money: number; readonly minutes: number }; // either may be Infinity
export type Choice = {
  readonly options: readonly number[]; // indices, in the order of the problem
  readonly money: number;
  readonly minutes: number;
  readonly risk: number; // Σ weight × chance, with them
  readonly singles: readonly [ofSeverity1: number, ofSeverity2: number]; // taken away
};
/** Asked for one budget after the other; the table is made once, for the largest. */
export type Chooser = { readonly risk: number; readonly within: (budget: Budget) => Choice };

/** @throws for a chance outside 0…1, a cost below 0, or an addition that makes a joint worse. */
export function chooser(problem: ChoiceProblem): Chooser {
  mustBeSound(problem);
  const bounds = boundsOf(problem);
  const base = Float64Array.from(problem.chances);
  const risks = problem.hazards.map(({ weight, chance }) => weight * chance(base));
  const risk = sum(risks);
  return { risk, within: budget => search(problem, bounds, risks, budget) };
}

function search(problem: ChoiceProblem, bounds: Bounds, risks: readonly number[], budget: Budget): Choice {
  const { groups, singles, value, rest } = bounds;
  const all = sum(risks);
  const x = Float64Array.from(problem.chances);
  const chosen: number[] = [];
  let best: Choice = { options: [], money: 0, minutes: 0, risk: all, singles: [0, 0] };
  let bestValue = 0;

  const visit = (n: number, spent: Budget, now: readonly number[], taken: number): void => {
    const gained = taken + all - sum(now);
    const { money, minutes } = spent;
    if (gained > bestValue + SAME) {
      bestValue = gained;
      const options = chosen.toSorted((a, b) => a - b);
      best = { options, money, minutes, risk: sum(now), singles: counted(problem, singles, options) };
    }
    const group = groups[n];
    if (!group) return;
    if (gained + rest(n, { money: budget.money - money, minutes: budget.minutes - minutes }) <= bestValue + SAME)
      return;
    for (const place of group) {
      const option = problem.options[place] as Option;
      const then = { money: money + option.money, minutes: minutes + option.minutes };
      if (!(then.money <= budget.money + SAME && then.minutes <= budget.minutes + SAME)) continue;
      const before = x[option.joint] as number;
      x[option.joint] = option.chance;
      chosen.push(place);
      visit(n + 1, then, changed(problem, now, option.joint, x), taken + (value[place] as number));
      chosen.pop();
      x[option.joint] = before;
    }
    visit(n + 1, spent, now, taken);
  };
  visit(0, { money: 0, minutes: 0 }, risks, 0);
  return best;
}
/** Last bits of doubles decide nothing. */
const SAME = 1e-12;

const changed = (problem: ChoiceProblem, now: readonly number[], joint: number, x: Float64Array): readonly number[] =>
  problem.hazards.map(({ weight, joints, chance }, h) =>
    joints.includes(joint) ? weight * chance(x) : (now[h] as number),
  );

const counted = (
  { options }: ChoiceProblem,
  singles: readonly number[],
  chosen: readonly number[],
): readonly [number, number] => {
  const of = chosen.map(place => singles[(options[place] as Option).joint]);
  return [of.filter(severity => severity === 1).length, of.filter(severity => severity === 2).length];
};

const sum = (all: readonly number[]): number => all.reduce((total, one) => total + one, 0);

function mustBeSound({ chances, options }: ChoiceProblem): void {
  for (const [n, p] of chances.entries())
    if (!(p >= 0 && p <= 1)) throw new Error(`chooser: chances[${n}] must lie in 0…1, got ${p}`);
  for (const [n, { joint, chance, money, minutes }] of options.entries()) {
    const before = chances[joint];
    if (before === undefined) throw new Error(`chooser: options[${n}].joint must be one of the joints, got ${joint}`);
    if (!(chance >= 0 && chance <= before * (1 + SAME)))
      throw new Error(`chooser: options[${n}].chance must lie in 0…${before}, got ${chance}`);
    for (const [name, cost] of Object.entries({ money, minutes }))
      if (!(cost >= 0 && Number.isFinite(cost)))
        throw new Error(`chooser: options[${n}].${name} must be 0 or more, got ${cost}`);
  }
}
