/**
 * The plan: due items, all that follows from them, in an order that keeps every rule of work.ts, for the hands and the
 * time there are, with what was left out and what lies open anyway. A pure function of kart, state and a moment that is
 * passed in.
 */
import type { KartEvent, State } from '../book/index.ts';
import type { Kart, PartId } from '../kart/index.ts';
import { workBound } from './bound.ts';
import { choose, entering } from './choose.ts';
import { closingAfter } from './closing.ts';
import { type Draft, drafting, draftOf, type Hands, minutesOfAll, minutesWith, roomIn } from './draft.ts';
import { dueList } from './due.ts';
import { entersWith, named } from './left-out.ts';
import { withMends } from './mend.ts';
import type { Due, LeftOut, Plan, PlanWindow } from './model.ts';
import { filled, numbersOf, stepsOf } from './rows.ts';
import type { Effort } from './schedule/index.ts';
import { doneSteps } from './step.ts';
import { asPlanned, type Timing } from './timing/index.ts';
import { SAME, type Trials, trialsOf } from './trial.ts';
import { whileOpen } from './while-open.ts';
import { whyNow } from './why-now.ts';

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
  /** How much time each thing left out would need, however many they are: seconds, where a whole kart is due. */
  readonly needs?: boolean;
  /** Timetables that are tried where several people work side by side; the fewer rows the more, when left out. */
  readonly effort?: Effort;
};

/** Few rows are tried in many ways in the time in which many rows are tried in few: about half a second. */
const usual = (rows: number): Effort => ({
  schedules: Math.min(1000, Math.max(40, Math.round(20_000 / Math.max(1, rows)))),
  seed: 1,
});

/** With more left out than this, how much time each would need takes longer than everything else: only when asked for. */
const FEW_LEFT = 60;

export const makePlan = (kart: Kart, state: State, ask: PlanAsk): Plan => {
  const bench = benchFor(kart, state, ask);
  const { quick, better, write, withNeeds } = begun(bench, ask, chosenIn(bench));
  let best = quick;
  for (const draft of better) best = draft;
  const plan = write(best, 'with reasons');
  return ask.needs || plan.leftOut.length <= FEW_LEFT ? withNeeds(plan) : plan;
};

/**
 * The same plan by and by: a first one quickly, then the best so far each time a better one is found, so that a worker can
 * show it and be stopped at any moment. Why each row stands where it stands comes with the best one only, and with how much
 * time what is left out would enter comes after that: both take longer than the plan itself.
 */
export function* planning(kart: Kart, state: State, ask: PlanAsk): Generator<Plan, Plan> {
  const bench = benchFor(kart, state, ask);
  // Where time is short, choosing takes many trials: until then a plan of what comes first of all, as much as surely fits.
  if (bench.room !== null) {
    const { quick, write } = begun(bench, ask, firstThatFit(bench));
    yield write(quick, 'without reasons');
  }
  const { quick, better, write, withNeeds } = begun(bench, ask, chosenIn(bench));
  let best = quick;
  yield write(quick, 'without reasons');
  for (const draft of better) {
    best = draft;
    yield write(draft, 'without reasons');
  }
  const plan = write(best, 'with reasons');
  if (plan.leftOut.length > 0) yield plan;
  return withNeeds(plan);
}

/** What there is to plan with, worked out once for all plans of one ask. */
type Bench = {
  readonly kart: Kart;
  readonly state: State;
  readonly due: readonly Due[];
  /** In the order in which it is taken, tier by tier. */
  readonly queue: readonly (readonly Due[])[];
  readonly hands: Hands;
  readonly windows: readonly PlanWindow[];
  readonly room: number | null; // minutes of all windows; null without any
  readonly trials: (people: number) => Trials;
};

function benchFor(plain: Kart, state: State, ask: PlanAsk): Bench {
  const kart = withMends(plain, state);
  const windows = ask.windows ?? (ask.minutes === undefined ? [] : [{ minutes: ask.minutes }]);
  const hands: Hands = {
    people: ask.people ?? 1,
    windows: windows.map(({ minutes }) => minutes),
    timing: ask.timing ?? asPlanned,
  };
  const due = dueList(plain, state, ask);
  const known = new Map<number, Trials>();
  const trials = (people: number): Trials => {
    const made = known.get(people) ?? trialsOf(kart, state, due, { ...hands, people });
    known.set(people, made);
    return made;
  };
  const room = windows.length === 0 ? null : roomIn(hands.windows);
  const queue = room === null ? [] : entering(kart, due, lyingOff(kart, state));
  return { kart, state, due, queue, hands, windows, room, trials };
}

type Begun = {
  readonly quick: Draft;
  readonly better: Iterable<Draft>;
  readonly write: (draft: Draft, reasons: 'with reasons' | 'without reasons') => Plan;
  /** The same plan, with how much time what it leaves out would enter. */
  readonly withNeeds: (plan: Plan) => Plan;
};

