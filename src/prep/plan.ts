/**
 * The plan: due items, all that follows from them, in an order that keeps every rule of work.ts, for the hands and the
 * time there are, with what was left out and what lies open anyway. A pure function of kart, state and a moment that is
 * passed in.
 */
import type { KartEvent, State } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import { workBound } from './bound.ts';
import { choose, entering } from './choose.ts';
import { closingAfter } from './closing.ts';
import { type Draft, drafting, draftOf, fits, fitsIn, type Hands, minutesOfAll, minutesWith } from './draft.ts';
import { dueList } from './due.ts';
import type { Due, LeftOut, Plan, PlanWindow, Step, WindowShown } from './model.ts';
import { postureOf } from './order.ts';
import type { Effort } from './schedule/index.ts';
import { bareStep, doneSteps, postureStep, stepOf } from './step.ts';
import { peopleFor, type Row } from './timetable.ts';
import { asPlanned, type Timing } from './timing/index.ts';
import { whileOpen } from './while-open.ts';
import { whyNow } from './why-now.ts';
import type { Job } from './work.ts';

export const MOST_PEOPLE = 3;

export type PlanAsk = {
  readonly now: string;
  readonly event?: KartEvent;
  /** Minutes there are, in one go. Without any time given everything due is planned. */
  readonly minutes?: number;
  /** Times there are, one after the other: tonight three hours, Saturday five. In place of `minutes`. */
  readonly windows?: readonly PlanWindow[];
  /** 1 to 3; one when left out. */
  readonly people?: number;
  /** How long work takes on this kart; the minutes of its data when left out. */
  readonly timing?: Timing;
  /** Timetables that are tried where several people work side by side; the fewer rows the more, when left out. */
  readonly effort?: Effort;
};

/** Few rows are tried in many ways in the time in which many rows are tried in few: about half a second. */
const usual = (rows: number): Effort => ({
  schedules: Math.min(1000, Math.max(40, Math.round(20_000 / Math.max(1, rows)))),
  seed: 1,
});

export const makePlan = (kart: Kart, state: State, ask: PlanAsk): Plan => {
  const { quick, better, write } = begun(kart, state, ask);
  let best = quick;
  for (const draft of better) best = draft;
  return write(best, 'with reasons');
};

/**
 * The same plan by and by: a first one quickly, then the best so far each time a better one is found, so that a worker can
 * show it and be stopped at any moment. All but the last leave out why each row stands where it stands and in which window
 * the first of what is left out would enter, which cost most of a plan's time.
 */
export function* planning(kart: Kart, state: State, ask: PlanAsk): Generator<Plan, Plan> {
  const rough = roughly(kart, state, ask);
  if (rough) yield rough;
  const { quick, better, write } = begun(kart, state, ask);
  let best = quick;
  yield write(quick, 'without reasons');
  for (const draft of better) {
    best = draft;
    yield write(draft, 'without reasons');
  }
  return write(best, 'with reasons');
}

type Begun = {
  readonly quick: Draft;
  readonly better: Iterable<Draft>;
  readonly write: (draft: Draft, reasons: 'with reasons' | 'without reasons') => Plan;
};

/** Where time is short, choosing takes many trials: until then a plan of what comes first of all, as much as surely fits. */
function roughly(kart: Kart, state: State, ask: PlanAsk): Plan | undefined {
  if (ask.windows === undefined && ask.minutes === undefined) return undefined;
  const { quick, write } = begun(kart, state, ask, firstThatFit);
  return write(quick, 'without reasons');
}

