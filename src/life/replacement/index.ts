export { renewals, replaceTogether, type Together } from './all-together.ts';
export { type ByAge, type Costs, costRate, replaceByAge, upTime } from './by-age.ts';
export { type Renewal, renewByAge } from './minimal-repair.ts';
export { type RunningCost, runningCost } from './running-cost.ts';
export { type Boundary, type PartAhead, type Replacement, replaceThisPart } from './this-part.ts';
