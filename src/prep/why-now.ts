/** Why each row stands where it stands, and what leaving it to later would cost, found by planning it so. */
import type { State } from '../book/index.ts';
import type { Kart } from '../kart/index.ts';
import { type Draft, draftOf, type Hands, minutesWith, waysOf } from './draft.ts';
import type { WhyNow } from './model.ts';
import { postureOf } from './order.ts';
import { type Row, takesInOrder } from './timetable.ts';
import type { Job } from './work.ts';

/** @param numberOf the step number of a job of the work */
export function whyNow(
  kart: Kart,
  state: State,
  draft: Draft,
  hands: Hands,
  numberOf: (job: number) => number | undefined,
): (row: Row, place: number) => readonly WhyNow[] {
  const { work } = draft;
  const ends = new Map(
    draft.table.rows.flatMap(({ placed, end }) => ('job' in placed ? [[placed.job, end] as const] : [])),
  );
  const by = new Map(
    draft.table.rows.flatMap(({ placed, people }) =>
      'job' in placed ? [[work.jobs[placed.job]?.key ?? '', people] as const] : [],
    ),
  );
  let costs: ((job: number) => number) | undefined;
  const later = (job: number): number => {
    costs ??= laterCosts(kart, state, draft, hands);
    return costs(job);
  };
  const known = new Map<string, number>();
  /** What it would take by itself another time, over its own minutes: the way in that is shared now. */
  const byItself = (job: Extract<Job, { item: unknown }>): number => {
    const before = known.get(job.item.id);
    if (before !== undefined) return before;
    const due = draft.due.find(({ item }) => item === job.item.id);
    const single = due && draftOf(kart, { ...state, posture: 'stand' }, [due], hands);
    const own = minutesWith(hands.timing)(job);
    const minutes = single ? Math.max(0, single.minutes - own) : 0;
    known.set(job.item.id, minutes);
    return minutes;
  };
  const steps = (jobs: readonly number[]): readonly number[] => jobs.flatMap(job => numberOf(job) ?? []);

  return ({ placed, start, people }, place) => {
    if ('posture' in placed) return [postureBlock(draft, place, steps)];
    const job = work.jobs[placed.job] as Job;
    const before = work.before[placed.job] ?? [];
    const found: WhyNow[] = [];
    const waits = before.filter(one => start > 0 && ends.get(one) === start);
    if (waits.length > 0) found.push(said('waits for', waitsFor(work.jobs, waits), steps(waits)));
    if (job.is === 'item' && job.item.needsOff.length > 0) {
      const minutes = byItself(job);
      if (minutes > 0) found.push(said('open now', 'its way in is open now', [], minutes));
    }
    if ('item' in job && job.item.complete)
      found.push(said('must be last', 'only with everything on and every joint made', []));
    if (job.is === 'second-look')
      found.push(
        said(
          'second look',
          by.get(`${job.item.action} ${job.item.id}`)?.every(one => !people.includes(one))
            ? 'by another person than the first'
            : 'after other work, not at the same tap',
          [],
        ),
      );
    if (job.is === 'refit' || ('item' in job && job.item.joint !== undefined))
      found.push(said('closing', 'nothing goes back over it undone', []));
    const minutes = later(placed.job);
    if (minutes > 0 && postureOf(job) !== 'any')
      found.push(said('posture', 'with the others in this posture', [], minutes));
    if (found.length === 0 && hands.people > 1 && start > 0)
      found.push(said('person free', 'as soon as somebody was free for it', []));
    if (found.length === 0) found.push(said('order', 'nothing makes it wait; safety first, system by system', []));
    if (found.every(({ kind }) => kind !== 'posture'))
      found.push(said('later', 'as late as the others allow', [], minutes));
    return found;
  };
}

const said = (kind: WhyNow['kind'], say: string, steps: readonly number[], minutes: number | null = null): WhyNow => ({
  kind,
  say,
  steps,
  minutes,
});

const waitsFor = (jobs: readonly Job[], waits: readonly number[]): string => {
  const names = waits.slice(0, 2).map(n => {
    const job = jobs[n];
    return job === undefined
      ? ''
      : 'part' in job
        ? job.key.replace('-', ' ')
        : `${job.item.title.toLowerCase()} (${job.item.part})`;
  });
  return `${names.join(', ')}${waits.length > 2 ? ` and ${waits.length - 2} more` : ''} first`;
};

function postureBlock(
  { table, work }: Draft,
  place: number,
  steps: (jobs: readonly number[]) => readonly number[],
): WhyNow {
  const rest = table.rows.slice(place + 1);
  const end = rest.findIndex(({ placed }) => 'posture' in placed);
  const jobs = rest
    .slice(0, end < 0 ? rest.length : end)
    .flatMap(({ placed }) => ('job' in placed ? [placed.job] : []));
  const asked = jobs.filter(n => postureOf(work.jobs[n] as Job) !== 'any');
  return said('posture', `${asked.length} rows need it so, one after the other`, steps(asked.slice(0, 3)));
}

/**
 * Minutes more with a row as late as the others allow: the same order with that row moved, gone through by the same hands,
 * against the order as it is gone through the same way. No search on either side, so that only the row makes the difference.
 */
function laterCosts(kart: Kart, state: State, draft: Draft, hands: Hands): (job: number) => number {
  const { work } = draft;
  const then: number[][] = work.jobs.map(() => []);
  work.before.forEach((before, n) => {
    for (const one of before) then[one]?.push(n);
  });
  const order = draft.table.rows.flatMap(({ placed: one }) => ('job' in one ? [one.job] : []));
  const takes = takesInOrder(kart, work, waysOf(state, hands, hands.people));
  const now = takes(order);
  return job => {
    const after = new Set<number>([job]);
    for (const one of after) for (const next of then[one] ?? []) after.add(next); // grows while it is walked
    const late = [...order.filter(n => !after.has(n)), job, ...order.filter(n => after.has(n) && n !== job)];
    return Math.max(0, takes(late) - now);
  };
}
