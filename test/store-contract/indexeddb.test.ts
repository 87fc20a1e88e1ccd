/** Held against a database of the same standard in memory (fake-indexeddb); test/journeys holds it against Chromium's own. */
import 'fake-indexeddb/auto';
import { deleteDB, openDB } from 'idb';
import { describe, expect, test } from 'vitest';
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

describe('what a device keeps for itself', () => {
  test('is there after the page is loaded again, and is not in the book', async () => {
    const store = await indexedDbStore('own 1');
    await store.own.put('kart', { name: '41', parts: [1, 2] });
    await store.own.put('kart', { name: '41', parts: [3] });
    await store.close();
    const again = await indexedDbStore('own 1');
    expect(await again.own.get('kart')).toEqual({ name: '41', parts: [3] });
    expect(await again.own.get('other')).toBeUndefined();
    expect(await again.read()).toEqual([]);
    await again.close();
  });

  test('is made once, however many pages begin at the same moment', async () => {
    const stores = await Promise.all([1, 2, 3, 4].map(() => indexedDbStore('own 2')));
    const names = await Promise.all(stores.map(({ own }, n) => own.first('device', `phone ${n}`)));
    expect(new Set(names).size).toBe(1);
    await Promise.all(stores.map(store => store.close()));
  });

  test('comes to a book that was begun before there was such a place', async () => {
    const old = await openDB('own 3', 1, {
      upgrade(fresh) {
        const facts = fresh.createObjectStore('facts', { autoIncrement: true });
        facts.createIndex('id', 'id', { unique: true });
        facts.createIndex('device', ['device', 'seq'], { unique: true });
        fresh.createObjectStore('files');
      },
    });
    await old.put('files', { bytes: new Uint8Array([1]), mediaType: 'text/plain' }, 'abc');
    old.close();
    const store = await indexedDbStore('own 3');
    expect(await store.getFile('abc')).toEqual({ bytes: new Uint8Array([1]), mediaType: 'text/plain' });
    expect(await store.own.first('device', 'phone')).toBe('phone');
    await store.close();
  });
});
