import type { Fact } from '../book/index.ts';
import type { Kept } from './ports.ts';
import type { Source } from './shelf.ts';

/** Facts that somebody has at hand already, for a shelf to read; rows are counted from 1. */
export function listSource(facts: readonly Fact[]): Source {
  const kept: readonly Kept[] = facts.map((fact, n) => ({ row: n + 1, fact }));
  return {
    read: async (after = 0, limit = Number.POSITIVE_INFINITY) => kept.slice(after, after + limit),
    async pick(which) {
      if ('rows' in which) return which.rows.flatMap(row => kept[row - 1] ?? []);
      if ('id' in which) return kept.filter(({ fact }) => fact.id === which.id);
      const { device, after, limit } = which;
      return kept.filter(({ fact }) => fact.device === device && fact.seq > after).slice(0, limit);
    },
  };
}
