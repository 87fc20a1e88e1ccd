/**
 * All the jobs in the fewest minutes, one thing at a time: proven for small work, else on the least removal with few
 * changes of posture, and a bound that no plan can beat.
 */
import { partMinutes, type Work, type WorkJob, type WorkStep } from './bare-work.ts';
import { type Move, shortest } from './exact.ts';
import { type Access, leastRemoval, sureToComeOff } from './least.ts';
import { bits, fits, type Masks, masksOf } from './masks.ts';
import { type Postures, posturesOf } from './postures.ts';
import { tasksOf } from './tasks.ts';
import { leastChanges, tour } from './tour.ts';

export type Steps =
  | {
      readonly kind: 'found';
      readonly minutes: number;
      /** No plan takes less; equal to `minutes` when that is proven. */
      readonly bound: number;
      /** All that is off at some time, in the order of its coming off, what lay off first. */
      readonly off: readonly string[];
      readonly steps: readonly WorkStep[];
    }
  /** `proven` when there is none; else none was found in which each part comes off once. */
  | { readonly kind: 'no plan'; readonly why: string; readonly proven: boolean };

/** States of the kart to look at before the search gives way to the quick order; and the effort of `leastRemoval`. */
export type StepsEffort = { readonly states: number; readonly removal: number };
const EFFORT: StepsEffort = { states: 60_000, removal: 30_000 };

const SPOILED = 'What is done already forbids to take off what is in the way.';

/** The shortest closed plan that does `wanted` (all jobs by default), which must name all that those come after. */
export const steps = (work: Work, wanted: readonly WorkJob[] = work.jobs, effort: StepsEffort = EFFORT): Steps => {
  const jobs = wanted.filter(job => !work.start.done.includes(job.id));
  const asked = onlyNeeded(work, jobs);
  if (!asked) return { kind: 'no plan', why: SPOILED, proven: true };
  if (!fits(asked)) return onLeastRemoval(asked, 0, effort.removal);
  const masks = masksOf(asked);
  const found = shortest(masks, 2 ** jobs.length - 1, effort.states);
  if (found.kind === 'found')
    return { kind: 'found', minutes: found.minutes, bound: found.minutes, ...inWords(asked, masks, found.moves) };
  if (found.kind === 'no plan') return { kind: 'no plan', why: whyNone(asked), proven: true };
  return onLeastRemoval(asked, found.bound, effort.removal);
};

/**
 * The work without the parts that no way to these jobs, and to what lies off, can need, without the ways through parts
 * that a job done already forbids to take off, and these jobs first. undefined when a job is left without a way.
 */
const onlyNeeded = (work: Work, jobs: readonly WorkJob[]): Work | undefined => {
  const done = work.jobs.filter(job => work.start.done.includes(job.id));
  const beside = new Set(work.start.off);
  const forbids = (id: string) => (j: WorkJob) =>
    j.needsComplete ? !j.keepAfter.includes(id) : j.invalidatedBy.includes(id);
  const stays = new Set(work.parts.map(p => p.id).filter(id => !beside.has(id) && done.some(forbids(id))));
  const left = (access: Access): Access => access.filter(way => !way.some(p => stays.has(p)));
  const shut = (access: Access): boolean => access.length > 0 && left(access).length === 0;
  if (stays.size > 0)
    for (let grew = true; grew; ) {
      grew = false;
      for (const part of work.parts)
        if (!stays.has(part.id) && shut(part.access)) {
          stays.add(part.id);
          grew = true;
        }
    }
  if (jobs.some(job => shut(job.needsRemoved)) || work.start.off.some(p => stays.has(p))) return undefined;
  const access = new Map(work.parts.map(part => [part.id, left(part.access)]));
  const open = jobs.map(job => ({ ...job, needsRemoved: left(job.needsRemoved) }));
  const used = new Set([...work.start.off, ...open.flatMap(job => job.needsRemoved.flat())]);
  for (const id of used) for (const next of access.get(id)?.flat() ?? []) used.add(next); // it grows while it is walked
  const parts = work.parts.flatMap(part => (used.has(part.id) ? [{ ...part, access: access.get(part.id) ?? [] }] : []));
  return { ...work, parts, jobs: [...open, ...done] };
};

const removalAsk = (work: Work, jobs: readonly WorkJob[]) => ({
  parts: work.parts.map(part => ({ id: part.id, access: part.access, minutes: partMinutes(part) })),
  wishes: jobs.map(job => ({ id: job.id, ways: job.needsRemoved })),
  lyingOff: work.start.off,
});

