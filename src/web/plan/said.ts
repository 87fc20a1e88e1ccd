/** How hands, times and reasons of a plan read on the page. */
import type { Plan, PlanDifference, Step } from '../../prep/index.ts';
import { planWords } from '../words/plan.tsx';
import { capital, spanOf, timeOf, weekdayOf } from '../words/reads.ts';
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
  return windows.length > 0 ? planWords.beyondTimeThere : fromStart(minute);
}
const fromStart = (minutes: number): string => planWords.atStart(minutes, spanOf(minutes));

export const startOf = (plan: Timed, { start, window }: Step): string =>
  start === null ? '' : whenOf(plan, start, window);

/** 'J. Moor and person 2' */
export const whoOf = (crew: Crew, { people }: Pick<Step, 'people'>): string =>
  people.map(one => nameOf(crew, one)).join(' and ');

/** 'Takes two people: ask somebody.'; undefined where there are enough. */
export function helpOf({ helpers, people }: Step): string | undefined {
  if (helpers === 0) return undefined;
  const most = helpers + Math.max(1, people.length);
  return planWords.takesPeopleAskSomebody(NUMBERS[most] ?? most);
}
const NUMBERS = ['no', 'one', 'two', 'three', 'four'];

/** '3 times on this kart: usually 6 min, 8 of 10 within 9 min, planned with 9 min' */
export function learntOf({ timing, minutes }: Step): string | undefined {
  if (timing === null) return undefined;
  const { timings, typical, slow } = timing;
  return planWords.onThisKartUsually(timings, spanOf(typical), spanOf(slow), spanOf(minutes));
}

/** Why a row stands where it stands, a sentence each. */
export const whyOf = ({ whyNow }: Step): readonly string[] =>
  whyNow.map(
    ({ say, steps, minutes }) =>
      `${capital(say)}${steps.length > 0 ? ` (${steps.join(', ')})` : ''}.${costOf(minutes)}`,
  );

const costOf = (minutes: number | null): string =>
  minutes === null ? '' : planWords.costsNothingMore(minutes, spanOf(minutes));

/** 'Best so far: 4 h 12 min, at most 9 min longer than the shortest there can be.' */
export function bestOf({ span, bound }: Plan, searching: boolean): string {
  const most = Math.round(span - bound);
  const than = planWords.atMostLonger(most, spanOf(most));
  return `${searching ? planWords.bestSoFar : ''}${spanOf(span)}, ${than}.`;
}

/** 'Not fit to run after this plan: 35 min more, or 2 people.'; undefined where all safety work fits. */
export function shortOf({ safetyShortBy, safetyFitsWith }: Plan): string | undefined {
  if (safetyShortBy === null) return undefined;
  const more = planWords.moreTime(safetyShortBy, spanOf(Math.ceil(safetyShortBy)));
  const help = safetyFitsWith === null ? '' : planWords.orSecondPerson(safetyFitsWith);
  return planWords.notFitToRunAfter(more, help);
}

/** How the times are meant with which what is left out enters. */
export const enterOf = ({ needsStep }: Plan): string =>
  needsStep === null ? planWords.withHowMuchTime : planWords.eachSaysWithHowMuch(needsStep, spanOf(needsStep));

/** '3 steps more, 12 min; 2 moved. Because: pinch bolt found loose' */
export function changeOf({ added, dropped, moved, minutes }: PlanDifference): string {
  const steps = (n: number, what: string): string => (n === 0 ? '' : `${n} ${n === 1 ? 'step' : 'steps'} ${what}`);
  const whole = Math.round(minutes);
  const time = whole === 0 ? '' : planWords.moreWork(whole, spanOf(whole), spanOf(-whole));
  const counts = [
    steps(added.length, 'new'),
    steps(dropped.length, planWords.noLonger),
    steps(moved.length, 'moved'),
    time,
  ];
  return planWords.planHasChanged(counts.filter(Boolean).join(', '));
}
