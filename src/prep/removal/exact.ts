/**
 * The shortest closed plan, proven: best-first search (A*, Hart, Nilsson and Raphael 1968) over what is off, what is done
 * and how the kart stands. Work that can only be better now than later is done at once and without branching:
 *  E1 a job that forbids nothing still of use
 *  E2 putting back what nothing can need off any more
 *  E3 taking off what must come off, when no job still wants it on and nothing may be done before that it would spoil
 */

import { heap } from './heap.ts';
import { bits, isOpen, type MaskJob, type Masks } from './masks.ts';

export type Move = { readonly kind: 'remove' | 'back' | 'job' | 'posture'; readonly index: number };

export type Exact =
  | { readonly kind: 'found'; readonly minutes: number; readonly moves: readonly Move[] }
  | { readonly kind: 'no plan' }
  /** The effort ended: every plan takes at least `bound`. */
  | { readonly kind: 'stopped'; readonly bound: number };

type State = { readonly off: number; readonly done: number; readonly posture: number };
type Kept = { minutes: number; from: number; move: Move | undefined };

/** Does exactly the jobs of `wanted` that are not done yet, and ends with everything on. */
export const shortest = (masks: Masks, wanted: number, effort: number): Exact => {
  const { parts, jobs, postures, start, end } = masks;
  const target = wanted | start.done;
  const shift = 2 ** parts.length;
  const keyOf = (s: State): number => (s.done * shift + s.off) * postures.count + s.posture;
  const stateOf = (key: number): State => {
    const posture = key % postures.count;
    const rest = (key - posture) / postures.count;
    const off = rest % shift;
    return { off, done: (rest - off) / shift, posture };
  };
  const known = new Map<number, Kept>();
  const queue = heap<{ readonly key: number; readonly minutes: number; readonly least: number }>(
    (a, b) => a.least - b.least || b.minutes - a.minutes,
  );
  const reachState = (s: State, minutes: number, from: number, move: Move | undefined): void => {
    const key = keyOf(s);
    const before = known.get(key);
    if (before && before.minutes <= minutes) return;
    const least = minutes + leastFrom(masks, s, target);
    if (least === Number.POSITIVE_INFINITY) return;
    known.set(key, { minutes, from, move });
    queue.push({ key, minutes, least });
  };

  reachState({ off: start.off, done: start.done, posture: start.posture }, 0, -1, undefined);
  let looked = 0;
  for (let next = queue.pop(); next; next = queue.pop()) {
    const { key, minutes } = next;
    if ((known.get(key)?.minutes ?? 0) < minutes) continue;
    const s = stateOf(key);
    if (s.off === 0 && s.done === target && (end < 0 || end === s.posture))
      return { kind: 'found', minutes, moves: movesTo(known, key) };
    if (++looked > effort) return { kind: 'stopped', bound: next.least };
    const useful = usefulOff(masks, s, target);
    const go = (move: Move): void => {
      const then = after(masks, s, move);
      reachState(then.state, minutes + then.minutes, key, move);
    };
    const now = atOnce(masks, s, target, useful);
    if (now) {
      go(now);
      continue;
    }
    for (const [index, job] of jobs.entries()) if (mayDo(job, s, target)) go({ kind: 'job', index });
    for (const [index, part] of parts.entries()) {
      if (part.posture >= 0 && part.posture !== s.posture) continue;
      if (s.off & part.bit) {
        if (isOpen(part.access, s.off & ~part.bit)) go({ kind: 'back', index });
      } else if (useful & part.bit && !(s.done & part.notAfter) && isOpen(part.access, s.off))
        go({ kind: 'remove', index });
    }
    for (let p = 0; p < postures.count; p++) if (p !== s.posture) go({ kind: 'posture', index: p });
  }
  return { kind: 'no plan' };
};

const after = (masks: Masks, s: State, { kind, index }: Move): { readonly state: State; readonly minutes: number } => {
  const part = masks.parts[index];
  const job = masks.jobs[index];
  if (kind === 'posture') return { state: { ...s, posture: index }, minutes: masks.postures.minutes(s.posture, index) };
  if (kind === 'job') return { state: { ...s, done: s.done | (job?.bit ?? 0) }, minutes: job?.minutes ?? 0 };
  return kind === 'remove'
    ? { state: { ...s, off: s.off | (part?.bit ?? 0) }, minutes: part?.remove ?? 0 }
    : { state: { ...s, off: s.off & ~(part?.bit ?? 0) }, minutes: part?.back ?? 0 };
};

