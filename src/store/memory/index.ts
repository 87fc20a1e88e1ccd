export { memoryStore } from './store.ts';
