/** Ways in: what must be off to reach a part or an item. */
import type { Kart, Part, PartId } from './model.ts';

export type Ways = readonly (readonly PartId[])[];

/** A way that asks for nothing makes the others needless. */
export const alternatives = (ways: Ways): Ways => (ways.some(way => way.length === 0) ? [] : ways.map(unique));

export const unique = <T>(values: readonly T[]): readonly T[] => [...new Set(values)];

/**
 * In which round each part can come off when everything is taken off: 0 when nothing is in its way, else one more than
 * the last part of its earliest way. Parts that can never come off are not in the map: the frame, what stands behind
 * it, and circles.
 */
export function rounds(parts: Readonly<Record<PartId, Part>>): ReadonlyMap<PartId, number> {
  const round = new Map<PartId, number>();
  const waiting = new Set(Object.values(parts).filter(part => part.removable));
  for (let now = 0; ; now++) {
    const free = [...waiting].filter(
      part => part.behind.length === 0 || part.behind.some(way => way.every(p => (round.get(p) ?? now) < now)),
    );
    if (free.length === 0) return round;
    for (const part of free) {
      round.set(part.id, now);
      waiting.delete(part);
    }
  }
}

/** These parts and every part that may have to be off for them, over all alternatives. */
export function mayBeOff(kart: Pick<Kart, 'parts'>, from: readonly PartId[]): ReadonlySet<PartId> {
  const all = new Set(from);
  for (const id of all) for (const way of kart.parts[id]?.behind ?? []) for (const p of way) all.add(p);
  return all;
}
