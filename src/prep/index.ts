export { dueList, nextEvent } from './due.ts';
export type { Due, LeftOut, Plan, Shown, Step, StepAction, WhileOpen } from './model.ts';
export { makePlan } from './plan.ts';
