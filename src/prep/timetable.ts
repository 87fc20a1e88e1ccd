/**
 * When each row is done, in minutes of work from the first hand on the kart, and by whom. Alone, rows follow each other in
 * the order in which they are read. A row does not go on from one window into the next.
 */
import { type Kart, leastPostureMinutes, POSTURES, type Posture, postureMinutes } from '../kart/index.ts';
import { type Placed, postureFor, postureOf } from './order.ts';
import { asWished, type Effort, type Schedule, solving, takingTurns, ticksAsWished } from './schedule/index.ts';
import type { Job, Work } from './work.ts';

export type Row = {
  readonly placed: Placed;
  readonly start: number;
  readonly end: number;
  readonly people: readonly number[]; // counted from 0
};
export type Timetable = {
  readonly rows: readonly Row[];
  readonly span: number;
  /** No timetable of this work for these hands is shorter; undefined where only the work itself says so. */
  readonly bound?: { readonly minutes: number; readonly by: string };
};

/** Half a minute: the finest that work is planned in. */
const TICK = 0.5;
export const inTicks = (minutes: number): number => Math.ceil(minutes / TICK - 1e-9);
export const inMinutes = (ticks: number): number => ticks * TICK;

export type Ways = {
  readonly people: number;
  readonly windows: readonly number[]; // minutes of each
  readonly minutes: (job: Job) => number;
  /** The posture the kart stands in at first. */
  readonly posture: Posture | undefined;
};

/** One person, row after row. */
export function alone(kart: Kart, work: Work, placed: readonly Placed[], ways: Ways): Timetable {
  const rows: Row[] = [];
  const ticks = aloneTicks(kart, work, placed, ways, (placed, start, end) =>
    rows.push({ placed, start: inMinutes(start), end: inMinutes(end), people: [0] }),
  );
  return { rows, span: inMinutes(ticks) };
}

function aloneTicks(
  kart: Kart,
  work: Work,
  placed: readonly Placed[],
  { windows, minutes, posture: first }: Ways,
  row: (placed: Placed, start: number, end: number) => void = () => undefined,
): number {
  let end = 0;
  const ends = windows.slice(0, -1).map(one => {
    end += inTicks(one);
    return end;
  });
  let now = 0;
  let posture = first;
  for (const one of placed) {
    const turns = 'posture' in one;
    const ticks = inTicks(turns ? postureMinutes(kart, posture, one.posture) : minutes(work.jobs[one.job] as Job));
    if (turns) posture = one.posture;
    let start = now;
    for (const end of ends) if (start < end && start + ticks > end) start = end;
    now = start + ticks;
    row(one, start, now);
  }
  return now;
}

/** Minutes alone, and together, without the rows: many are asked for when choosing. */
export const aloneTakes = (kart: Kart, work: Work, placed: readonly Placed[], ways: Ways): number =>
  inMinutes(aloneTicks(kart, work, placed, ways));
export const togetherTakes = (kart: Kart, work: Work, placed: readonly Placed[], ways: Ways): number =>
  inMinutes(ticksAsWished(asProblem(kart, work, placed, ways)));

/** Minutes of the work in other orders, by the same hands; each row waits for those listed before it to have begun. */
export function takesInOrder(kart: Kart, work: Work, ways: Ways): (order: readonly number[]) => number {
  if (ways.people === 1) return order => aloneTakes(kart, work, withPostures(work, order, ways.posture), ways);
  const takes = takingTurns(asProblem(kart, work, [], ways));
  return order => inMinutes(takes(order));
}

function withPostures(work: Work, order: readonly number[], start: Posture | undefined): readonly Placed[] {
  let posture = start;
  return order.flatMap((job): readonly Placed[] => {
    const wanted = postureFor(postureOf(work.jobs[job] as Job), posture);
    if (wanted === undefined || wanted === posture) return [{ job }];
    posture = wanted;
    return [{ posture: wanted }, { job }];
  });
}

/** No timetable of this work is shorter: what there is to do for each hand, and a turn of the kart for each posture wanted. */
export function leastSpan(kart: Kart, work: Work, { people, minutes, posture }: Ways): number {
  const postures = new Set(work.jobs.map(postureOf).filter((one): one is Posture => one !== 'any' && one !== posture));
  const ticks = work.jobs.reduce((sum, job) => sum + inTicks(minutes(job)) * Math.min(people, peopleFor(job)), 0);
  const turns = [...postures].reduce((sum, one) => sum + inTicks(leastPostureMinutes(kart, one)), 0);
  return inMinutes(Math.ceil(ticks / people) + turns);
}

/** Several people: rows side by side where posture, tools and what waits for what allow, in the order that is wished. */
export function together(kart: Kart, work: Work, placed: readonly Placed[], ways: Ways): Timetable {
  return written(work, placed, ways, asWished(asProblem(kart, work, placed, ways)));
}

