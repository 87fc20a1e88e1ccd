/**
 * No plan for this work takes less: the minutes of every item and second look, of every part that no way in can spare,
 * and one change for every posture but one that some job cannot do without.
 */
import type { State } from '../book/index.ts';
import type { Kart, PartId } from '../kart/index.ts';
import { POSTURE_MINUTES, postureOf } from './order.ts';
import type { Job, Work } from './work.ts';

/** Of all hands together. */
export const workBound = (kart: Kart, state: State, work: Work, minutes: (job: Job) => number): number => {
  let sum = 0;
  const postures = new Set<string>();
  for (const job of work.jobs) {
    const sure = !('part' in job) || isForced(kart, state, work, job.part.id);
    if (!sure) continue;
    sum += minutes(job);
    const posture = postureOf(job);
    if (posture !== 'any' && posture !== state.posture) postures.add(posture);
  }
  return sum + postures.size * POSTURE_MINUTES;
};

/** Must it come off whatever way is taken? It lies off already, or some item or forced part has it in every alternative. */
const isForced = (kart: Kart, state: State, work: Work, id: PartId, seen: ReadonlySet<PartId> = new Set()): boolean => {
  if (state.parts[id]?.on === false) return true;
  if (seen.has(id)) return false;
  const within = new Set([...seen, id]);
  const inEvery = (ways: readonly (readonly PartId[])[]): boolean => ways.length > 0 && ways.every(w => w.includes(id));
  return (
    work.jobs.some(j => j.is === 'item' && inEvery(j.item.needsOff)) ||
    [...work.off].some(p => inEvery(kart.parts[p]?.behind ?? []) && isForced(kart, state, work, p, within))
  );
};
