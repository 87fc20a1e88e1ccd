import type { Own } from '../../app/index.ts';

/** For a browser that keeps nothing: gone when the page is closed. */
export function ownInMemory(): Own {
  const all = new Map<string, unknown>();
  return {
    get: async key => all.get(key),
    put: async (key, value) => void all.set(key, value),
    async first(key, value) {
      if (all.get(key) === undefined) all.set(key, value);
      return all.get(key);
    },
  };
}
