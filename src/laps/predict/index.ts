export { type GearSpeeds, gearSpeeds } from './gears.ts';
export { GENERIC_KART } from './generic-kart.ts';
export { type Engine, type Gearing, type Grip, type LapKart, ratioOf, type Scrub } from './kart.ts';
export { type Predicted, type Predictor, predictorOf, type Run, type Slowest, type Trail } from './lap.ts';
export { arcOf, type Element, lengthOf, type Piece, type Track, trackAlong, trackOf } from './track.ts';
