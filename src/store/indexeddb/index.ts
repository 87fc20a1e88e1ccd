export { indexedDbStore } from './store.ts';
