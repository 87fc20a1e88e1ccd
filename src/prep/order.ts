/**
 * One person, one thing at a time: of what may be done next, take the kind of work that belongs first (strip, work
 * while it is open, close, measure, try, walk round), in the posture the kart is in, safety first, system by system.
 */
import { GRADES, type Grade, type Posture, SYSTEMS, type System } from '../kart/index.ts';
import { pathRank } from './due.ts';
import type { Job, Work } from './work.ts';

export type Placed = { readonly job: number } | { readonly posture: Posture };

export const systemOf = (job: Job): System => ('part' in job ? job.part.system : job.item.system);
export const gradeOf = (job: Job): Grade => ('part' in job ? 'safety' : job.item.grade);
export const postureOf = (job: Job): Posture | 'any' => {
  if ('part' in job) return job.is === 'take-off' ? job.part.takeOff.posture : job.part.refit.posture;
  return job.item.posture;
};
export const minutesOf = (job: Job): number => {
  if ('part' in job) return job.is === 'take-off' ? job.part.takeOff.minutes : job.part.refit.minutes;
  return job.is === 'second-look' ? secondLookMinutes(job.item.minutes) : job.item.minutes;
};

/** A second look is a look, not the work again: a third of the item's minutes, one at least; common practice. */
export const secondLookMinutes = (minutes: number): number => Math.max(1, Math.round(minutes / 3));

/**
 * Strip · work · close · measure and try · walk round. A second look that something would close over comes with the
 * closing. What is done on the kart's side comes straight after the strip, before oil, fuel and coolant are in it again,
 * and its second look before the kart comes down.
 */
const phaseOf = (job: Job, work: Work, closes: boolean): number => {
  switch (job.is) {
    case 'take-off':
      return 0;
    case 'refit':
      return 2;
    case 'second-look':
      if (job.item.posture === 'side') return 0.5;
      return closes ? 2.5 : 5;
    case 'item':
      if (isFirstLook(job)) return -1;
      if (job.item.complete) return job.item.action === 'replace' ? 3.5 : 4; // filled with fuel before the engine is tried
      if (job.item.posture === 'side' && !job.item.joint) return 0.5;
      if (job.item.joint) return 2;
      return work.off.has(job.item.part) && job.item.needsOff.length === 0 ? 3 : 1;
  }
};

/** After an impact the way of the blow is looked at before anything else is touched, where it can be seen as it stands. */
const isFirstLook = (job: Extract<Job, { item: unknown }>): boolean =>
  job.due?.cause === 'impact' &&
  job.due.path !== undefined &&
  job.item.grade === 'safety' &&
  job.item.joint === undefined &&
  !job.item.complete &&
  job.item.needsOff.length === 0;

/** @throws Error when the work goes in a circle; a kart that the reader accepted never does. */
export const order = (work: Work, start: Posture | undefined): Placed[] => {
  const n = work.jobs.length;
  const waits = work.before.map(b => b.length);
  const then: number[][] = work.jobs.map(() => []);
  work.before.forEach((b, i) => {
    for (const a of b) then[a]?.push(i);
  });
  const ranks = work.jobs.map((job, i) => rankOf(job, i, n, work, (then[i]?.length ?? 0) > 0));
  const phases = ranks.map(([phase]) => phase ?? 0);
  const place: number[] = []; // of each job, were there neither phases nor postures
  work.jobs
    .map((_, i) => i)
    .sort((a, b) => compare(ranks[a] ?? [], ranks[b] ?? []))
    .forEach((i, k) => {
      place[i] = k;
    });
  const postures = work.jobs.map(postureOf);
  const ready = new Set<number>();
  waits.forEach((w, i) => {
    if (w === 0) ready.add(i);
  });

  const placed: Placed[] = [];
  let posture = start;
  for (let done = 0; done < n; done++) {
    let best = -1;
    let least = Number.POSITIVE_INFINITY;
    for (const i of ready) {
      // Phases are half a unit apart or more, so that a posture never weighs as much as a phase, nor a place as much as a posture.
      const wanted = ((phases[i] ?? 0) * 4 + moves(postures[i], posture)) * n + (place[i] ?? 0);
      if (wanted >= least) continue;
      least = wanted;
      best = i;
    }
    if (best < 0)
      throw new Error(
        `order: work must have an order, got a circle among ${work.jobs
          .filter((_, i) => (waits[i] ?? 0) > 0)
          .map(j => j.key)
          .join(', ')}`,
      );
    const wanted = postureFor(postures[best], posture);
    if (wanted !== undefined && wanted !== posture) {
      posture = wanted;
      placed.push({ posture });
    }
    placed.push({ job: best });
    ready.delete(best);
    for (const i of then[best] ?? []) {
      const left = (waits[i] ?? 0) - 1;
      waits[i] = left;
      if (left === 0) ready.add(i);
    }
  }
  return placed;
};

/** After the phase: the first figure in which they differ. */
const compare = (a: readonly number[], b: readonly number[]): number => {
  for (let k = 1; k < a.length; k++) if (a[k] !== b[k]) return (a[k] ?? 0) - (b[k] ?? 0);
  return 0;
};

/** Work that fits any posture is still not done on a kart that lies on its side: it comes back on the stand first. */
export const postureFor = (wanted: Posture | 'any' | undefined, now: Posture | undefined): Posture | undefined =>
  wanted !== undefined && wanted !== 'any' ? wanted : now === 'side' ? 'stand' : now;

const moves = (wanted: Posture | 'any' | undefined, now: Posture | undefined): number =>
  postureFor(wanted, now) === now ? 0 : 1;

const rankOf = (job: Job, index: number, n: number, work: Work, closes: boolean): number[] => {
  const phase = phaseOf(job, work, closes);
  const system = SYSTEMS.indexOf(systemOf(job));
  const grade = GRADES.indexOf(gradeOf(job));
  // Strip from the outside in, which is the walk round backwards; the second walk-round also goes the other way.
  if (job.is === 'take-off') return [phase, 0, 0, -system, -index];
  if (job.is === 'second-look') return [phase, 0, grade, -system, n - index];
  const impact = job.is === 'item' && job.due?.cause === 'impact' ? 0 : 1;
  const path = job.is === 'item' && job.due ? pathRank(job.due) : 0;
  return [phase, impact, grade, path, system, index];
};
