export { type Asked, type Gauge, gaugeLinks, judge } from './judge.ts';
export { parseReadings, typedAs } from './readings.ts';
export { differenceText, type Judgement, onTarget } from './words.ts';
