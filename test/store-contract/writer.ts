/** Run in a process of its own: appends to a book and says each fact's id once the store has acknowledged it. */
import { writeSync } from 'node:fs';
import { sealNext } from '../../src/book/index.ts';
import { openSqliteStore } from '../../src/store/sqlite/index.ts';
import { note } from './note.ts';

export async function write(path: string, name: string, count: number): Promise<void> {
  const store = await openSqliteStore(path);
  for (let i = 0; i < count; i++) {
    const id = `${name}-${i}`;
    await store.appendNext('bench', last => [sealNext(last, note(id))]);
    writeSync(1, `${id}\n`);
  }
  await store.close();
}