function begun(bench: Bench, ask: PlanAsk, { draft: quick, left }: Chosen): Begun {
  const { kart, state, hands, windows, room } = bench;
  const done = doneSteps(kart, state, ask.now);
  const short = safetyShort(bench, quick, left);
  const open = whileOpen(kart, state, quick.work, ask);
  return {
    quick,
    better: hands.people === 1 ? [] : drafting(kart, state, quick, hands, ask.effort ?? usual(quick.table.rows.length)),
    write(draft, reasons) {
      const closing = closingAfter(kart, draft);
      const byWork = workBound(kart, state, draft.work, minutesWith(hands.timing)) / hands.people;
      const bound = draft.table.bound ?? { minutes: byWork, by: 'the work itself' };
      const numberOf = numbersOf(draft.table.rows, done.length);
      const why = reasons === 'with reasons' ? whyNow(kart, state, draft, hands, job => numberOf.get(job)) : () => [];
      return {
        kart: kart.name,
        event: ask.event?.event ?? null,
        people: hands.people,
        minutes: draft.minutes,
        span: draft.table.span,
        bound: Math.min(bound.minutes, draft.table.span),
        boundBy: bound.by,
        window: room,
        windows: filled(windows, draft.table.rows),
        ...short,
        closeBy: room === null ? null : Math.max(0, room - Math.max(0, ...closing)),
        leftOut: named(left, ({ item }) => kart.items[item]?.minutes ?? 0),
        needsStep: null,
        whileOpen: open,
        steps: [...done, ...stepsOf(kart, state, draft, hands, { from: done.length, closing, whyNow: why })],
      };
    },
    withNeeds: plan => (left.length === 0 || room === null ? plan : { ...plan, ...needsOf(bench, room, quick, left) }),
  };
}

type Chosen = { readonly draft: Draft; readonly left: readonly Due[] };

function chosenIn(bench: Bench): Chosen {
  const { due, queue, hands, room, trials } = bench;
  if (room === null) return { draft: drafted(bench, due), left: [] };
  const { taken, left } = choose(queue, some => trials(hands.people).takes(some, room) <= room + SAME);
  return { draft: drafted(bench, [...taken]), left: notCovered(bench, taken, left) };
}

/** The share of the queue for which there is time, and less until it fits: few trials, none of them whole. */
function firstThatFit(bench: Bench): Chosen {
  const { kart, state, due, queue, hands, trials } = bench;
  const first = queue.flat();
  const room = bench.room ?? Number.POSITIVE_INFINITY;
  let count = Math.floor(
    first.length * Math.min(1, (room * hands.people) / Math.max(1, minutesOfAll(kart, state, due, hands))),
  );
  while (count > 0 && !(trials(hands.people).takes(new Set(first.slice(0, count)), room) <= room + SAME))
    count = Math.floor(0.75 * count);
  const taken = new Set(first.slice(0, count));
  return { draft: drafted(bench, [...taken]), left: notCovered(bench, taken, first.slice(count)) };
}

const drafted = ({ kart, state, due, hands }: Bench, some: readonly Due[]): Draft => {
  const wanted = new Set(some);
  return draftOf(
    kart,
    state,
    due.filter(one => wanted.has(one)),
    hands,
  );
};

/** What closing up asks for anyway was not left out, whatever the choice said. */
function notCovered({ hands, trials }: Bench, taken: ReadonlySet<Due>, left: readonly Due[]): readonly Due[] {
  const covered = trials(hands.people).covers(taken);
  return left.filter(({ item }) => !covered.has(item));
}

const lyingOff = (kart: Kart, state: State): PartId[] =>
  Object.keys(kart.parts).filter(part => state.parts[part]?.on === false);

function safetyShort(
  { due, hands, room, trials }: Bench,
  { table }: Draft,
  left: readonly Due[],
): Pick<Plan, 'safetyShortBy' | 'safetyFitsWith'> {
  if (room === null || (table.span <= room + SAME && left.every(({ grade }) => grade !== 'safety')))
    return { safetyShortBy: null, safetyFitsWith: null };
  const safety = new Set(due.filter(({ grade }) => grade === 'safety'));
  const spanWith = (people: number, within: number): number => trials(people).takes(safety, within);
  const enough = [2, 3].find(people => people > hands.people && spanWith(people, room) <= room);
  return {
    safetyShortBy: Math.max(0, spanWith(hands.people, Number.POSITIVE_INFINITY) - room),
    safetyFitsWith: enough ?? null,
  };
}

/** What is left out is looked for in steps of a minute, and of more where there is much of it. */
const NEEDS_STEPS = [1, 2, 5];
const MOST_STEPS = 150;

function needsOf(
  { kart, state, due, queue, hands, trials }: Bench,
  room: number,
  draft: Draft,
  left: readonly Due[],
): Pick<Plan, 'leftOut' | 'needsStep'> {
  const all = trials(hands.people).takes(new Set(due), Number.POSITIVE_INFINITY);
  const step = NEEDS_STEPS.find(minutes => (all - room) / minutes <= MOST_STEPS) ?? Math.max(...NEEDS_STEPS);
  const needs = entersWith(queue, trials(hands.people), left, room, step);
  // Minutes of all hands are the same whoever does them.
  const { takes } = trialsOf(kart, state, due, { ...hands, people: 1, windows: [] });
  const minutesWithMore = (...more: readonly Due[]): number =>
    takes(new Set([...draft.due, ...more]), Number.POSITIVE_INFINITY);
  const now = minutesWithMore();
  const adds = new Map(left.map(one => [one.item, Math.max(0, minutesWithMore(one) - now)]));
  const enters = new Map([...needs].map(([{ item }, minutes]) => [item, minutes]));
  return {
    leftOut: named(left, ({ item }) => adds.get(item) ?? 0).map(
      (one): LeftOut => ({ ...one, needs: enters.get(one.item) ?? null }),
    ),
    needsStep: step,
  };
}
