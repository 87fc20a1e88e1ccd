/** The plan for the hands and the times there are, with the minutes this kart's own record teaches. */
import { type Fact, knownAt } from '../book/index.ts';
import {
  learnTiming,
  MOST_PEOPLE,
  makePlan,
  type Plan,
  type PlanDifference,
  planDifference,
  planning,
  timed,
} from '../prep/index.ts';
import { eventOf, type ForEvent, given } from './asking.ts';
import { type Problem, Refusal, refuse } from './problem.ts';
import type { Standing } from './shelf.ts';
import { moment } from './when.ts';

/** @see makePlan */
export type PlanAsk = ForEvent & {
  /** Minutes there are, in one go; without any time everything due is planned. */
  readonly minutes?: number;
  /** Times there are, one after the other, in minutes; a `from` says when one begins. */
  readonly windows?: readonly { readonly minutes: number; readonly from?: string }[];
  /** 1 to 3. */
  readonly people?: number;
  /** How much time each thing left out would need, however many they are; takes seconds where a whole kart is due. */
  readonly needs?: boolean;
  /** Timetables tried for several people; the usual few when left out. */
  readonly effort?: { readonly schedules: number; readonly seed: number };
};

/** @param facts of the kart, of which those known at the moment of `standing` count */
export function planOf(standing: Standing, facts: readonly Fact[], ask: PlanAsk): Plan {
  return makePlan(standing.kart, standing.state, asked(standing, facts, ask));
}

/** The same by and by, the best so far first: a plan that takes long can be watched, and stopped. */
export function planningOf(standing: Standing, facts: readonly Fact[], ask: PlanAsk): Generator<Plan, Plan> {
  return planning(standing.kart, standing.state, asked(standing, facts, ask));
}

/** @throws Refusal for people and times that cannot be planned with, all at once */
function asked(
  { kart, state, now, past }: Standing,
  facts: readonly Fact[],
  ask: PlanAsk,
): Parameters<typeof planning>[2] {
  const wrong = [...peopleRight(ask.people), ...windowsRight(ask, now)];
  const problems = wrong.length > 0 ? wrong : apart(ask.windows ?? [], now);
  if (problems.length > 0) throw new Refusal(problems);
  const known = past === undefined ? facts : knownAt(facts, past);
  return {
    now,
    timing: learnTiming(timed(kart, known)),
    ...given({
      event: eventOf(state, now, ask.event),
      minutes: ask.minutes,
      windows: ask.windows,
      people: ask.people,
      effort: ask.effort,
      needs: ask.needs,
    }),
  };
}

export type Replanned = PlanDifference & { readonly since: string };
export const replanned = (since: string, before: Plan, after: Plan): Replanned => ({
  since,
  ...planDifference(before, after),
});

const peopleRight = (people: number | undefined): readonly Problem[] =>
  people === undefined || (Number.isInteger(people) && people >= 1 && people <= MOST_PEOPLE)
    ? []
    : [
        refuse(
          'wrong shape',
          'people',
          `Expected 1 to ${MOST_PEOPLE} people, got ${people}.`,
          'Say who really works on the kart; more get in each other’s way.',
        ),
      ];

/** A year of working time is a slip between minutes and seconds. */
const MOST_MINUTES = 365 * 24 * 60;

function windowsRight({ minutes, windows = [] }: PlanAsk, now: string): readonly Problem[] {
  const all = minutes === undefined ? windows : [{ minutes }, ...windows];
  return all.flatMap((window, n) => {
    const where = minutes !== undefined && n === 0 ? 'minutes' : `windows[${n - (minutes === undefined ? 0 : 1)}]`;
    if (!(window.minutes >= 0 && window.minutes <= MOST_MINUTES))
      return [
        refuse(
          'wrong shape',
          where,
          `Expected minutes from 0 to a year, got ${window.minutes}.`,
          'Give the minutes there are: 180 for three hours.',
        ),
      ];
    if (!('from' in window) || window.from === undefined) return [];
    const from = moment(window.from);
    if (from === undefined)
      return [
        refuse(
          'not a time',
          where,
          `Expected when it begins, got "${window.from}".`,
          'Write it like 2026-11-28T08:00:00Z.',
        ),
      ];
    const end = new Date(Date.parse(from) + window.minutes * 60_000).toISOString();
    return end > now
      ? []
      : [
          refuse(
            'runs backwards',
            where,
            `Expected a time that is not over, and this one ended at ${end}.`,
            'Leave it out, or give the time that is still to come.',
          ),
        ];
  });
}

/** Nobody can work twice at once. A time without a beginning begins at the earliest when the one before it is over. */
function apart(windows: NonNullable<PlanAsk['windows']>, now: string): readonly Problem[] {
  let over = Date.parse(now);
  return windows.flatMap(({ minutes, from }, n) => {
    const begins = from === undefined ? over : Date.parse(from);
    const before = over;
    over = (n === 0 ? begins : Math.max(over, begins)) + minutes * 60_000;
    return n === 0 || begins >= before
      ? []
      : [
          refuse(
            'times overlap',
            `windows[${n}]`,
            `Expected a time that begins when the one before it is over, ${iso(before)}, and this one begins at ${iso(begins)}.`,
            'Give the times in the order in which they come, each once: shorten the one before, or make one of both.',
          ),
        ];
  });
}
const iso = (ms: number): string => new Date(ms).toISOString();
