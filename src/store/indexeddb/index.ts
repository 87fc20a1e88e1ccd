export { glimpse } from './glimpse.ts';
export { type BrowserStore, indexedDbStore } from './store.ts';
