export { addressOfTeam, teamIn } from './place.ts';
export { openPostgresStore } from './store.ts';
