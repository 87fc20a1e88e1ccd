/** What every store does with a redaction: what names a person is gone, whatever came first (SPEC B35 to B39). */
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { BookStore } from '../../src/app/ports.ts';
import {
  bonesOf,
  CHAIN_START,
  type ChainEnd,
  type Draft,
  type Fact,
  sealAll,
  sealNext,
  verifyChain,
} from '../../src/book/index.ts';
import type { Kind, Place } from './book-store.ts';
import { note } from './note.ts';
import { books } from './random-facts.ts';

const SALT = '00112233445566778899aabbccddeeff';

/** A redaction of `facts` by another device, as an owner's program writes it. */
export function redactionOf(
  facts: readonly Fact[],
  files: readonly string[] = [],
  { last = CHAIN_START, device = 'desk', id = 'redaction' }: { last?: ChainEnd; device?: string; id?: string } = {},
): Fact {
  const said = { id, kind: 'redacted', as: 'somebody 1', by: 'O. Owner', salt: SALT };
  const entries = facts.map(fact => ({
    fact: fact.id,
    names: ['by'],
    out: ['photo', 'file'],
    ...(fact.v === 1 && { bones: bonesOf(fact) }),
  }));
  const { text: _, ...envelope } = note(id, device) as Draft & { text: string };
  return sealNext(last, {
    ...envelope,
    ...said,
    facts: entries,
    ...(files.length > 0 && { files }),
  } as unknown as Draft);
}

export function redactionContract(kind: Kind): void {
  describe(`a person taken out of a book kept in ${kind.name}`, () => {
    let place: Place;
    let store: BookStore;
    beforeEach(async () => {
      place = await kind.place();
      store = await place.open();
    });
    afterEach(async () => {
      await store.close();
      await place.remove();
    });
    const facts = async (from = store) => (await from.read()).map(({ fact }) => fact);
    const two = sealAll(CHAIN_START, [note('a'), { ...note('b'), salt: SALT }]);

    it('B35 is gone from what lies there, at the same rows, with the same hashes', async () => {
      await store.append(two);
      const before = await store.read();
      await store.append([redactionOf(two)]);
      const after = await store.read();
      expect(after.slice(0, 2).map(({ row, fact }) => [row, fact.hash])).toEqual(
        before.map(({ row, fact }) => [row, fact.hash]),
      );
      expect(after.map(({ fact }) => fact.by)).toEqual(['somebody 1', 'somebody 1', 'O. Owner']);
      expect((await store.lying()).some(({ body }) => body.includes('A. Sample'))).toBe(false);
      expect(verifyChain(await facts())).toEqual([]);
    });

    it('B39 does not come back from a copy that still has the name', async () => {
      await store.append(two);
      await store.append([redactionOf(two)]);
      expect(await store.append(two)).toEqual({ kind: 'kept', added: 0, known: 2 });
      expect((await facts()).some(({ by }) => by === 'A. Sample')).toBe(false);
    });

    it('B39 never arrives with the name when the redaction was there first', async () => {
      await store.append([redactionOf(two)]);
      expect(await store.append(two)).toEqual({ kind: 'kept', added: 2, known: 0 });
      expect((await facts()).some(({ by }) => by === 'A. Sample')).toBe(false);
      expect(verifyChain(await facts())).toEqual([]);
    });

    it('B39 is out of what this program writes next, and others stay', async () => {
      await store.append([redactionOf(two)]);
      await store.appendNext('bench', last => [sealNext(last, note('a'))]);
      await store.appendNext('phone', last => [sealNext(last, note('c', 'phone'))]);
      expect((await facts()).map(({ by }) => by)).toEqual(['O. Owner', 'somebody 1', 'A. Sample']);
    });

    it('B39 takes its photos along, and they are not kept again', async () => {
      const [gone, other] = [Uint8Array.of(1, 2), Uint8Array.of(3)];
      const hash = await store.putFile(gone, 'image/png');
      const stays = await store.putFile(other, 'image/png');
      await store.append(two);
      await store.append([redactionOf(two, [hash])]);
      expect(await store.files()).toEqual([stays]);
      expect(await store.putFile(gone, 'image/png')).toBe(hash);
      expect(await store.getFile(hash)).toBeUndefined();
    });

    it('B39 ends the same in whatever order the chains arrive', async () => {
      await fc.assert(
        fc.asyncProperty(books, fc.nat(), async (all, turn) => {
          const theirs = all.filter(({ by }) => by === 'A. Sample');
          const whole = theirs.length === 0 ? all : [...all, redactionOf(theirs)];
          const chains = [...new Set(whole.map(({ device }) => device))].map(one =>
            whole.filter(({ device }) => device === one),
          );
          if (chains.length === 0) return;
          const at = turn % chains.length;
          const held: (readonly Fact[])[] = [];
          for (const order of [chains, [...chains.slice(at), ...chains.slice(0, at)].toReversed()]) {
            const elsewhere = await kind.place();
            const fresh = await elsewhere.open();
            for (const chain of order) await fresh.append(chain);
            held.push((await facts(fresh)).toSorted((a, b) => (a.id < b.id ? -1 : 1)));
            await fresh.close();
            await elsewhere.remove();
          }
          expect(held[0]).toEqual(held[1]);
          expect(held[0]?.some(({ by }) => by === 'A. Sample')).toBe(false);
          expect(verifyChain(held[0] ?? [])).toEqual([]);
        }),
        { numRuns: 10 },
      );
    });

    if (kind.shared)
      it('B35 stays gone when the book is opened again', async () => {
        await store.append(two);
        await store.append([redactionOf(two)]);
        await store.close();
        store = await place.open();
        expect((await facts()).map(({ by }) => by)).toEqual(['somebody 1', 'somebody 1', 'O. Owner']);
        await store.append(two);
        expect((await facts()).length).toBe(3);
      });
  });
}
