export { type Asked, type Gauge, judge } from './judge.ts';
export { parseReadings, typedAs } from './readings.ts';
export { differenceText, type Judgement, onTarget } from './words.ts';
