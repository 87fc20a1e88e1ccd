/** The rows of a draft as steps: numbered, each with when, by whom, what it waits for and why it stands there. */
import type { State } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import type { Draft, Hands } from './draft.ts';
import type { PlanWindow, Step, WhyNow, WindowShown } from './model.ts';
import { postureOf } from './order.ts';
import { bareStep, postureStep, stepOf } from './step.ts';
import { peopleFor, type Row } from './timetable.ts';
import type { Job } from './work.ts';

type Beside = {
  /** Steps before the first of these. */
  readonly from: number;
  /** Minutes to close up after each row. */
  readonly closing: readonly number[];
  readonly whyNow: (row: Row, place: number) => readonly WhyNow[];
};

export function stepsOf(
  kart: Kart,
  state: State,
  { work, table }: Draft,
  hands: Hands,
  { from, closing, whyNow }: Beside,
): Step[] {
  const numberOf = numbersOf(table.rows, from);
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
      whyNow: [],
    };
    const why = (): readonly WhyNow[] => whyNow(row, i);
    if ('posture' in placed) {
      lastPosture = n;
      offSide = wasOnSide;
      wasOnSide = placed.posture === 'side';
      const helpers = Math.max(0, (kart.postures?.[placed.posture]?.people ?? 1) - hands.people);
      const after = i === 0 ? [] : [n - 1];
      const place = { ...when, n, after, state: i === 0 ? 'ready' : 'waiting', helpers, timing: null } as const;
      return withReasons(postureStep(kart, placed.posture, end - start, place), why);
    }
    const job = work.jobs[placed.job] as Job;
    const after = (work.before[placed.job] ?? []).flatMap(b => numberOf.get(b) ?? []);
    if (lastPosture !== undefined && (offSide || postureOf(job) !== 'any')) after.push(lastPosture);
    after.sort((a, b) => a - b);
    const step = stepOf(kart, state, job, { ...bareStep, n, after, state: after.length === 0 ? 'ready' : 'waiting' });
    const learnt = hands.timing(job.key, step.minutes);
    const helpers = Math.max(0, peopleFor(job) - hands.people);
    const timing = learnt.timings > 0 ? learnt : null;
    return withReasons({ ...step, ...when, minutes: end - start, helpers, timing }, why);
  });
}

/** Why each row stands where it stands takes three times as long as the plan, and few are asked for: worked out when it is read. */
function withReasons(step: Step, why: () => readonly WhyNow[]): Step {
  let known: readonly WhyNow[] | undefined;
  return Object.defineProperty(step, 'whyNow', {
    enumerable: true,
    get() {
      known ??= why();
      return known;
    },
  });
}

/** The step number of each job. */
export const numbersOf = (rows: readonly Row[], from: number): ReadonlyMap<number, number> =>
  new Map(rows.flatMap(({ placed }, i) => ('job' in placed ? [[placed.job, from + i + 1] as const] : [])));

function windowOf(windows: readonly number[], { end }: Row): number | null {
  let to = 0;
  const n = windows.findIndex(minutes => {
    to += minutes;
    return end <= to + 1e-9;
  });
  return n < 0 ? null : n + 1;
}

/** How far each working time is filled. */
export function filled(windows: readonly PlanWindow[], rows: readonly Row[]): readonly WindowShown[] {
  let from = 0;
  return windows.map((window, n) => {
    const to = from + window.minutes;
    const within = rows.filter(({ start, end }) => start >= from - 1e-9 && end <= to + 1e-9 && end > start);
    const last = Math.max(from, ...within.map(({ end }) => end));
    from = to;
    return { ...window, n: n + 1, used: last - (to - window.minutes) };
  });
}
