export { backUpSqlite } from './backup.ts';
export { openSqliteStore } from './store.ts';
