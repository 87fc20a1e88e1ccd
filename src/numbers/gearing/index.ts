/** Gearing: speeds, shift points, sprockets of the box, push and drag. */
export { gearing, pushOf } from './gearing.ts';
export { oneTooth, type Pair, pairsFor, type Wanted, wantedRatio } from './pairs.ts';
export {
  circumferenceFrom,
  DIRECT,
  type Gearbox,
  overallRatios,
  rotationAfter,
  rotationAt,
  type Sprockets,
  speedInGear,
} from './ratio.ts';
export { type ShiftPoint, shiftPoints } from './shift.ts';
export { type TorqueCurve, type TorquePoint, torqueAt } from './torque-curve.ts';
export {
  type Driveline,
  type Push,
  type Resistance,
  resistanceAt,
  type TopSpeed,
  topSpeed,
  tractionCurve,
  tractiveForce,
} from './traction.ts';
