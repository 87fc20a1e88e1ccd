import 'fake-indexeddb/auto';
import { expect, test } from 'vitest';
import { glimpse, indexedDbStore } from './index.ts';

test('what lies beside a book is seen without opening it, with the row of its last fact', async () => {
  const store = await indexedDbStore('seen');
  await store.own.put('opening', { at: 'noon' });
  expect(await glimpse('seen', 'opening')).toEqual({ value: { at: 'noon' }, row: 0 });
  expect(await glimpse('seen', 'other')).toEqual({ value: undefined, row: 0 });
  await store.close();
  expect(await glimpse('seen', 'opening')).toEqual({ value: { at: 'noon' }, row: 0 });
});

test('looking begins no book, and another database is none', async () => {
  expect(await glimpse('never begun', 'opening')).toBeUndefined();
  expect((await indexedDB.databases()).map(({ name }) => name)).not.toContain('never begun');
  await new Promise<void>(done => {
    const other = indexedDB.open('other', 1);
    other.onsuccess = () => {
      other.result.close();
      done();
    };
  });
  expect(await glimpse('other', 'opening')).toBeUndefined();
});
