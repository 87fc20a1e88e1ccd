/** A whole plan for some of what is due, worked out but not yet written down as steps. */
import type { State } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import type { Due } from './model.ts';
import { minutesOf, order, type Placed } from './order.ts';
import type { Effort } from './schedule/index.ts';
import { alone, aloneTakes, searching, type Timetable, together, togetherTakes } from './timetable.ts';
import type { Timing } from './timing/index.ts';
import { type Job, type Work, workFor } from './work.ts';

export type Hands = {
  readonly people: number; // 1 to 3
  readonly windows: readonly number[]; // minutes of each
  readonly timing: Timing;
};
export type Draft = {
  readonly due: readonly Due[];
  readonly work: Work;
  readonly placed: readonly Placed[];
  readonly table: Timetable;
  readonly minutes: number; // of all hands
};

/** Safety is planned with what such work takes when it goes slowly, the rest with what it usually takes. */
export const minutesWith =
  (timing: Timing) =>
  (job: Job): number => {
    const planned = minutesOf(job);
    const { typical, slow } = timing(job.key, planned);
    return 'part' in job || job.item.grade === 'safety' ? slow : typical;
  };

/** A plan for all of these, found without a search. */
export function draftOf(kart: Kart, state: State, due: readonly Due[], hands: Hands): Draft {
  const work = workFor(kart, state, due);
  const placed = order(work, state.posture);
  let table: Timetable | undefined;
  for (const one of quickly(kart, state, work, placed, hands)) if (!table || one.span < table.span) table = one;
  if (table === undefined) throw new Error('draftOf: people must be 1 or more, got none');
  return { due, work, placed, table, minutes: minutesIn(table) };
}

/** Of all hands together, without turning the kart. */
export const minutesOfAll = (kart: Kart, state: State, due: readonly Due[], { timing }: Hands): number =>
  workFor(kart, state, due).jobs.reduce((sum, job) => sum + minutesWith(timing)(job), 0);

/** The draft for these hands searched further, the best so far first, with what no timetable can be shorter than. */
export function* drafting(kart: Kart, state: State, draft: Draft, hands: Hands, effort: Effort): Generator<Draft> {
  const { work, placed } = draft;
  let best = draft.table;
  for (let people = 2; people <= hands.people; people++)
    for (const { bound, ...one } of searching(kart, work, placed, waysOf(state, hands, people), effort)) {
      if (one.span < best.span) best = one;
      const table = { ...best, ...(bound && { bound }) };
      if (people === hands.people) yield { ...draft, table, minutes: minutesIn(table) };
    }
}

/** One for each number of people: another pair of hands never makes it longer, who is not needed stands by. */
function* quickly(kart: Kart, state: State, work: Work, placed: readonly Placed[], hands: Hands): Generator<Timetable> {
  if (hands.people >= 1) yield alone(kart, work, placed, waysOf(state, hands, 1));
  for (let people = 2; people <= hands.people; people++)
    yield together(kart, work, placed, waysOf(state, hands, people));
}

/** Minutes of the quickest of those, without its rows. */
export function quickestTakes(kart: Kart, state: State, work: Work, hands: Hands): number {
  const placed = order(work, state.posture);
  let least = aloneTakes(kart, work, placed, waysOf(state, hands, 1));
  for (let people = 2; people <= hands.people; people++)
    least = Math.min(least, togetherTakes(kart, work, placed, waysOf(state, hands, people)));
  return least;
}

export const waysOf = ({ posture }: State, { windows, timing }: Hands, people: number) => ({
  people,
  windows,
  minutes: minutesWith(timing),
  posture,
});

const minutesIn = ({ rows }: Timetable): number => rows.reduce((sum, row) => sum + row.end - row.start, 0);

export const roomIn = (windows: readonly number[]): number => windows.reduce((sum, one) => sum + one, 0);
