/** How hands, times and reasons of a plan read on the page. */
import type { Plan, PlanDifference, Step } from '../../prep/index.ts';
import { capital, spanOf, timeOf, weekdayOf } from '../words.ts';
import { type Crew, nameOf } from './crew.ts';

type Timed = Pick<Plan, 'windows'>;

/** '18:05', 'Sat 18:05' where there are several times; 'after 1 h 10 min' where no begin was said. */
export function whenOf({ windows }: Timed, minute: number, window?: number | null): string {
  let begun = 0;
  for (const { n, minutes, from } of windows) {
    const isLast = n === windows.length;
    if (window === n || (window === undefined && (minute <= begun + minutes || isLast))) {
      const into = minute - begun;
      if (from !== undefined) {
        const at = new Date(Date.parse(from) + into * 60_000).toISOString();
        return windows.length > 1 ? `${weekdayOf(at)} ${timeOf(at)}` : timeOf(at);
      }
      return windows.length > 1 ? `time ${n}, ${fromStart(into)}` : fromStart(into);
    }
    begun += minutes;
  }
  return windows.length > 0 ? 'beyond the time there is' : fromStart(minute);
}
const fromStart = (minutes: number): string => (minutes < 0.5 ? 'at the start' : `after ${spanOf(minutes)}`);

export const startOf = (plan: Timed, { start, window }: Step): string =>
  start === null ? '' : whenOf(plan, start, window);

/** 'J. Moor and person 2' */
export const whoOf = (crew: Crew, { people }: Pick<Step, 'people'>): string =>
  people.map(one => nameOf(crew, one)).join(' and ');

/** 'Takes two people: ask somebody.'; undefined where there are enough. */
export function helpOf({ helpers, people }: Step): string | undefined {
  if (helpers === 0) return undefined;
  const most = helpers + Math.max(1, people.length);
  return `Takes ${NUMBERS[most] ?? most} people: ask somebody to help.`;
}
const NUMBERS = ['no', 'one', 'two', 'three', 'four'];

/** '3 times on this kart: usually 6 min, 8 of 10 within 9 min, planned with 9 min' */
export function learntOf({ timing, minutes }: Step): string | undefined {
  if (timing === null) return undefined;
  const { timings, typical, slow } = timing;
  return `${timings === 1 ? 'Once' : `${timings} times`} on this kart: usually ${spanOf(typical)}, 8 of 10 within ${spanOf(slow)}, planned with ${spanOf(minutes)}.`;
}

/** Why a row stands where it stands, a sentence each. */
export const whyOf = ({ whyNow }: Step): readonly string[] =>
  whyNow.map(
    ({ say, steps, minutes }) =>
      `${capital(say)}${steps.length > 0 ? ` (${steps.join(', ')})` : ''}.${costOf(minutes)}`,
  );

const costOf = (minutes: number | null): string =>
  minutes === null ? '' : minutes === 0 ? ' Costs nothing more.' : ` ${spanOf(minutes)} more another time.`;

/** 'Best so far: 4 h 12 min, at most 9 min longer than the shortest there can be.' */
export function bestOf({ span, bound }: Plan, searching: boolean): string {
  const most = Math.round(span - bound);
  const than =
    most <= 0 ? 'no plan for this work is shorter' : `at most ${spanOf(most)} longer than the shortest there can be`;
  return `${searching ? 'Best so far: ' : ''}${spanOf(span)}, ${than}.`;
}

/** 'Not fit to run after this plan: 35 min more, or 2 people.'; undefined where all safety work fits. */
export function shortOf({ safetyShortBy, safetyFitsWith }: Plan): string | undefined {
  if (safetyShortBy === null) return undefined;
  const more = safetyShortBy > 0 ? `${spanOf(Math.ceil(safetyShortBy))} more` : 'more time';
  const help =
    safetyFitsWith === null ? '' : safetyFitsWith === 2 ? ', or a second person' : `, or ${safetyFitsWith} people`;
  return `Not fit to run after this plan: ${more}${help}.`;
}

/** How the times are meant with which what is left out enters. */
export const enterOf = ({ needsStep }: Plan): string =>
  needsStep === null
    ? 'With how much time each enters is worked out once the plan stands.'
    : `Each says with how much time in all it enters${needsStep > 1 ? `, to ${spanOf(needsStep)}` : ''}; less would not do.`;

/** '3 steps more, 12 min; 2 moved. Because: pinch bolt found loose' */
export function changeOf({ added, dropped, moved, minutes }: PlanDifference): string {
  const steps = (n: number, what: string): string => (n === 0 ? '' : `${n} ${n === 1 ? 'step' : 'steps'} ${what}`);
  const whole = Math.round(minutes);
  const time = whole === 0 ? '' : whole > 0 ? `${spanOf(whole)} more work` : `${spanOf(-whole)} less work`;
  const counts = [
    steps(added.length, 'new'),
    steps(dropped.length, 'no longer in it'),
    steps(moved.length, 'moved'),
    time,
  ];
  return `The plan has changed: ${counts.filter(Boolean).join(', ')}.`;
}
