export { type Curvature, curvatureOf } from './curvature.ts';
export { type LapOnLine, type Line, layOn, medianLine } from './line.ts';
export { type Smooth, smooth } from './smooth.ts';
