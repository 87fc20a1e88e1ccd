export { type Aim, type Ballast, type BallastWish, leastBallast, splitBallast } from './ballast.ts';
export { type Fixing, type FixingRule, fixing, fixingRule, STRICTEST } from './ballast-fixing.ts';
export { cgHeight, cgHeightEqualWheels, cgHeightUncertainty, type Raised } from './cg-height.ts';
export {
  type Corners,
  centre,
  type Place,
  response,
  type Shares,
  type Stance,
  shares,
  totalOf,
} from './corner-weights.ts';
export { leastReading, massAtTheEnd, type Weighed } from './least-mass.ts';
export { type Column, minimise, type Optimum } from './linear-program.ts';
export { scales } from './scales.ts';
