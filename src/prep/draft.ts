/** A whole plan for some of what is due, worked out but not yet written down as steps. */
import type { State } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import type { Due } from './model.ts';
import { minutesOf, order, type Placed } from './order.ts';
import type { Effort } from './schedule/index.ts';
import { alone, type Timetable, together } from './timetable.ts';
import type { Timing } from './timing/index.ts';
import { type Job, type Work, workFor } from './work.ts';

export type Hands = {
  readonly people: number; // 1 to 3
  readonly windows: readonly number[]; // minutes of each
  readonly timing: Timing;
  /** Timetables that are tried for more than one person; the same seed gives the same. */
  readonly effort: Effort;
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

export function draftOf(kart: Kart, state: State, due: readonly Due[], hands: Hands): Draft {
  let best: Draft | undefined;
  for (const draft of drafting(kart, state, due, hands)) best = draft;
  if (best === undefined) throw new Error('draftOf: people must be 1 or more, got none');
  return best;
}

/** The same, the best so far first; each is shorter than the one before or knows better how far from the best it is. */
export function* drafting(kart: Kart, state: State, due: readonly Due[], hands: Hands): Generator<Draft> {
  const work = workFor(kart, state, due);
  const placed = order(work, state.posture);
  for (const table of timetables(kart, state, work, placed, hands))
    yield { due, work, placed, table, minutes: table.rows.reduce((sum, row) => sum + row.end - row.start, 0) };
}

/** Another pair of hands never makes it longer: whoever is not needed stands by. */
function* timetables(
  kart: Kart,
  state: State,
  work: Work,
  placed: readonly Placed[],
  hands: Hands,
): Generator<Timetable> {
  const ways = { ...hands, minutes: minutesWith(hands.timing), posture: state.posture };
  let best = alone(work, placed, ways);
  if (hands.people === 1) yield best;
  for (let people = 2; people <= hands.people; people++)
    for (const { bound, ...one } of together(kart, work, placed, { ...ways, people }, hands.effort)) {
      if (one.span < best.span) best = one;
      if (people === hands.people) yield { ...best, ...(bound && { bound }) };
    }
}

export const fitsIn = ({ table }: Draft, windows: readonly number[]): boolean =>
  table.span <= windows.reduce((sum, one) => sum + one, 0) + 1e-9;
