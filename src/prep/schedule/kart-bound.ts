/**
 * What no plan at the kart can be shorter than: nobody works while its posture changes, so the cheapest way through the
 * postures that are wanted comes on top of what the work alone takes; and work in one posture waits for that in another.
 */
import { quickBound, refuted } from './bound.ts';
import type { Activity, AtTheKart, Bound, ScheduleProblem } from './model.ts';
import { pack } from './pack.ts';

/** @param plain the problem with its people as a resource, without the kart */
export function kartBound(plain: ScheduleProblem, kart: AtTheKart): Bound {
  const packed = pack(plain);
  const work = refuted(plain, packed, quickBound(plain, packed), packed.horizon);
  const apart = postureByPosture(plain);
  const most = apart > work.ticks ? { ticks: apart, by: 'posture by posture' } : work;
  const tour = cheapestTour(plain.activities, kart);
  return tour === 0 ? most : { ticks: most.ticks + tour, by: `${most.by} and changes of posture` };
}

/** Sum, over the postures, of what the work takes that can be done in that one only. */
function postureByPosture(plain: ScheduleProblem): number {
  const only = plain.activities.map(a => (a.postures?.length === 1 ? a.postures[0] : undefined));
  const wanted = [...new Set(only)].filter(p => p !== undefined);
  return wanted.reduce((sum, p) => {
    const place = new Map<number, number>();
    only.forEach((q, i) => {
      if (q === p) place.set(i, place.size);
    });
    const activities = plain.activities
      .filter((_, i) => only[i] === p)
      .map(a => ({ ...a, after: a.after.flatMap(i => place.get(i) ?? []) }));
    const part = { capacity: plain.capacity, activities };
    return sum + quickBound(part, pack(part)).ticks;
  }, 0);
}

/** More postures than this are not gone through; the bound then counts none of their changes. */
const MOST_POSTURES = 10;

/** Cheapest changes from the posture it stands in through one that suits each activity: shortest way over (been in, now in). */
function cheapestTour(activities: readonly Activity[], kart: AtTheKart): number {
  const many = kart.change.length;
  if (many > MOST_POSTURES) return 0;
  const wanted = [
    ...new Set(activities.flatMap(a => (a.postures ? [a.postures.reduce((bits, p) => bits | (1 << p), 0)] : []))),
  ];
  const cost = new Map<number, number>();
  const open: { readonly been: number; readonly now: number; readonly ticks: number }[] = [
    { been: kart.posture < 0 ? 0 : 1 << kart.posture, now: kart.posture, ticks: 0 },
  ];
  for (;;) {
    open.sort((a, b) => b.ticks - a.ticks);
    const next = open.pop();
    if (next === undefined) return 0;
    const key = next.been * (many + 1) + next.now + 1;
    if (cost.has(key)) continue;
    cost.set(key, next.ticks);
    if (wanted.every(bits => (bits & next.been) !== 0)) return next.ticks;
    for (let to = 0; to < many; to++)
      if (to !== next.now) {
        const takes = (next.now < 0 ? kart.unknown[to] : kart.change[next.now]?.[to]) ?? 0;
        open.push({ been: next.been | (1 << to), now: to, ticks: next.ticks + takes });
      }
  }
}
