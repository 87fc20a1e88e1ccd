/** Laps: what the kart did, from its logs. */
export * from './compare/index.ts';
export * from './find/index.ts';
export * from './helped/index.ts';
export * from './import/index.ts';
export { COLUMNS, type Column, type LogProblem, type Trace, type Zero } from './model.ts';
export * from './predict/index.ts';
export * from './record/index.ts';
