/**
 * No plan for this work takes less: the minutes of every item and second look, of every part that no way in can spare,
 * and one change for every posture but one that some job cannot do without.
 */
import type { State } from '../book/index.ts';
import { type Kart, leastPostureMinutes, type PartId, type Posture } from '../kart/index.ts';
import { postureOf } from './order.ts';
import type { Job, Work } from './work.ts';

/** Of all hands together. */
export const workBound = (kart: Kart, state: State, work: Work, minutes: (job: Job) => number): number => {
  let sum = 0;
  const postures = new Set<Posture>();
  const sureParts = forced(kart, state, work);
  for (const job of work.jobs) {
    const sure = !('part' in job) || sureParts.has(job.part.id);
    if (!sure) continue;
    sum += minutes(job);
    const posture = postureOf(job);
    if (posture !== 'any' && posture !== state.posture) postures.add(posture);
  }
  return [...postures].reduce((all, one) => all + leastPostureMinutes(kart, one), sum);
};

/** The parts that come off whatever way is taken: they lie off already, or some item or such a part has them in every alternative. */
function forced(kart: Kart, state: State, work: Work): ReadonlySet<PartId> {
  const found = new Set([...work.off].filter(id => state.parts[id]?.on === false));
  for (const job of work.jobs) if (job.is === 'item') for (const id of inEvery(job.item.needsOff)) found.add(id);
  for (const id of found) for (const other of inEvery(kart.parts[id]?.behind ?? [])) found.add(other); // grows while it is walked
  return found;
}

const inEvery = ([first, ...others]: readonly (readonly PartId[])[]): readonly PartId[] =>
  (first ?? []).filter(id => others.every(way => way.includes(id)));
