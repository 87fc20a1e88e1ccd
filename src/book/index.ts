export { type Age, ageAt, partAge } from './age.ts';
export { canonical } from './canonical.ts';
export { type Balance, Carried } from './carried.ts';
export { verifyChain } from './chain.ts';
export * from './fact.ts';
export { fold, knownAt } from './fold.ts';
export { Ledger } from './ledger.ts';
export { exportLines, type Imported, importLines, LINES_FORMAT } from './lines.ts';
export { compareFacts, factsOf, inOrder } from './order.ts';
export { outingName } from './outing-name.ts';
export { BARRED } from './personal.ts';
export { isProblem, type Problem } from './problem.ts';
export { type NamedRedaction, redact, redactionsIn, stillSays, unvouched } from './redact.ts';
export {
  bonesOf,
  CHAIN_START,
  type ChainEnd,
  type Draft,
  FIRST_PREV,
  fitsHash,
  hashOf,
  provable,
  seal,
  sealAll,
  sealNext,
} from './seal.ts';
export * from './state.ts';
export { type Struck, struckFacts } from './strikes.ts';
export { upcast } from './upcast.ts';
