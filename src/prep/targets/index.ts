/** To which number, and within what. */
export { aimOf, limitsOf } from './aim.ts';
export { toward } from './brake-bias.ts';
export { compressionSaid } from './compression-trend.ts';
export { gaugeOf } from './gauge.ts';
export type { Aim, Bound } from './model.ts';
