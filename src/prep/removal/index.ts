export { type Access, leastRemoval, type Removal, type RemovalAsk } from './least.ts';
