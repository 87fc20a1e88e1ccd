export { type Compared, comparedOn, comparedSay, type PieceCompared } from './compare.ts';
export { type Curvature, curvatureOf } from './curvature.ts';
export { type Driven, drivenOf, type PieceDriven } from './driver.ts';
export { type GripDirection, type GripUsed, gripOf } from './grip.ts';
export { type LapOnLine, type Line, layOn, medianLine } from './line.ts';
export { piecesOf, type TrackPiece } from './pieces.ts';
export { type Smooth, smooth } from './smooth.ts';
