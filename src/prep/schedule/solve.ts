/** The door of the folder: a schedule, step by step or at once. */
import { kartSearch } from './kart-search.ts';
import type { Effort, Schedule, ScheduleProblem } from './model.ts';
import { problemsOf } from './problems.ts';
import { type Found, search } from './search.ts';

/**
 * Searches, and after every few schedules yields the best so far, so that a worker can show it, stop, and keep it.
 * Returns when the bound is met or the schedules are made.
 *
 * @throws Error when `problemsOf` has anything against the problem, or the effort is not a whole number from 1
 */
export function* solving(problem: ScheduleProblem, effort: Effort): Generator<Schedule, Schedule> {
  const against = problemsOf(problem)[0];
  if (against) throw new Error(`solving: ${against.path} must be ${against.expected}, got ${against.got}`);
  if (!(Number.isInteger(effort.schedules) && effort.schedules >= 1))
    throw new Error(`solving: schedules must be a whole number from 1, got ${effort.schedules}`);
  if (!Number.isInteger(effort.seed)) throw new Error(`solving: seed must be a whole number, got ${effort.seed}`);
  const steps = problem.kart === undefined ? search(problem, effort) : atTheKart(problem, problem.kart, effort);
  let step = steps.next();
  for (; !step.done; step = steps.next()) yield step.value;
  return step.value;
}

/** The whole search. `onStep` sees each best so far, and stops the search by answering false. */
export function solve(
  problem: ScheduleProblem,
  effort: Effort,
  onStep: (best: Schedule) => boolean | undefined = () => undefined,
): Schedule {
  const steps = solving(problem, effort);
  for (;;) {
    const { done, value } = steps.next();
    if (done || onStep(value) === false) return value;
  }
}

function* atTheKart(
  problem: ScheduleProblem,
  kart: NonNullable<ScheduleProblem['kart']>,
  effort: Effort,
): Generator<Schedule, Schedule> {
  const steps = kartSearch(problem, kart, effort);
  const room = kart.windows?.reduce((sum, ticks) => sum + ticks, 0);
  for (;;) {
    const { done, value } = steps.next();
    const { plan, bound, schedules } = value;
    const found: Found = { start: [...plan.start], makespan: plan.makespan, bound, schedules };
    const schedule: Schedule = {
      ...found,
      kart: {
        changes: plan.changes,
        people: Array.from(plan.who, bits => [0, 1, 2].filter(p => (bits >> p) & 1)),
        tooSoon: plan.tooSoon,
        beyond: room === undefined ? 0 : Math.max(0, plan.makespan - room),
      },
    };
    if (done) return schedule;
    yield schedule;
  }
}
