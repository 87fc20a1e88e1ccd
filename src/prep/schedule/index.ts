export type { Activity, AtTheKart, Bound, Effort, PostureChange, Schedule, ScheduleProblem } from './model.ts';
export { problemsOf } from './problems.ts';
export { solve, solving } from './solve.ts';