const mayDo = (job: MaskJob, s: State, target: number): boolean =>
  (target & job.bit) !== 0 &&
  (s.done & job.bit) === 0 &&
  (job.posture < 0 || job.posture === s.posture) &&
  (job.after & ~s.done) === 0 &&
  (job.on & s.off) === 0 &&
  !(job.complete && s.off !== 0) &&
  isOpen(job.ways, s.off);

/** Parts that it can still help to have off: for a job that is left, or to put back what is off; by any way. */
const usefulOff = (masks: Masks, s: State, target: number): number => {
  let useful = 0;
  for (const job of masks.jobs) if (target & job.bit & ~s.done) for (const way of job.ways) useful |= way;
  return withAllBefore(masks, useful | behindOff(masks, s.off));
};

/** What stands before the parts that are off, by any way. */
const behindOff = (masks: Masks, off: number): number => {
  let before = 0;
  for (const part of masks.parts) if (off & part.bit) for (const way of part.access) before |= way;
  return before;
};

const withAllBefore = (masks: Masks, set: number): number => {
  let all = set;
  for (let grew = true; grew; ) {
    const next = all | behindOff(masks, all);
    grew = next !== all;
    all = next;
  }
  return all;
};

/** A move after which some shortest plan goes on. */
const atOnce = (masks: Masks, s: State, target: number, useful: number): Move | undefined => {
  for (const [index, job] of masks.jobs.entries())
    if (mayDo(job, s, target)) {
      const later = usefulOff(masks, { ...s, done: s.done | job.bit }, target);
      if ((job.spoiledBy & later) === 0) return { kind: 'job', index }; // E1
    }
  let wantedOn = 0;
  let before = -1; // parts that every job which needs the whole kart would spoil
  for (const job of masks.jobs) {
    if (!(target & job.bit & ~s.done)) continue;
    wantedOn |= job.on;
    if (job.complete) before &= job.spoiledBy;
  }
  const must = mustComeOff(masks, s, target) & ~s.off & ~wantedOn & before;
  for (const [index, part] of masks.parts.entries()) {
    if (part.posture >= 0 && part.posture !== s.posture) continue;
    if (s.off & part.bit) {
      if (!(useful & part.bit) && isOpen(part.access, s.off & ~part.bit)) return { kind: 'back', index }; // E2
    } else if (must & part.bit && !(s.done & part.notAfter) && isOpen(part.access, s.off))
      return { kind: 'remove', index }; // E3
  }
  return undefined;
};

/** Parts that are off at some time from now on in every plan. */
const mustComeOff = (masks: Masks, s: State, target: number): number => {
  let must = 0;
  for (const job of masks.jobs) if (target & job.bit & ~s.done) must |= job.must;
  for (const part of masks.parts) if (s.off & part.bit) must |= part.must;
  return must;
};

/** No plan from here takes less: jobs left, what is off put back, what must come off, the dearest choice, the postures. */
const leastFrom = (masks: Masks, s: State, target: number): number => {
  const must = mustComeOff(masks, s, target);
  let minutes = 0;
  let set = 0;
  let dearest = 0;
  const stand = (posture: number): void => {
    if (posture >= 0) set |= 1 << posture;
  };
  for (const part of masks.parts) {
    if (s.off & part.bit) minutes += part.back;
    else if (must & part.bit) {
      if (s.done & part.notAfter) return Number.POSITIVE_INFINITY;
      minutes += part.remove + part.back;
    } else continue;
    stand(part.posture);
  }
  for (const job of masks.jobs) {
    if (!(target & job.bit & ~s.done)) continue;
    minutes += job.minutes;
    stand(job.posture);
    const choice = Math.min(...job.whole.map(way => costOf(masks, way & ~must & ~s.off)));
    if (job.whole.length > 1 && choice > dearest) dearest = choice;
  }
  return minutes + dearest + masks.postures.through(s.posture, set, masks.end);
};

const costOf = (masks: Masks, set: number): number =>
  bits(set).reduce((sum, p) => sum + (masks.parts[p]?.remove ?? 0) + (masks.parts[p]?.back ?? 0), 0);

const movesTo = (known: ReadonlyMap<number, Kept>, last: number): Move[] => {
  const moves: Move[] = [];
  for (let at = known.get(last); at?.move; at = known.get(at.from)) moves.push(at.move);
  return moves.reverse();
};
