/** Held against a database of the same standard in memory (fake-indexeddb); test/journeys holds it against Chromium's own. */
import 'fake-indexeddb/auto';
import { deleteDB } from 'idb';
import { indexedDbStore } from '../../src/store/indexeddb/index.ts';
import { bookStoreContract } from './book-store.ts';

let n = 0;
bookStoreContract({
  name: "a browser's database",
  shared: true,
  place: async () => {
    const name = `book ${++n}`;
    return { open: () => indexedDbStore(name), remove: () => deleteDB(name) };
  },
});
