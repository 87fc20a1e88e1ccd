export { joined, type Life, type LifeProblem, lifeProblems } from './life.ts';
export { type Outlook, outlookOf } from './outlook.ts';
export * from './parts/index.ts';
export * from './plots/index.ts';
export * from './posterior/index.ts';
export { type Rate, rateOver } from './rate.ts';
export * from './record/index.ts';
export * from './replacement/index.ts';
export * from './spares/index.ts';
export {
  CAUSES,
  type Cause,
  disturbedBy,
  type Horizon,
  openedBy,
  type Standing,
  standing,
  standings,
} from './standing.ts';
export * from './trend/index.ts';
export * from './weibull/index.ts';
