/** Toe and squareness. */
export { alignment } from './alignment.ts';
export { type AxlePlace, axlePlace, type FourLengths, fourLengths, type Marks } from './square.ts';
export { halfTurn, stringBias, toeAngle, toeAtDiameter, toeFromString, toeOfOne, toeTotal } from './toe.ts';
