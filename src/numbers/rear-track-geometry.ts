/** What no axle can be: hubs inside bearings or beside the axle, each with what would be right. */
import { formatQuantity } from '../quantity/index.ts';
import { engagement, gapFor, narrowest } from './axle-stack.ts';
import type { Input } from './rear-track-input.ts';
import { SIDES, type Stack } from './rear-track-stack.ts';
import type { InputProblem } from './subject.ts';

export function impossible(input: Input, { sides, gaps, beyond }: Stack): readonly InputProblem[] {
  const found: InputProblem[] = [];
  const wanted = input['overall rear width'];
  const least = narrowest(sides.left, sides.right);
  const atLeast = `${formatQuantity(Math.ceil(least * 1e5 - 1e-6) / 1e5, 'mm')} or more`;
  for (const path of ['overall rear width', 'measured width'] as const) {
    const width = input[path];
    if (width !== undefined && width.si < least - 1e-9)
      found.push({
        path,
        expected: `${atLeast} with these bearings, hubs and tyres`,
        got: width.text,
        remedy:
          'a hub would stand in its bearing: use shorter hubs, or correct the width, "bearing faces", "hub length" or "tyre outboard"',
      });
  }
  if (found.length > 0 || beyond === undefined) return found;
  for (const side of SIDES) {
    const asked = wanted && gapFor(sides[side], wanted.si / 2);
    for (const [path, gap] of [
      ['overall rear width', asked],
      [input.gap ? 'gap' : `gap ${side}`, gaps?.[side]],
    ] as const) {
      if (gap === undefined || engagement(sides[side], gap, beyond[side]) > 0) continue;
      found.push({
        path,
        expected: `a gap below ${formatQuantity(beyond[side], 'mm')} on the ${side}: there the axle ends`,
        got: formatQuantity(gap, 'mm'),
        remedy: 'the hub would not be on the axle: use longer hubs or a longer axle, or correct the lengths',
      });
    }
  }
  return found;
}
