import fc from 'fast-check';
import { expect, it } from 'vitest';
import { books } from '../../test/store-contract/random-facts.ts';
import { fold } from '../book/index.ts';
import { Shelf } from './shelf.ts';

it('gives the state that a fold gives, whatever was asked before and whatever arrived in between', async () => {
  const none = { read: async () => ({ ok: false as const, problems: [] }) };
  await fc.assert(
    fc.asyncProperty(books, fc.array(fc.nat(), { minLength: 1, maxLength: 6 }), async (facts, asks) => {
      const arrived = facts.slice(0, Math.ceil(facts.length / 2)).map((fact, row) => ({ row: row + 1, fact }));
      const shelf = new Shelf({ read: async (after = 0) => arrived.slice(after) }, none);
      const moments = [undefined, ...facts.flatMap(fact => [fact.at, fact.recorded])];
      const askAll = async (): Promise<void> => {
        await shelf.refresh();
        for (const ask of asks)
          for (const name of shelf.names()) {
            const at = moments[ask % moments.length];
            expect(shelf.state(name, at)).toEqual(fold(shelf.facts(name), at));
          }
      };
      await askAll();
      for (const fact of facts.slice(arrived.length)) arrived.push({ row: arrived.length + 1, fact });
      await askAll();
    }),
    { numRuns: 60 },
  );
});
