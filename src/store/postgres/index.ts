export { openPostgresStore } from './store.ts';
