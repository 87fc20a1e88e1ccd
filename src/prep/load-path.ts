/** Where a part lies on the way of a blow, from the wheel that took it into the frame. The way itself stands in the kinds. */
import type { Corner, Part } from '../kart/index.ts';

/** Places of the other side come after all of the side that was hit. */
const OTHER_SIDE = 100;

/** 1 the wheel; undefined for a part that no such way leads through. */
export function placeOnPath(part: Part | undefined, hit: Corner): number | undefined {
  const ends =
    hit === 'whole' ? (['front', 'rear'] as const) : [hit.startsWith('front') ? ('front' as const) : ('rear' as const)];
  const places = ends.flatMap(end => part?.loadPath?.[end] ?? []);
  if (part === undefined || places.length === 0) return undefined;
  const other = part.corner !== 'whole' && hit !== 'whole' && part.corner !== hit;
  return Math.min(...places) + (other ? OTHER_SIDE : 0);
}
