/** `calc schedule`: activities in time under what there is of each resource; one problem, or an array of them. */
import { z } from 'zod';
import { type ScheduleProblem, scheduleProblems, solveSchedule } from '../prep/index.ts';
import { bareProblem, type Solution } from './bare-problem.ts';

const count = z.number().int().min(0);
const schema = z.strictObject({
  id: z.union([z.string(), z.number()]).optional(),
  n: count.optional().describe('how many activities; they are counted anyway'),
  cap: z.array(count).max(100).describe('how much there is of each resource'),
  dur: z.array(count).max(20_000).describe('time of each activity, in whole units'),
  need: z.array(z.array(count)).describe('of each activity, what it takes of each resource while it runs'),
  succ: z.array(z.array(count)).describe('of each activity, which come after it, counted from 0'),
  cp: z.number().nullish().describe('not read'),
  lb: z.number().nullish().describe('not read'),
  ub: z.number().nullish().describe('not read'),
  schedules: z.number().int().min(1).max(1_000_000).default(1000).describe('schedules made at most'),
  seed: z.number().int().default(1).describe('the same seed gives the same schedule'),
});
type Question = z.output<typeof schema>;

export const bareSchedule = bareProblem<Question>({
  name: 'schedule',
  title: 'When each activity starts, by precedence and by what there is of each resource',
  how: [
    'Orders are packed forward and backward in turn, each as early or as late as its resources allow, and recombined.',
    'One pass over all activities counts as one schedule; it stops when a bound shows that nothing shorter can be, or earlier on a problem of thousands of activities.',
    'makespan is at most makespan - bound from the shortest there is; boundBy names the reasoning. Only where both are equal it is proven.',
  ],
  sources: [
    'Kolisch 1996, serial and parallel schemes (memory)',
    'Valls, Ballestín and Quintanilla 2005, justification (memory)',
    'Debels and Vanhoucke 2007, alternating groups (memory)',
    'Baptiste, Le Pape and Nuijten 1999, satisfiability tests for the bound (memory)',
  ],
  example: { cap: [2], dur: [12, 10, 6], need: [[1], [1], [2]], succ: [[], [], []] },
  schema,
  check: one => {
    const lengths = (['need', 'succ'] as const).flatMap(key =>
      one[key].length === one.dur.length
        ? []
        : [
            {
              path: key,
              expected: `${one.dur.length} lists, one for each of dur`,
              got: `${one[key].length}`,
              remedy: 'write one for each activity',
            },
          ],
    );
    return lengths.length > 0 ? lengths : unknownNext(one).concat(scheduleProblems(problemOf(one)));
  },
  solve,
});

function solve(one: Question): Solution {
  const found = solveSchedule(problemOf(one), one);
  return {
    ...(one.id === undefined ? {} : { id: one.id }),
    makespan: found.makespan,
    start: found.start,
    bound: found.bound.ticks,
    boundBy: found.bound.by,
    schedules: found.schedules,
  };
}

const unknownNext = ({ succ, dur }: Question) =>
  succ.flatMap((list, i) =>
    list
      .filter(j => j >= dur.length)
      .map(j => ({
        path: `succ/${i}`,
        expected: `activities from 0 to ${dur.length - 1}`,
        got: `${j}`,
        remedy: 'count from 0, the first and last included',
      })),
  );

function problemOf({ cap, dur, need, succ }: Question): ScheduleProblem {
  const after: number[][] = dur.map(() => []);
  succ.forEach((list, i) => {
    for (const j of list) after[j]?.push(i);
  });
  return {
    capacity: cap,
    activities: dur.map((ticks, i) => ({ id: `${i}`, ticks, needs: need[i] ?? [], after: after[i] ?? [] })),
  };
}