const onLeastRemoval = (work: Work, known: number, effort: number): Steps => {
  const jobs = work.jobs.filter(job => !work.start.done.includes(job.id));
  const ask = removalAsk(work, jobs);
  const removal = leastRemoval({ ...ask, effort });
  if (removal.kind === 'no way') return { kind: 'no plan', why: whyNone(work), proven: true };
  const byId = new Map(work.parts.map(part => [part.id, part]));
  const partsOf = (ids: readonly string[]) => ids.flatMap(id => byId.get(id) ?? []);
  const postures = posturesOf(work);
  const start = Math.max(0, postures.of(work.start.posture));
  const end = postures.of(work.end);
  const tasks = tasksOf(work, postures, {
    off: partsOf(removal.off),
    jobs,
    wayOf: removal.wayOf,
    sureOnly: false,
  });
  if (!tasks)
    return { kind: 'no plan', why: 'No order was found in which each part comes off only once.', proven: false };
  const ordered = tour(tasks, postures, start, end);
  const steps = walk(ordered.order, start, end, postures, work, n => tasks[n]?.step);
  const fixed =
    jobs.reduce((sum, job) => sum + job.minutes, 0) +
    partsOf(work.start.off).reduce((sum, part) => sum + part.refitMin + part.verifyMin, 0);
  return {
    kind: 'found',
    minutes: fixed + removal.minutes + ordered.minutes,
    bound: Math.max(known, fixed + removal.bound + leastPosture(work, jobs, postures, start, end)),
    off: removal.off,
    steps,
  };
};

/** The least minutes of posture changes in any plan: with the parts and the orders that no plan can spare. */
const leastPosture = (work: Work, jobs: readonly WorkJob[], postures: Postures, start: number, end: number): number => {
  const sure = sureToComeOff(removalAsk(work, jobs));
  const ways = new Map([
    ...work.parts.map(part => [`part ${part.id}`, part.access] as const),
    ...jobs.map(job => [`wish ${job.id}`, job.needsRemoved] as const),
  ]);
  const tasks = tasksOf(work, postures, {
    off: work.parts.filter(part => sure.has(part.id)),
    jobs,
    wayOf: (kind, id) => {
      const [first = [], ...others] = ways.get(`${kind} ${id}`) ?? [];
      return first.filter(p => others.every(way => way.includes(p)));
    },
    sureOnly: true,
  });
  return tasks ? leastChanges(tasks, postures, start, end) : 0;
};

const inWords = (work: Work, masks: Masks, moves: readonly Move[]) => {
  const off = new Set(bits(masks.start.off).map(n => work.parts[n]?.id ?? ''));
  for (const move of moves) if (move.kind === 'remove') off.add(work.parts[move.index]?.id ?? '');
  const step = (n: number): WorkStep | undefined => {
    const move = moves[n];
    const part = work.parts[move?.index ?? -1];
    const job = work.jobs[move?.index ?? -1];
    if (move?.kind === 'job') return job && { step: 'job', job: job.id, minutes: job.minutes };
    if (!part) return undefined;
    return move?.kind === 'remove'
      ? { step: 'remove', part: part.id, minutes: part.removeMin }
      : { step: 'refit and verify', part: part.id, minutes: part.refitMin + part.verifyMin };
  };
  const order = moves.map((move, n) => (move.kind === 'posture' ? -1 - move.index : n));
  return { off: [...off], steps: walk(order, masks.start.posture, masks.end, masks.postures, work, step) };
};

/** The steps in words, with each change of posture over whatever posture is quickest. */
const walk = (
  order: readonly number[],
  start: number,
  end: number,
  postures: Postures,
  work: Work,
  step: (n: number) => WorkStep | undefined,
): WorkStep[] => {
  let now = start;
  const change = (to: number): WorkStep[] =>
    postures.path(now, to).map(next => {
      const minutes = postures.minutes(now, next);
      now = next;
      return { step: 'posture', posture: work.postures[next] ?? '', minutes };
    });
  const all = order.flatMap(n => (n < 0 ? change(-1 - n) : (step(n) ?? [])));
  return end < 0 ? all : [...all, ...change(end)];
};

const whyNone = (work: Work): string => {
  const jobs = work.jobs.filter(job => !work.start.done.includes(job.id));
  const removal = leastRemoval({ ...removalAsk(work, jobs), effort: 0 });
  if (removal.kind === 'no way') {
    const names = [...removal.parts, ...removal.wishes].map(name => `"${name}"`).join(', ');
    return `Reached only by way of itself: ${names}.`;
  }
  return 'No order of the jobs keeps to what each needs off, needs on, comes after and is spoiled by.';
};
