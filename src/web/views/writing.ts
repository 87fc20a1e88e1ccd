import { hashOf, type Keep, keepOf } from '../place.ts';

/** Which entry is being written, kept so that another sheet can open it and a reload finds it. */
export const WRITING = 'writing down';

/** Where what was typed of an entry is kept, of each kart. */
export const slotOf = (kind: string): string => `write ${kind}`;

/** A find on a part, begun from wherever the part was looked at. */
export function beginFind(keep: Keep, kart: string, part: string, grade: string): void {
  keep.set(WRITING, 'found');
  keepOf(keep, kart).set(slotOf('found'), JSON.stringify({ part, grade }));
  location.hash = hashOf({ sheet: 'record' });
}
