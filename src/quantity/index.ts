/** Quantities: text with a unit at the edge, SI numbers inside. */
export { formatQuantity, inUnit } from './format.ts';
export { type InchFraction, inchFraction } from './inches.ts';
export {
  figureInOwnUnits,
  inOwnUnit,
  limitsInOwnUnit,
  OWN_KINDS,
  OWN_UNITS,
  type OwnKind,
  type OwnUnits,
  ownUnit,
  readOwnUnits,
  textInOwnUnits,
} from './own-units.ts';
export { type Measure, type Parsed, parseQuantity, parseRange, type Refusal } from './parse.ts';
export { type Dimension, findUnit, UNITS, type Unit, unitsOf } from './units.ts';
