/** Fault trees: read, checked, solved exactly. */
export { type Analysis, analyse, type CutSets, type NotSolved } from './analyse.ts';
export { type SharedCause, withSharedCause } from './common-cause.ts';
export type { TreeRead } from './draft.ts';
export type { Importance } from './importance.ts';
export { fromJson, type JsonTree, readJsonTree, treeFields } from './json.ts';
export { readMef } from './mef.ts';
export { type Basic, type FaultTree, type Gate, LIMITS } from './model.ts';
export { afterInspection, type Dependence, latent, leftOutToo } from './retention-chance.ts';
