export { type Alike, type AlikeJoint, type AlikeOne, alikeOf, type FailedOn } from './alike.ts';
export {
  type Analysis,
  afterInspection,
  analyse,
  type Basic,
  type CutSets,
  type Dependence,
  type FaultTree,
  fromJson,
  type Gate,
  type Importance,
  type JsonTree,
  LIMITS,
  latent,
  leftOutToo,
  type NotSolved,
  readJsonTree,
  readMef,
  type SharedCause,
  type TreeRead,
  treeFields,
  withSharedCause,
} from './fault-tree/index.ts';
export { type Fitness, fitness, type Reason } from './fitness.ts';
export * from './retentions/index.ts';
export {
  CHANCE_BANDS,
  type ChanceBand,
  LEVELS,
  type Level,
  overEvents,
  type RiskCode,
  type RiskScheme,
  readRiskScheme,
  riskCode,
  type Severity,
} from './risk-code.ts';
export { type Season, seasonOf } from './season.ts';
export * from './weak-links/index.ts';