/**
 * The same searched for, in the order wished where it costs nothing. Yields the best so far each time a shorter one is
 * found; the last is the best.
 */
export function* searching(
  kart: Kart,
  work: Work,
  placed: readonly Placed[],
  ways: Ways,
  effort: Effort,
): Generator<Timetable> {
  let shortest = Number.POSITIVE_INFINITY;
  const steps = solving(asProblem(kart, work, placed, ways), effort);
  for (;;) {
    const { done, value } = steps.next();
    if (done || value.makespan < shortest) yield written(work, placed, ways, value);
    if (done) return;
    shortest = Math.min(shortest, value.makespan);
  }
}

type Timed = Omit<Schedule, 'bound'> & Partial<Pick<Schedule, 'bound'>>;

function written(work: Work, placed: readonly Placed[], ways: Ways, plan: Timed): Timetable {
  const wished = new Map(placed.flatMap((one, n) => ('job' in one ? [[one.job, n] as const] : [])));
  const everyone = Array.from({ length: ways.people }, (_, n) => n);
  const jobs = work.jobs.map((job, n): Row => {
    const start = plan.start[n] ?? 0;
    const end = start + inTicks(ways.minutes(job));
    return { placed: { job: n }, start: inMinutes(start), end: inMinutes(end), people: plan.kart?.people[n] ?? [] };
  });
  const turns = (plan.kart?.changes ?? []).map(
    ({ at, ticks, to }): Row => ({
      placed: { posture: POSTURES[to] ?? 'stand' },
      start: inMinutes(at),
      end: inMinutes(at + ticks),
      people: everyone,
    }),
  );
  // A turn of the kart stands before what starts as it ends, and what takes no time where it was wished.
  const place = ({ placed: one }: Row): number => ('job' in one ? (wished.get(one.job) ?? 0) : -1);
  return {
    rows: [...turns, ...jobs].sort((a, b) => a.start - b.start || a.end - b.end || place(a) - place(b)),
    span: inMinutes(plan.makespan),
    ...(plan.bound && { bound: { minutes: inMinutes(plan.bound.ticks), by: plan.bound.by } }),
  };
}

/** The same work as a problem for more hands: who works, and each instrument of the list that there is one of. */
function asProblem(
  kart: Kart,
  work: Work,
  placed: readonly Placed[],
  { people, windows, minutes, posture }: Ways,
): Parameters<typeof asWished>[0] {
  const tools = sharedTools(kart, work);
  const index = new Map(work.jobs.map((job, n) => [job.key, n]));
  return {
    capacity: tools.map(() => 1),
    activities: work.jobs.map((job, n) => {
      const crew = Math.min(people, peopleFor(job));
      const wanted = postureOf(job);
      const first = job.is === 'second-look' ? index.get(`${job.item.action} ${job.item.id}`) : undefined;
      return {
        id: job.key,
        ticks: inTicks(minutes(job)),
        needs: tools.map(tool => (toolsOf(job).includes(tool) ? 1 : 0)),
        after: work.before[n] ?? [],
        crew,
        // Work that fits any posture is still not done on a kart that lies on its side.
        postures:
          wanted === 'any' ? POSTURES.flatMap((one, k) => (one === 'side' ? [] : [k])) : [POSTURES.indexOf(wanted)],
        ...(first === undefined ? {} : { looksAt: first }),
      };
    }),
    order: placed.flatMap(one => ('job' in one ? [one.job] : [])),
    kart: {
      people,
      change: POSTURES.map(from => POSTURES.map(to => inTicks(postureMinutes(kart, from, to)))),
      posture: posture === undefined ? -1 : POSTURES.indexOf(posture),
      unknown: POSTURES.map(to => inTicks(postureMinutes(kart, undefined, to))),
      ...(windows.length > 0 && { windows: windows.map(inTicks) }),
    },
  };
}

/** How many people a row takes, whether there are so many or not. */
export const peopleFor = (job: Job): number => {
  if ('part' in job) return (job.is === 'take-off' ? job.part.takeOff.people : job.part.refit.people) ?? 1;
  return job.is === 'second-look' ? 1 : (job.item.people ?? 1);
};

const toolsOf = (job: Job): readonly string[] => {
  if ('part' in job) return job.is === 'take-off' ? job.part.takeOff.tools : job.part.refit.tools;
  return job.is === 'second-look' ? [] : job.item.tools;
};

/** Instruments of the list are dear, and there is one of each; of spanners and cloths there are more. Common practice. */
function sharedTools(kart: Kart, work: Work): readonly string[] {
  const instruments = kart.instruments ?? {};
  const wanted = new Map<string, number>();
  for (const job of work.jobs)
    for (const tool of toolsOf(job)) if (instruments[tool]) wanted.set(tool, (wanted.get(tool) ?? 0) + 1);
  return Object.keys(instruments).filter(tool => (wanted.get(tool) ?? 0) > 1);
}
