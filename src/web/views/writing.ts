import { hashOf, type Keep } from '../place.ts';

/** Which entry is being written, kept so that another sheet can open it and a reload finds it. */
export const WRITING = 'writing down';

/** Where what was typed of an entry is kept. */
export const slotOf = (kind: string): string => `write ${kind}`;

/** A find on a part, begun from wherever the part was looked at. */
export function beginFind(keep: Keep, part: string, grade: string): void {
  keep.set(WRITING, 'found');
  keep.set(slotOf('found'), JSON.stringify({ part, grade }));
  location.hash = hashOf({ sheet: 'record' });
}
