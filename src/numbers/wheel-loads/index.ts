/** Wheel loads. */
export {
  type Body as KartBody,
  fourWheels,
  type Loads as WheelLoads,
  liftAt,
  type Motion,
  rollover,
  threeWheels,
} from './statics.ts';
export { type Stance, stance, wheelLoads } from './wheel-loads.ts';
