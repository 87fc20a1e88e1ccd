export { ANY, partMinutes, type Work, type WorkJob, type WorkPart, type WorkStep } from './bare-work.ts';
export { type Budget, chooseUnderBudget, type LeftOut } from './budget.ts';
export { type Access, leastRemoval, type Removal, type RemovalAsk } from './least.ts';
export { type Steps, steps } from './steps.ts';
