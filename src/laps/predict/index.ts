export { CHANGES, type Change, type Sensitivity, sensitivitiesOf } from './change.ts';
export * from './fit/index.ts';
export { type GearSpeeds, gearSpeeds } from './gears.ts';
export { GENERIC_KART } from './generic-kart.ts';
export { type Engine, type Gearing, type Grip, type LapKart, ratioOf, type Scrub } from './kart.ts';
export { type Predicted, type Predictor, predictorOf, type Run, type Slowest, type Trail } from './lap.ts';
export { type Beside, besidePredicted } from './measured.ts';
export {
  type Box,
  type Choice,
  type Pair,
  type Spreads,
  type SweepProgress,
  sprocketSweep,
  UNMEASURED,
} from './sprockets.ts';
export { arcOf, type Element, lengthOf, type Piece, type Track, trackAlong, trackOf } from './track.ts';