function begun(kart: Kart, state: State, ask: PlanAsk, choosing: typeof chosenIn = chosenIn): Begun {
  const windows = ask.windows ?? (ask.minutes === undefined ? [] : [{ minutes: ask.minutes }]);
  const total = windows.length === 0 ? null : windows.reduce((sum, { minutes }) => sum + minutes, 0);
  const hands: Hands = {
    people: ask.people ?? 1,
    windows: windows.map(({ minutes }) => minutes),
    timing: ask.timing ?? asPlanned,
  };
  const due = dueList(kart, state, ask);
  const chosen = choosing(kart, state, due, hands);
  const quick = chosen.draft;
  const done = doneSteps(kart, state, ask.now);
  const short = safetyShort(kart, state, due, chosen, hands, total);
  const open = whileOpen(kart, state, quick.work, ask);
  return {
    quick,
    better: hands.people === 1 ? [] : drafting(kart, state, quick, hands, ask.effort ?? usual(quick.table.rows.length)),
    write(draft, reasons) {
      const closing = closingAfter(kart, draft);
      const byWork = workBound(kart, state, draft.work, minutesWith(hands.timing)) / hands.people;
      const bound = draft.table.bound ?? { minutes: byWork, by: 'the work itself' };
      return {
        kart: kart.name,
        event: ask.event?.event ?? null,
        people: hands.people,
        minutes: draft.minutes,
        span: draft.table.span,
        bound: Math.min(bound.minutes, draft.table.span),
        boundBy: bound.by,
        window: total,
        windows: used(windows, draft.table.rows),
        ...short,
        closeBy: total === null ? null : Math.max(0, total - Math.max(0, ...closing)),
        leftOut: leftOut(kart, state, chosen, hands, reasons === 'with reasons' ? WORKED_OUT : 0),
        whileOpen: open,
        steps: [...done, ...number(kart, state, draft, hands, closing, done.length, reasons)],
      };
    },
  };
}

type Chosen = { readonly draft: Draft; readonly left: readonly Due[] };

function chosenIn(kart: Kart, state: State, due: readonly Due[], hands: Hands): Chosen {
  if (hands.windows.length === 0 || fits(kart, state, due, hands))
    return { draft: draftOf(kart, state, due, hands), left: [] };
  const choice = choose(kart, due, lyingOff(kart, state), some => fits(kart, state, some, hands));
  const draft = draftOf(kart, state, choice.taken, hands);
  return { draft, left: notIn(draft, choice.left) };
}

/** What closing up asks for anyway was not left out, whatever the choice said. */
function notIn({ work }: Draft, left: readonly Due[]): readonly Due[] {
  const planned = new Set(work.jobs.flatMap(job => ('item' in job ? [job.item.id] : [])));
  return left.filter(({ item }) => !planned.has(item));
}

/** The share of the queue for which there is time, and less until it fits: few trials, none of them whole. */
function firstThatFit(kart: Kart, state: State, due: readonly Due[], hands: Hands): Chosen {
  const queue = entering(kart, due, lyingOff(kart, state)).flat();
  const room = hands.windows.reduce((sum, one) => sum + one, 0) * hands.people;
  let count = Math.floor(queue.length * Math.min(1, room / Math.max(1, minutesOfAll(kart, state, due, hands))));
  const first = (): readonly Due[] => due.filter(one => queue.indexOf(one) < count);
  while (count > 0 && !fits(kart, state, first(), hands)) count = Math.floor(0.75 * count);
  const draft = draftOf(kart, state, first(), hands);
  return { draft, left: notIn(draft, queue) };
}

const lyingOff = (kart: Kart, state: State): string[] =>
  Object.keys(kart.parts).filter(part => state.parts[part]?.on === false);

function safetyShort(
  kart: Kart,
  state: State,
  due: readonly Due[],
  { draft, left }: Chosen,
  hands: Hands,
  total: number | null,
): Pick<Plan, 'safetyShortBy' | 'safetyFitsWith'> {
  const isEnough = total === null || fitsIn(draft, hands.windows);
  if (total === null || (isEnough && left.every(({ grade }) => grade !== 'safety')))
    return { safetyShortBy: null, safetyFitsWith: null };
  const safety = due.filter(({ grade }) => grade === 'safety');
  const spanWith = (people: number): number => draftOf(kart, state, safety, { ...hands, people }).table.span;
  const enough = [2, 3].find(people => people > hands.people && spanWith(people) <= total);
  return { safetyShortBy: Math.max(0, spanWith(hands.people) - total), safetyFitsWith: enough ?? null };
}

