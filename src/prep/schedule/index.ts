export type { Activity, AtTheKart, Bound, Effort, PostureChange, Schedule, ScheduleProblem } from './model.ts';
export { problemsOf } from './problems.ts';
export { asWished, solve, solving, takingTurns, ticksAsWished } from './solve.ts';
