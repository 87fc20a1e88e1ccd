/** Engineering on SI numbers, and the subjects that can be asked alone. */
export * from './air/index.ts';
export * from './alignment/index.ts';
export { engagement, gapFor, halfWidth, LEAST_ENGAGEMENT, narrowest, type Side } from './axle-stack.ts';
export { readFirst } from './behind.ts';
export { BIBLIOGRAPHY, type Source, type SourceKey } from './bibliography.ts';
export * from './bolt/index.ts';
export * from './brakes/index.ts';
export * from './carburation/index.ts';
export type { Card } from './card.ts';
export { combine, type Link, rectangular, rootSumSquare, sum, worstCase } from './chain.ts';
export * from './chain-drive/index.ts';
export { acceptance, chanceInside, type Limits, scoreFor } from './conformance.ts';
export * from './drag/index.ts';
export * from './engine/index.ts';
export { lengthText, onTape, type Tape } from './figure.ts';
export * from './front-end/index.ts';
export * from './gearing/index.ts';
export * from './hub-hold/index.ts';
export {
  differenceText,
  type Gauge,
  gaugeLinks,
  type Judgement,
  judge,
  onTarget,
  parseReadings,
  typedAs,
} from './judge/index.ts';
export { readRatio } from './mix-ratio.ts';
export { normalBelow, normalScore } from './normal.ts';
export * from './premix/index.ts';
export { tapeLinks } from './rear-track-budget.ts';
export { type NoTarget, type RearTrackTarget, rearTrackTarget } from './rear-track-target.ts';
export * from './retention/index.ts';
export {
  centre,
  cgHeight,
  cgHeightEqualWheels,
  cgHeightUncertainty,
  fixing,
  fixingRule,
  leastBallast,
  leastReading,
  massAtTheEnd,
  response,
  shares,
  splitBallast,
} from './scales/index.ts';
export { student95, studentBelow, studentScore } from './student.ts';
export {
  type Answer,
  type Figure,
  type InputProblem,
  type Problems,
  problems,
  type Subject,
  shaped,
} from './subject.ts';
export { subjects } from './subjects.ts';
export * from './tyres/index.ts';
export * from './wheel-loads/index.ts';
