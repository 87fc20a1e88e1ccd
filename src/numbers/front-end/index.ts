/** The front end: geometry, sweep, twist. */
export { ackermannShare, idealInner } from './ackermann.ts';
export { askedSweep } from './asked-sweep.ts';
export { frontEnd } from './front-end.ts';
export { type Column, innerEnd, type Rod, rodTurn, straightRod, turnPerLength } from './linkage.ts';
export { type FrontEnd, frontEndSweep, type Sweep, steerAtLift, steeringAngles, toeAgainstRod } from './sweep.ts';
export { diagonalTransfer, frameFromSeries, type Springs, seriesStiffness, stiffnessFromShim } from './warp.ts';
export {
  edgeDrop,
  type FrontWheel,
  jacking,
  kingpin as kingpinAxis,
  type Steered,
  scrub,
  steered,
  trail,
} from './wheel.ts';
