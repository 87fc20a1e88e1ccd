/** What to do, and what to doubt, about the rear track. */
import { formatQuantity } from '../quantity/index.ts';
import { halfWidth, LEAST_ENGAGEMENT, USUAL } from './axle-stack.ts';
import { acceptance, chanceInside } from './conformance.ts';
import { chance, lengthText } from './figure.ts';
import { SIDES } from './rear-track-stack.ts';
import type { Worked } from './rear-track-work.ts';

const CAUTION =
  "Caution: kart on a stand that cannot roll. A hub that is loose or short on the axle loses its wheel: key in, pinch bolts to the hub maker's torque, second retention, second look. Then measure the width again at axle height.";

const NOISE = 1e-9; // m, of sums of decimal lengths

export const say = (w: Worked): readonly string[] => [...settings(w), ...moves(w), ...limits(w), CAUTION];

function settings({ target, tape, under }: Worked): readonly string[] {
  if (target === undefined) return [];
  const [left, right] = SIDES.map(side => lengthText(target[side], tape, under.gaps));
  if (left === right) return [`Set both hubs ${left} from bearing face to inner end of hub.`];
  return [`Set from bearing face to inner end of hub: left ${left}, right ${right}.`];
}

function moves({ move, tape, under }: Worked): readonly string[] {
  if (move === undefined) return [];
  return SIDES.map(side => {
    const size = lengthText(Math.abs(move[side]), tape);
    // Rounding inward: a move out to the mark below, a move in to the mark above.
    const text = under.moves ? lengthText(move[side], tape, true).replaceAll('-', '') : size;
    if (Math.abs(move[side]) < 0.5 * (0.0254 / tape.divisions) && !under.moves)
      return `Leave the ${side} hub where it is.`;
    return `Move the ${side} hub ${move[side] < 0 ? 'in' : 'out'} ${text}.`;
  });
}

function limits({ decided, limit, confidence, tape, measured, summed }: Worked): readonly string[] {
  if (decided === undefined || limit === undefined) return [];
  const of = measured ? 'The measured width' : summed ? 'The width from the gaps' : 'The width as set';
  const most = acceptance({ max: limit }, decided.u, confidence, decided.freedom).max ?? Number.NaN;
  const inside = chance(chanceInside(decided.value, decided.u, { max: limit }, decided.freedom)).text;
  const allowed = `the limit of ${formatQuantity(limit, 'mm')}`;
  const over = decided.value - limit;
  const state =
    over > NOISE
      ? `over ${allowed} by ${formatQuantity(over, 'mm')}`
      : decided.value <= most
        ? `inside ${allowed}`
        : `inside ${allowed}, but too near it to be sure`;
  return [
    `${of}, ${lengthText(decided.value, tape)}, is ${state}: the chance of being inside is ${inside}. ` +
      `Up to ${lengthText(most, tape, true)} would show it at ${formatQuantity(confidence, '%')}.`,
  ];
}

export const notes = (w: Worked): readonly string[] => [
  ...engaged(w),
  ...wantedOver(w),
  ...doubts(w),
  ...unusual(w),
  ...assumed(w),
];

function engaged({ engaged, tape, stack }: Worked): readonly string[] {
  if (engaged === undefined)
    return [
      `Hub engagement on the axle is not known: add ${stack.beyond ? '"gap", or "overall rear width"' : '"axle length"'}.`,
    ];
  return SIDES.flatMap(side => {
    if (!(engaged[side] >= LEAST_ENGAGEMENT) && stack.sides[side].hub >= LEAST_ENGAGEMENT)
      return [
        `Reject: the ${side} hub has ${lengthText(engaged[side], tape)} of axle inside it; at least 40 mm unless its maker says otherwise (common practice). Use a longer hub or a longer axle.`,
      ];
    if (!(engaged[side] >= LEAST_ENGAGEMENT))
      return [
        `Reject: the ${side} hub is shorter than the 40 mm of axle that should be inside it (common practice). Ask its maker.`,
      ];
    return [];
  });
}

function wantedOver({ input, limit }: Worked): readonly string[] {
  const wanted = input['overall rear width'];
  if (wanted === undefined || limit === undefined || wanted.si <= limit) return [];
  return [
    `The wanted width is over the limit by ${formatQuantity(wanted.si - limit, 'mm')}: choose ${formatQuantity(limit, 'mm')} or less.`,
  ];
}

function doubts({ measured, summed }: Worked): readonly string[] {
  if (measured === undefined || summed === undefined) return [];
  const apart = Math.abs(measured.value - summed.value);
  if (apart <= 2 * Math.hypot(measured.u, summed.u)) return [];
  return [
    `The measured width and the sum of the lengths are ${formatQuantity(apart, 'mm')} apart, more than their uncertainty: measure the bearing faces, hubs and tyres again. The moves follow the measured width.`,
  ];
}

function unusual({ input, stack }: Worked): readonly string[] {
  const of = (name: string, value: number | undefined, [low, high]: readonly [number, number]): readonly string[] =>
    value === undefined || (value >= low && value <= high)
      ? []
      : [
          `Outside the range this was checked for: ${name} ${formatQuantity(value, 'mm')}, usually ${formatQuantity(low, 'mm')} to ${formatQuantity(high, 'mm')}.`,
        ];
  return [
    ...of('overall rear width', input['overall rear width']?.si, USUAL.width),
    ...of('measured width', input['measured width']?.si, USUAL.width),
    ...of('axle length', input['axle length']?.si, USUAL.axle),
    ...SIDES.flatMap(side => [
      ...of(`bearing face ${side} from the middle`, stack.sides[side].bearing, USUAL.bearing),
      ...of(`hub length ${side}`, stack.sides[side].hub, USUAL.hub),
      ...of(`tyre outboard ${side}`, stack.sides[side].outboard, USUAL.outboard),
    ]),
    ...apart(stack),
  ];
}

/** m; hubs stand this far from even only where a figure was misread (common practice). */
const UNEVEN = 0.02;

function apart({ sides, gaps }: Worked['stack']): readonly string[] {
  if (gaps === undefined) return [];
  const uneven = Math.abs(halfWidth(sides.left, gaps.left) - halfWidth(sides.right, gaps.right));
  if (uneven <= UNEVEN) return [];
  return [
    `Outside the range this was checked for: left and right are ${formatQuantity(uneven, 'mm')} apart. Read both gaps again, from the bearing face to the inner end of the hub.`,
  ];
}

function assumed({ input, stack, measured, engaged }: Worked): readonly string[] {
  const plain = [...stack.parts, ...(stack.gaps?.parts ?? [])].some(part => part.of.half === undefined);
  const scale =
    measured && input['measured width']?.half === undefined && !(input['tape scale'] && input['tape reading']);
  return [
    ...(plain && !measured
      ? ['Lengths without limits were taken as ± 0.5 mm (common practice): write "146 mm ± 1 mm" to say otherwise.']
      : []),
    ...(scale ? ['Tape taken as ± 0.5 mm, and each end read to ± 0.5 mm (common practice), where not given.'] : []),
    ...(engaged && !input['axle beyond bearing left']
      ? ['The axle was taken to stand in the middle: measure both ends beyond the bearings.']
      : []),
  ];
}
