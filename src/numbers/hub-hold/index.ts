/** The hold of a clamped hub. */
export {
  type Clamp,
  CONTACT,
  type Contact,
  clampFor,
  type Demand,
  edgePressure,
  hingeForce,
  leastPreload,
  meanPressure,
  seatDemand,
  slipAxial,
  slipMargin,
  slipTorque,
} from './clamp.ts';
export { FRICTION, NUT_FACTOR, SCATTER } from './friction.ts';
export { hubHold } from './hub-hold.ts';
export { keyForce, keyLength, keyPressure, keyShear } from './key.ts';
export { pressFitHold, pressFitPressure, ringMoment, tubeStress } from './ring.ts';
export { type SeatKnown, seatReason } from './seat-reason.ts';
