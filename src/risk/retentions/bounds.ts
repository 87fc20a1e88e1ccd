/** The most that what is still open can bring, for any budget left: a table over money and minutes. */
import type { Budget, ChoiceProblem, Option } from './choose.ts';

export type Bounds = {
  /** Options of one joint each, the joints that bring most for their minutes first. */
  readonly groups: readonly (readonly number[])[];
  readonly singles: readonly number[];
  /** What taking a single point away counts, by option, in units of risk. */
  readonly value: readonly number[];
  /** From group n on, with so much left. */
  readonly rest: (n: number, left: Budget) => number;
};

/** Cells each way: budgets are cut into no more, costs rounded down to them, so the bound stays one. */
const CELLS = 240;

export function boundsOf(problem: ChoiceProblem): Bounds {
  const { options, singleOf } = problem;
  const most = mostOf(problem);
  // One single point of severity 2 outweighs all risk there is, one of severity 1 all of severity 2.
  const second = 2 * most.reduce((total, gain) => total + gain, 1e-9);
  const first = second * (new Set(options.map(({ joint }) => joint)).size + 1);
  const value = options.map(({ joint }) => (singleOf[joint] === 1 ? first : singleOf[joint] === 2 ? second : 0));
  const gain = options.map((_, n) => (most[n] as number) + (value[n] as number));
  const groups = groupsOf(problem, gain);
  return { groups, singles: singleOf, value, rest: table(problem, groups, gain) };
}

/** Of each option, over all hazards. */
function mostOf({ chances, options, hazards }: ChoiceProblem): readonly number[] {
  const base = Float64Array.from(chances);
  const best = Float64Array.from(chances);
  for (const { joint, chance } of options) best[joint] = Math.min(best[joint] as number, chance);
  const slope = new Map<number, number>();
  for (const { joint } of options)
    if (!slope.has(joint))
      slope.set(
        joint,
        hazards.reduce((total, { joints, weight, chance }) => {
          if (!joints.includes(joint)) return total;
          return total + weight * (chance(withAt(base, joint, 1)) - chance(withAt(best, joint, 0)));
        }, 0),
      );
  return options.map(({ joint, chance }) => ((chances[joint] as number) - chance) * (slope.get(joint) as number));
}

function withAt(x: Float64Array, joint: number, chance: number): Float64Array {
  const other = x.slice();
  other[joint] = chance;
  return other;
}

function groupsOf({ options }: ChoiceProblem, gain: readonly number[]): readonly (readonly number[])[] {
  const of = new Map<number, number[]>();
  for (const [n, { joint }] of options.entries())
    if ((gain[n] as number) > 0) of.set(joint, [...(of.get(joint) ?? []), n]);
  const worth = (n: number): number => (gain[n] as number) / ((options[n] as Option).minutes + 1e-9);
  const most = (group: readonly number[]): number => Math.max(...group.map(worth));
  return [...of.values()]
    .map(group => group.toSorted((a, b) => (gain[b] as number) - (gain[a] as number)))
    .sort((a, b) => most(b) - most(a));
}

function table(
  { options }: ChoiceProblem,
  groups: readonly (readonly number[])[],
  gain: readonly number[],
): Bounds['rest'] {
  const total = (cost: 'money' | 'minutes'): number =>
    groups.reduce((sum, group) => sum + Math.max(...group.map(n => (options[n] as Option)[cost])), 0);
  const [allMoney, allMinutes] = [total('money'), total('minutes')];
  const step = { money: stepOf(allMoney), minutes: stepOf(allMinutes) };
  const [columns, rows] = [Math.ceil(allMoney / step.money) + 1, Math.ceil(allMinutes / step.minutes) + 1];
  const tables: Float64Array[] = [new Float64Array(columns * rows)];
  for (let n = groups.length - 1; n >= 0; n--) {
    const after = tables[0] as Float64Array;
    const here = after.slice();
    for (const place of groups[n] as readonly number[]) {
      const { money, minutes } = options[place] as Option;
      const [dx, dy] = [Math.floor(money / step.money + ROUND), Math.floor(minutes / step.minutes + ROUND)];
      const own = gain[place] as number;
      for (let y = dy; y < rows; y++)
        for (let x = dx; x < columns; x++) {
          const at = y * columns + x;
          const taken = own + (after[at - dy * columns - dx] as number);
          if (taken > (here[at] as number)) here[at] = taken;
        }
    }
    tables.unshift(here);
  }
  const cell = (left: number, size: number, count: number): number =>
    Math.min(count - 1, Math.floor(left / size + ROUND));
  return (n, { money, minutes }) =>
    tables[n]?.[cell(minutes, step.minutes, rows) * columns + cell(money, step.money, columns)] ?? 0;
}
const ROUND = 1e-9;

/** Halves and whole ones where they fit, else as fine as the cells allow. */
const stepOf = (all: number): number => Math.max(0.5, all / CELLS);
