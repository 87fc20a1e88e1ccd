/** The rear track worked out in numbers, before it is put into figures and words. */
import { engagement, gapFor, halfWidth } from './axle-stack.ts';
import { onTape, type Tape } from './figure.ts';
import { type Known, measuredWidth, setWidth, stackWidth } from './rear-track-budget.ts';
import type { Input } from './rear-track-input.ts';
import type { Both, Stack } from './rear-track-stack.ts';

export type Worked = {
  readonly input: Input;
  readonly stack: Stack;
  readonly tape: Tape;
  readonly target?: Both<number>; // gaps for the wanted width [m]
  readonly move?: Both<number>; // outward is above 0 [m]
  readonly engaged?: Both<number>; // at the target gaps, else at those measured [m]
  readonly measured?: Known;
  readonly summed?: Known;
  readonly decided?: Known; // the width the limit is held against: measured, else summed, else as it would be set
  readonly limit?: number;
  readonly confidence: number;
  readonly under: { readonly gaps: boolean; readonly moves: boolean }; // the mark above would pass the limit
};

export function work(input: Input, stack: Stack): Worked {
  const { sides, gaps, beyond, parts } = stack;
  const wanted = input['overall rear width']?.si;
  const limit = input['width limit']?.si;
  const tape = tapeOf(input);
  const target = wanted === undefined ? undefined : each(side => gapFor(sides[side], wanted / 2));
  const measured = measuredWidth(input);
  const summed = gaps && stackWidth(parts, gaps.parts);
  const now = measured ?? summed;
  // Half of what is missing from each side, and the kart back in the middle of its wheels where the gaps say it is not.
  const off = gaps ? (halfWidth(sides.left, gaps.left) - halfWidth(sides.right, gaps.right)) / 2 : 0;
  const out = wanted === undefined || now === undefined ? undefined : (wanted - now.value) / 2;
  const move = out === undefined ? undefined : { left: out - off, right: out + off };
  const at = target ?? gaps;
  const decided = now ?? (target && setWidth(parts, target));
  const over = (from: number, by: Both<number> | undefined): boolean =>
    limit !== undefined &&
    by !== undefined &&
    wanted !== undefined &&
    wanted <= limit &&
    from + onTape(by.left, tape) + onTape(by.right, tape) > limit + 1e-9;
  return {
    input,
    stack,
    tape,
    confidence: input.confidence?.si ?? 0.95,
    under: {
      gaps: over((wanted ?? 0) - (target?.left ?? 0) - (target?.right ?? 0), target),
      moves: over(now?.value ?? 0, move),
    },
    ...(target && { target }),
    ...(move && { move }),
    ...(at && beyond && { engaged: each(side => engagement(sides[side], at[side], beyond[side])) }),
    ...(measured && { measured }),
    ...(summed && { summed }),
    ...(decided && { decided }),
    ...(limit !== undefined && { limit }),
  };
}

const each = <T>(of: (side: 'left' | 'right') => T): Both<T> => ({ left: of('left'), right: of('right') });

/** Inches first for a person who wrote the width, or the gap, or else the bearing faces in inches. */
function tapeOf(input: Input): Tape {
  const first =
    input['overall rear width'] ?? input['measured width'] ?? input.gap ?? input['gap left'] ?? input['bearing faces'];
  return {
    inches: first.unit === 'in' || first.unit === 'ft',
    divisions: Number((input['tape marks'] ?? '1/16 in').split(/[/ ]/)[1]),
  };
}
