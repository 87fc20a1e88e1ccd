/** How likely a joint lets go, and of two retentions each alone and both at once. */
import { pairOf } from '../retentions/index.ts';
import type { JointLook } from './joint-look.ts';
import type { Likely } from './model.ts';

export type Range = { readonly mean: number; readonly low: number; readonly high: number };

export const rangeOf = (likely: Likely | null): Range | undefined =>
  likely ? { mean: likely.chance, low: likely.low, high: likely.high } : undefined;

/** The three events of a pair; undefined where one margin is not known. */
export function aloneOf(look: JointLook): Record<'first' | 'second' | 'both', Range> | undefined {
  return pairRange(look, ['first', 'second', 'both']);
}

/** Undefined where it is not known. */
export const jointChance = (look: JointLook): Range | undefined =>
  look.second ? pairRange(look, ['chance'])?.chance : rangeOf(look.first.likely);

type Of = keyof ReturnType<typeof pairOf>;

function pairRange<W extends Of>({ first, second }: JointLook, which: readonly W[]): Record<W, Range> | undefined {
  if (!first.likely || !second?.likely) return undefined;
  const [p, q] = [rangeOf(first.likely) as Range, rangeOf(second.likely) as Range];
  const of = (end: keyof Range) => pairOf(p[end], q[end], second.share);
  const [mean, low, high] = [of('mean'), of('low'), of('high')];
  return Object.fromEntries(
    which.map(what => [what, { mean: mean[what], low: low[what], high: high[what] }]),
  ) as Record<W, Range>;
}
