/** Every problem that can be asked bare. One more: a file bare-NAME.ts with its schema and example, and a line here. */
import { bareFaultTree } from './bare-fault-tree.ts';
import { bareHelped } from './bare-helped.ts';
import { bareLap } from './bare-lap.ts';
import { bareLife } from './bare-life.ts';
import type { BareProblem } from './bare-problem.ts';
import { bareRemoval } from './bare-removal.ts';
import { bareSchedule } from './bare-schedule.ts';

export const bareProblems: readonly BareProblem[] = [
  bareFaultTree,
  bareHelped,
  bareLap,
  bareLife,
  bareRemoval,
  bareSchedule,
];
