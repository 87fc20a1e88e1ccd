export type { Activity, AtTheKart, Bound, Effort, PostureChange, Schedule, ScheduleProblem } from './model.ts';
export { problemsOf } from './problems.ts';
export { asWished, solve, solving, ticksAsWished } from './solve.ts';
