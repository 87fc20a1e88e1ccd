export { type BrowserStore, indexedDbStore } from './store.ts';
