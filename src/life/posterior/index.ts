export { type Ahead, type Chance, chanceIfReached, chanceOver } from './chance.ts';
export type { Lattice } from './density.ts';
export { type Pooled, pool } from './pool.ts';
export {
  type Basis,
  expected,
  lastingOf,
  type Moments,
  momentsOf,
  type NotKnown,
  type Posterior,
  posteriorOf,
} from './posterior.ts';
export {
  type Gone,
  type Guess,
  INTERVAL_SHARE,
  isAnswer,
  lifeOfAnswers,
  type Prior,
  priorOfAnswers,
  SCALE_SPREAD,
  withAnswer,
} from './prior.ts';
export { type Spread, spreadOf, spreadOfWeighed, type Weighed } from './spread.ts';
export { atMostAfter, basisWords, type ChanceRange, type ChanceWords, chanceShort, chanceWords } from './words.ts';
