export { StoreError, type StoreFault } from './store-error.ts';
