import { memoryStore } from '../../src/store/memory/index.ts';
import { bookStoreContract } from './book-store.ts';

bookStoreContract({
  name: 'memory',
  shared: false,
  place: async () => ({ open: async () => memoryStore(), remove: async () => {} }),
});
