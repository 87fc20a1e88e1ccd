/** What keeps a joint made. */
export { failsAnotherWay, type LetsGo, MEANS, type Means, meansOf } from './means.ts';
export { retention } from './retention.ts';
export { pinForBolt, pinForHole, SPLIT_PINS, STRAPS, strapFor, strapOf, twistsFor, WIRE_RULES } from './tables.ts';
