/** One thing of a device's own, and how far its book reaches, without opening the book: a page looks before its program is there. */
import { openDB } from 'idb';

type Glimpse = {
  readonly value: unknown;
  /** Of the last fact; 0 where there is none. */
  readonly row: number;
};

/** Undefined where there is no such book, or none that this version knows. */
export async function glimpse(name: string, key: string): Promise<Glimpse | undefined> {
  try {
    const db = await openDB(name, undefined, {
      upgrade(_, __, ___, begun) {
        begun.done.catch(() => undefined); // told by the opening itself
        begun.abort(); // none is begun by looking
      },
      blocking: (_, __, event) => (event.target as IDBDatabase).close(),
    });
    try {
      const both = db.transaction(['facts', 'own']);
      const [value, last] = await Promise.all([
        both.objectStore('own').get(key),
        both.objectStore('facts').openKeyCursor(null, 'prev'),
      ]);
      return { value, row: Number(last?.key ?? 0) };
    } finally {
      db.close();
    }
  } catch {
    return undefined;
  }
}
