/** Run in a process of its own, with path, name and count as arguments: appends to a book and says each fact's id once the store has acknowledged it. */
import { writeSync } from 'node:fs';
import { sealNext } from '../../src/book/index.ts';
import { openSqliteStore } from '../../src/store/sqlite/index.ts';
import { note } from './note.ts';

const [path = '', name = '', count = ''] = process.argv.slice(2);
const store = await openSqliteStore(path);
for (let i = 0; i < Number(count); i++) {
  const id = `${name}-${i}`;
  await store.appendNext('bench', last => [sealNext(last, note(id))]);
  writeSync(1, `${id}\n`);
}
await store.close();
