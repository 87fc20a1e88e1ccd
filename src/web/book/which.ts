/**
 * An address may serve one book today and another tomorrow: the demo, then one's own. Each has its own place on this
 * device, so that they never run into each other.
 */
import type { Keep } from '../place.ts';
import { isSame, type Theirs } from './sync.ts';

const FIRST = 'kartwright';
const CURRENT = 'book';
const ALL = 'books';

export const currentBook = (keep: Keep): string => keep.get(CURRENT) || FIRST;

/**
 * Makes the book that belongs to the server the current one: one that shares its beginning and its team, else a new one.
 * @param look says the same of a book on this device
 */
export async function changeBook(keep: Keep, theirs: Theirs, look: (name: string) => Promise<Theirs>): Promise<void> {
  for (const name of namesIn(keep)) if (isSame(await look(name), theirs)) return keep.set(CURRENT, name);
  freshBook(keep);
}

/**
 * Goes over to the book of the server once, however often it is heard that it keeps another one: each time would make a book
 * of its own. When a book on this device cannot be looked at, it stays as it is, and says so.
 */
export function bookChanger(keep: Keep, look: (name: string) => Promise<Theirs>, onChanged: () => void) {
  let isChanging = false;
  return async (theirs: Theirs): Promise<void> => {
    if (isChanging) return;
    isChanging = true;
    try {
      await changeBook(keep, theirs, look);
      onChanged();
    } catch {
      isChanging = false;
    }
  };
}

/** Makes an empty book the current one; the others stay where they are. */
export function freshBook(keep: Keep): void {
  const names = namesIn(keep);
  const fresh = `${FIRST}-${names.length + 1}`;
  keep.set(ALL, [...names, fresh].join(' '));
  keep.set(CURRENT, fresh);
}

const namesIn = (keep: Keep): readonly string[] => (keep.get(ALL) || FIRST).split(' ');
