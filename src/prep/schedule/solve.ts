/** The door of the folder: a schedule, step by step or at once. */
import { type Made, made } from './at-the-kart.ts';
import { kartSearch, withPeople } from './kart-search.ts';
import type { AtTheKart, Effort, Schedule, ScheduleProblem } from './model.ts';
import { packForward } from './pack.ts';
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

/**
 * One plan at the kart, without a search or a bound: whatever can start does, in the order that is wished.
 *
 * @param problem with `kart` and `order`, and nothing against it: it is not looked at again
 */
export function asWished(problem: Wished): Omit<Schedule, 'bound'> {
  const plan = madeAsWished(problem);
  return { start: [...plan.start], makespan: plan.makespan, schedules: 1, kart: byWhom(plan, problem.kart) };
}
/** Only how long that takes [tick]. */
export const ticksAsWished = (problem: Wished): number => madeAsWished(problem).makespan;

/** The same for many orders of one problem: nothing starts before what is listed before it. */
export function takingTurns({ kart, ...problem }: Omit<Wished, 'order'>): (order: readonly number[]) => number {
  const bench = { packed: packForward(withPeople(problem, kart.people)), activities: problem.activities, kart };
  return order => made(bench, Int32Array.from(order), true).makespan;
}

const madeAsWished = ({ order, kart, ...problem }: Wished): Made =>
  made(
    { packed: packForward(withPeople(problem, kart.people)), activities: problem.activities, kart },
    Int32Array.from(order),
    false,
  );
type Wished = ScheduleProblem & Required<Pick<ScheduleProblem, 'order' | 'kart'>>;

function* atTheKart(problem: ScheduleProblem, kart: AtTheKart, effort: Effort): Generator<Schedule, Schedule> {
  const steps = kartSearch(problem, kart, effort);
  for (;;) {
    const { done, value } = steps.next();
    const { plan, bound, schedules } = value;
    const found: Found = { start: [...plan.start], makespan: plan.makespan, bound, schedules };
    const schedule: Schedule = { ...found, kart: byWhom(plan, kart) };
    if (done) return schedule;
    yield schedule;
  }
}

function byWhom({ changes, who, tooSoon, makespan }: Made, { windows }: AtTheKart): NonNullable<Schedule['kart']> {
  const room = windows?.reduce((sum, ticks) => sum + ticks, 0);
  return {
    changes,
    people: Array.from(who, bits => [0, 1, 2].filter(p => (bits >> p) & 1)),
    tooSoon,
    beyond: room === undefined ? 0 : Math.max(0, makespan - room),
  };
}
