export { dueList, nextEvent } from './due.ts';
export type { Due, LeftOut, Plan, Shown, Step, StepAction, WhileOpen } from './model.ts';
export { makePlan, type PlanAsk } from './plan.ts';
export { passOf } from './write.ts';
