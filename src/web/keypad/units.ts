import { ownUnitOf } from '../choice/choice.ts';

/** The other unit that the same thing is read in, for a tape, a gauge or a wrench that has only that one. */
const OTHER: Readonly<Record<string, string>> = { mm: 'in', N·m: 'ft·lb', bar: 'psi', kg: 'lb' };

/** The unit the person chose first, then the one that is asked for and, where there is one, the other. */
export const unitsFor = (unit: string): readonly string[] => [
  ...new Set([ownUnitOf(unit), unit, ...(OTHER[unit] === undefined ? [] : [OTHER[unit]])]),
];
