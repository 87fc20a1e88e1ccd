/** Rear track: gaps for a width or a width from gaps, sides apart; hub engagement; the limit; how far to move which hub. */
import { engagement, gapFor, halfWidth } from './axle-stack.ts';
import type { Card } from './card.ts';
import { acceptance, chanceInside } from './conformance.ts';
import { chance, length, onTape, small, type Tape } from './figure.ts';
import { type Known, measuredWidth, setWidth, stackWidth } from './rear-track-budget.ts';
import { impossible } from './rear-track-geometry.ts';
import { type Input, schema } from './rear-track-input.ts';
import { type Both, SIDES, type Stack, stackOf } from './rear-track-stack.ts';
import { notes, say } from './rear-track-words.ts';
import { type Answer, type Figure, type Problems, problems, subject } from './subject.ts';

const card: Card = {
  what: 'Overall rear width is the sum of the lengths along the axle, left and right each from the middle of the kart.',
  equation: 'half = b + g + L + e;  W = left half + right half;  n = min(L, s - g);  p = Φ((T - W) / u)',
  symbols: {
    W: 'overall rear width, outside of tyre to outside of tyre at axle height [m]',
    b: 'middle of the kart to the outer face of the outer bearing; half of the distance over both faces [m]',
    g: 'bearing face to inner end of hub [m]',
    L: 'hub, inner end to wheel mounting face [m]',
    e: 'wheel mounting face outward to the outer edge of the tyre [m]',
    s: 'end of the axle beyond the bearing face [m]',
    n: 'length of axle inside the hub, at least 40 mm (common practice) [m]',
    T: 'largest width the rules allow [m]',
    u: 'standard uncertainty of W; limits ± a count as a / √3, independent [m]',
    p: 'chance that the true width is inside the limit [1]',
  },
  validity:
    'Axle and wheels straight, tyres at running pressure, width at axle height, mean of front and rear of the tyre. Width 1.0 to 1.5 m. The rule book and the scrutineer decide.',
  sources: ['axle-stack', 'hub-engagement', 'jcgm-100', 'jcgm-106', 'inch-1959'],
};

export const rearTrack = subject({
  name: 'rear-track',
  title: 'Rear track: gap from bearing to hub for an overall width, and back',
  card,
  schema,
  example: {
    'bearing faces': '655 mm',
    'hub length left': '75 mm',
    'hub length right': '75 mm',
    'tyre outboard left': '149.95 mm',
    'tyre outboard right': '149.95 mm',
    'axle length': '1040 mm',
    'overall rear width': '1397 mm',
    'gap left': '149.2 mm',
    'gap right': '146.05 mm',
    'width limit': '1400 mm',
  },
  solve,
});

/** Everything worked out, before it is put into words. */
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

function solve(input: Input): Answer | Problems {
  const read = stackOf(input);
  if ('problems' in read) return problems(...read.problems);
  const against = impossible(input, read.stack);
  if (against.length > 0) return problems(...against);
  const worked = work(input, read.stack);
  return { kind: 'answer', figures: figures(worked), say: say(worked), notes: notes(worked) };
}

function work(input: Input, stack: Stack): Worked {
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

function figures(w: Worked): Readonly<Record<string, Figure>> {
  const { tape, decided, limit } = w;
  const found: Record<string, Figure> = {};
  for (const side of SIDES) {
    if (w.target) found[`gap ${side}`] = length(w.target[side], tape, w.under.gaps);
    if (w.stack.gaps) found[`half width ${side}`] = length(halfWidth(w.stack.sides[side], w.stack.gaps[side]), tape);
    if (w.move) found[`move ${side}`] = length(w.move[side], tape, w.under.moves);
    if (w.engaged) found[`engagement ${side}`] = length(w.engaged[side], tape);
  }
  if (decided) {
    found.width = length(decided.value, tape);
    found['worst case'] = small(decided.worst);
    found['standard uncertainty'] = small(decided.u);
    found['expanded uncertainty'] = small(2 * decided.u); // k = 2
    if (limit !== undefined) {
      found['chance inside limit'] = chance(chanceInside(decided.value, decided.u, { max: limit }));
      found['largest reading that proves it'] = length(
        acceptance({ max: limit }, decided.u, w.confidence).max ?? Number.NaN,
        tape,
        true,
      );
    }
  }
  return found;
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
