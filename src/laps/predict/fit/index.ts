export { type Coasted, fitCoast } from './coast.ts';
export { fitGrip } from './grip.ts';
export { type FitLog, type Fitted, fitLogOf } from './log.ts';
export { fitPower } from './power.ts';
export { fitRadius } from './radius.ts';