/** Of so many the minutes are worked out by planning with them; the rest are reckoned from their own work. */
const WORKED_OUT = 12;

function leftOut(
  kart: Kart,
  state: State,
  { draft, left }: Chosen,
  hands: Hands,
  workedOut: number,
): readonly LeftOut[] {
  const withMore = (more: readonly Due[], by: Hands): Draft => draftOf(kart, state, [...draft.due, ...more], by);
  const work = { ...hands, people: 1 }; // minutes of all hands are the same whoever does them
  const now = workedOut > 0 ? draftOf(kart, state, draft.due, work).minutes : 0;
  return left.map((one, n) => ({
    item: one.item,
    title: one.title,
    grade: one.grade,
    minutes: n < workedOut ? withMore([one], work).minutes - now : (kart.items[one.item]?.minutes ?? 0),
    needs: n < workedOut ? withMore(left.slice(0, n + 1), hands).table.span : null,
    consequence: consequence(one),
  }));
}

function consequence({ grade, ahead, why }: Due): string {
  if (grade === 'safety') return `Not fit to run until it is done. ${why}`;
  return ahead
    ? `It may run past its life during the event. ${why}`
    : `It goes to the event as the record leaves it. ${why}`;
}

/** How far each working time is filled. */
function used(windows: readonly PlanWindow[], rows: readonly Row[]): readonly WindowShown[] {
  let from = 0;
  return windows.map((window, n) => {
    const to = from + window.minutes;
    const within = rows.filter(({ start, end }) => start >= from - 1e-9 && end <= to + 1e-9 && end > start);
    const last = Math.max(from, ...within.map(({ end }) => end));
    from = to;
    return { ...window, n: n + 1, used: last - (to - window.minutes) };
  });
}

function number(
  kart: Kart,
  state: State,
  draft: Draft,
  hands: Hands,
  closing: readonly number[],
  from: number,
  reasons: Parameters<Begun['write']>[1],
): Step[] {
  const { work, table } = draft;
  const numberOf = new Map(
    table.rows.flatMap(({ placed }, i) => ('job' in placed ? [[placed.job, from + i + 1] as const] : [])),
  );
  const why = reasons === 'with reasons' ? whyNow(kart, state, draft, hands, job => numberOf.get(job)) : () => [];
  let lastPosture: number | undefined;
  let wasOnSide = state.posture === 'side';
  let offSide = false; // the last change of posture took the kart off its side, for which all work waits
  return table.rows.map((row, i) => {
    const n = from + i + 1;
    const { placed, start, end } = row;
    const when = {
      start,
      end,
      people: row.people.map(one => one + 1),
      window: windowOf(hands.windows, row),
      closing: closing[i] ?? null,
      whyNow: why(row, i),
    };
    if ('posture' in placed) {
      lastPosture = n;
      offSide = wasOnSide;
      wasOnSide = placed.posture === 'side';
      return { ...postureStep(n, placed.posture, i === 0), ...when };
    }
    const job = work.jobs[placed.job] as Job;
    const after = (work.before[placed.job] ?? []).flatMap(b => numberOf.get(b) ?? []);
    if (lastPosture !== undefined && (offSide || postureOf(job) !== 'any')) after.push(lastPosture);
    after.sort((a, b) => a - b);
    const step = stepOf(kart, state, job, { ...bareStep, n, after, state: after.length === 0 ? 'ready' : 'waiting' });
    const learnt = hands.timing(job.key, step.minutes);
    return {
      ...step,
      ...when,
      minutes: end - start,
      helpers: Math.max(0, peopleFor(job) - hands.people),
      timing: learnt.timings > 0 ? learnt : null,
    };
  });
}

function windowOf(windows: readonly number[], { end }: Row): number | null {
  let to = 0;
  const n = windows.findIndex(minutes => {
    to += minutes;
    return end <= to + 1e-9;
  });
  return n < 0 ? null : n + 1;
}
