/** Bolts: threads, strength, torque and preload. */
export { bolt } from './bolt.ts';
export {
  highestPreload,
  isJointTorque,
  type JointTorque,
  jointTorque,
  type NoJointTorque,
  torqueRange,
} from './joint-torque.ts';
export { leastByTighteningFactor, METHODS, type Method, preloadRange, scatterOf } from './scatter.ts';
export { isOtherMark, isStrength, proofLoad, type Strength, strengthOf, ultimateLoad } from './strength.ts';
export { metricStressArea, pitchDiameter, rootDiameter, stressArea, unifiedStressArea } from './stress-area.ts';
export { AIRCRAFT_TORQUE, headOf, LEAST_RUNNING_TORQUE, POUND_INCH } from './tables.ts';
export { isPipeThread, isThread, type NoThread, readThread, type Thread } from './thread.ts';
export {
  meanBearing,
  nutFactor,
  preloadAtYield,
  preloadByNutFactor,
  releaseTorque,
  type Turning,
  tighteningTorque,
  tighteningTorqueLinear,
  torqueByNutFactor,
  torqueShares,
  unwindingMoment,
} from './torque.ts';
