/** The front end of a question, put together from its words. */
import { type Asked, sides, siOf } from '../asked.ts';
import { plus, type Vector } from '../vector.ts';
import { bodyOf, springsOf } from '../wheel-loads/input.ts';
import { LINKAGE, SPRINGS, WEIGHT } from './input.ts';
import { type Column, type Rod, straightRod } from './linkage.ts';
import type { FrontEnd } from './sweep.ts';
import { type FrontWheel, kingpin, type SideName } from './wheel.ts';

export const SIDES = ['left', 'right'] as const;

export const hasLinkage = (input: Asked): boolean =>
  LINKAGE.some(
    key => input[key] !== undefined || input[`${key} left`] !== undefined || input[`${key} right`] !== undefined,
  );
/** All that the loads of the rear wheels take. */
export const hasWeight = (input: Asked): boolean =>
  [...WEIGHT, ...SPRINGS, 'wheelbase', 'front contact track'].every(key => input[key] !== undefined);

export function frontEndOf(input: Asked): FrontEnd {
  const left = wheelOf(input, 'left');
  const right = wheelOf(input, 'right');
  return {
    left,
    right,
    ...(input.wheelbase ? { wheelbase: siOf(input, 'wheelbase') } : {}),
    ...(input['kingpin spacing'] ? { spacing: siOf(input, 'kingpin spacing') } : {}),
    ...(hasLinkage(input) ? { linkage: linkageOf(input, { left, right }) } : {}),
    ...(hasWeight(input) ? { weight: { body: bodyOf(input), springs: springsOf(input) } } : {}),
  };
}

const wheelOf = (input: Asked, side: SideName): FrontWheel => ({
  caster: sides(input, 'caster')[side],
  inclination: sides(input, 'kingpin inclination')[side],
  stub: sides(input, 'stub length')[side],
  forward: sides(input, 'hub forward', 0)[side],
  radius: sides(input, 'tyre diameter')[side] / 2,
  camber: sides(input, 'camber', 0)[side],
});

function linkageOf(input: Asked, wheels: Record<SideName, FrontWheel>): NonNullable<FrontEnd['linkage']> {
  const rake = siOf(input, 'column rake', 0);
  const half = siOf(input, 'column arm spread') / 2;
  const arm = siOf(input, 'column arm');
  // Arm of a raked column lies square to its axis: its rearward part points down where the top leans back.
  const [back, aside] = [arm * Math.cos(half), arm * Math.sin(half)];
  const end = (out: 1 | -1): Vector => [-back * Math.cos(rake), out * aside, -back * Math.sin(rake)];
  const drop = siOf(input, 'column arm drop', 0);
  const column: Column = {
    centre: [siOf(input, 'column axis ahead'), 0, back * Math.sin(rake) - drop],
    axis: [-Math.sin(rake), 0, Math.cos(rake)],
    left: end(1),
    right: end(-1),
  };
  const rod = (side: SideName): Rod => {
    const out = side === 'left' ? 1 : -1;
    const outer: Vector = [
      -sides(input, 'arm back')[side],
      -out * sides(input, 'arm in')[side],
      -sides(input, 'arm drop', 0)[side],
    ];
    const pivot: Vector = [0, (out * siOf(input, 'kingpin spacing')) / 2, 0];
    const bare = { pivot, axis: kingpin(side, wheels[side]), arm: outer };
    const straight = straightRod(bare, plus(column.centre, column[side]));
    return { ...bare, length: sides(input, 'tie rod', straight)[side] };
  };
  return { column, left: rod('left'), right: rod('right') };
}
