/** Brakes: from the foot to the ground, and what that does. */
export { brakingLoads, frontLocks, idealFrontShare, rearLifts, rearLocks } from './balance.ts';
export { brakes } from './brakes.ts';
export {
  barOffset,
  barShare,
  barShareFor,
  caliperTorque,
  masterPressure,
  pedalRatio,
  pistonArea,
  radiusEvenPressure,
  radiusEvenWear,
} from './hydraulics.ts';
export { brakingDistance, stopEnergy, stoppingDistance, temperatureRise, wearOf } from './stop.ts';
