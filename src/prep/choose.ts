/**
 * What to do when not everything fits. Tier after tier, the gravest first: safety by the severity of what the part carries,
 * then reliability, performance, cosmetics. Within a tier in one fixed order, what adds least minutes first, and as much of
 * it as fits on top of what the tiers before took. The order does not depend on the time there is, so more time, or another
 * pair of hands, never makes a tier worse unless one before it got better.
 */
import { GRADES, type Kart, type PartId } from '../kart/index.ts';
import type { Due } from './model.ts';
import { secondLookMinutes } from './order.ts';
import { reach } from './reach.ts';
import { partMinutes } from './work.ts';

export type Choice = {
  readonly taken: ReadonlySet<Due>;
  /** In the order of the queue. */
  readonly left: readonly Due[];
};

/**
 * @param queue of `entering`
 * @param fits whether a plan for these, closed up and checked at the end, fits the time there is
 */
export function choose(queue: readonly (readonly Due[])[], fits: (some: ReadonlySet<Due>) => boolean): Choice {
  const all = new Set(queue.flat());
  if (fits(all)) return { taken: all, left: [] };
  if (!fits(new Set())) return { taken: new Set(), left: queue.flat() };
  const whole = mostThatFit(queue.length, n => fits(new Set(queue.slice(0, n).flat())));
  const taken = new Set(queue.slice(0, whole).flat());
  for (const tier of queue.slice(whole)) {
    const holds = (n: number): boolean => fits(new Set([...taken, ...tier.slice(0, n)]));
    for (const one of tier.slice(0, mostThatFit(tier.length, holds))) taken.add(one);
  }
  return { taken, left: queue.flat().filter(one => !taken.has(one)) };
}

/** The most first ones that fit, by halving: one that does not fit makes no longer one fit. When time is up, most tiers stop at the first. */
function mostThatFit(count: number, holds: (n: number) => boolean): number {
  let low = 0;
  let high = count === 0 || holds(1) ? count : 0;
  while (low < high) {
    const middle = Math.ceil((low + high) / 2);
    if (holds(middle)) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** Tiers in the order that never changes, each in the order in which its items would be taken. */
export function entering(kart: Kart, due: readonly Due[], lyingOff: readonly PartId[]): readonly (readonly Due[])[] {
  const off = new Set(lyingOff);
  const tiers = new Map<number, Due[]>();
  for (const one of due) tiers.set(tierOf(kart, one), [...(tiers.get(tierOf(kart, one)) ?? []), one]);
  return [...tiers.keys()].sort((a, b) => a - b).map(tier => cheapFirst(kart, tiers.get(tier) ?? [], off));
}

/** 1 to 4: safety by severity, 1 the gravest; then the other grades. A part that carries no function counts as gravest: unknown. */
export function tierOf(kart: Kart, { grade, part }: Due): number {
  if (grade !== 'safety') return LEAST_SEVERE + GRADES.indexOf(grade);
  const severities = (kart.parts[part]?.carries ?? []).flatMap(name => kart.functions[name]?.severity ?? []);
  return severities.length === 0 ? 1 : Math.min(...severities);
}
const LEAST_SEVERE = 4;

/** What adds least to those before it; parts that come off for one are off for the next. `off` grows. */
function cheapFirst(kart: Kart, tier: readonly Due[], off: Set<PartId>): readonly Due[] {
  const waiting = tier.map((one, place) => ({ one, place, ...ownWork(kart, one) }));
  const found: Due[] = [];
  while (waiting.length > 0) {
    const priced = waiting.map(({ minutes, parts }) =>
      parts.reduce((sum, p) => sum + (off.has(p) ? 0 : partMinutes(kart, p)), minutes),
    );
    const [next] = waiting.splice(priced.indexOf(Math.min(...priced)), 1);
    if (!next) break;
    for (const p of next.parts) off.add(p);
    found.push(next.one);
  }
  return found;
}

function ownWork(
  kart: Kart,
  { item: id, cause }: Due,
): { readonly minutes: number; readonly parts: readonly PartId[] } {
  const item = kart.items[id];
  if (!item) return { minutes: 0, parts: [] };
  const way = reach({
    wishes: [{ id, ways: item.needsOff }],
    lyingOff: [],
    behind: p => kart.parts[p]?.behind ?? [],
    cost: p => partMinutes(kart, p),
  });
  const look = item.secondLook ? secondLookMinutes(item.minutes) : 0;
  return { minutes: cause === 'second look' ? look : item.minutes + look, parts: [...(way?.off ?? [])] };
}
