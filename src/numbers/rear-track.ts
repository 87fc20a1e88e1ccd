/** Rear track: gaps for a width or a width from gaps, sides apart; hub engagement; the limit; how far to move which hub. */
import { halfWidth } from './axle-stack.ts';
import type { Card } from './card.ts';
import { acceptance, chanceInside } from './conformance.ts';
import { chance, length, small } from './figure.ts';
import { impossible } from './rear-track-geometry.ts';
import { type Input, schema } from './rear-track-input.ts';
import { SIDES, stackOf } from './rear-track-stack.ts';
import { notes, say } from './rear-track-words.ts';
import { type Worked, work } from './rear-track-work.ts';
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
  behind: ['half width *', 'worst case', 'standard uncertainty', 'expanded uncertainty'],
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

function solve(input: Input): Answer | Problems {
  const read = stackOf(input);
  if ('problems' in read) return problems(...read.problems);
  const against = impossible(input, read.stack);
  if (against.length > 0) return problems(...against);
  const worked = work(input, read.stack);
  return { kind: 'answer', figures: figures(worked), say: say(worked), notes: notes(worked) };
}

function figures(w: Worked): Readonly<Record<string, Figure>> {
  const { tape, decided, limit } = w;
  const found: Record<string, Figure> = {};
  for (const side of SIDES) {
    if (w.target) found[`gap ${side}`] = length(w.target[side], tape, w.under.gaps);
    if (w.stack.gaps) found[`half width ${side}`] = length(halfWidth(w.stack.sides[side], w.stack.gaps[side]), tape);
    if (w.move) found[`${side} hub outward`] = length(w.move[side], tape, w.under.moves);
    if (w.engaged) found[`engagement ${side}`] = length(w.engaged[side], tape);
  }
  if (decided) {
    found.width = length(decided.value, tape);
    found['worst case'] = small(decided.worst);
    found['standard uncertainty'] = small(decided.u);
    found['expanded uncertainty'] = small(2 * decided.u); // k = 2
    if (limit !== undefined) {
      found['chance inside limit'] = chance(chanceInside(decided.value, decided.u, { max: limit }, decided.freedom));
      found['largest reading that proves it'] = length(
        acceptance({ max: limit }, decided.u, w.confidence, decided.freedom).max ?? Number.NaN,
        tape,
        true,
      );
    }
  }
  return found;
}
