/**
 * What every store of a book must do, told once and run against each. A new store adds a file like `memory.test.ts` that
 * calls this; a database server or a browser's store joins the same way, since all it has to give is a place to open.
 */
import { createHash } from 'node:crypto';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, it } from 'vitest';
import type { BookStore, Which } from '../../src/app/ports.ts';
import { CHAIN_START, type Fact, fold, sealAll, sealNext, verifyChain } from '../../src/book/index.ts';
import { note } from './note.ts';
import { arrivals, books } from './random-facts.ts';
import { redactionContract } from './redacting.ts';

/** A new, empty place for a book. `open` again on the same place is a second program that uses the same book. */
export type Place = { readonly open: () => Promise<BookStore>; readonly remove: () => Promise<void> };
/** `shared`: what one `open` wrote another reads. False for a store that lives in memory. */
export type Kind = { readonly name: string; readonly shared: boolean; readonly place: () => Promise<Place> };

const chain = (ids: readonly string[], device = 'bench') =>
  sealAll(
    CHAIN_START,
    ids.map(id => note(id, device)),
  );

export function bookStoreContract(kind: Kind): void {
  redactionContract(kind);
  describe(`a book kept in ${kind.name}`, () => {
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
    const facts = async () => (await store.read()).map(kept => kept.fact);

    it('starts empty', async () => {
      expect(await store.read()).toEqual([]);
    });

    it('gives back what was appended, exactly, and in row order', async () => {
      await fc.assert(
        fc.asyncProperty(books, async all => {
          const other = await kind.place();
          const fresh = await other.open();
          expect(await fresh.append(all)).toEqual({ kind: 'kept', added: all.length, known: 0 });
          const kept = await fresh.read();
          expect([...kept].sort((a, b) => a.row - b.row)).toEqual(kept);
          expect(new Set(kept.map(k => k.fact))).toEqual(new Set(all));
          await fresh.close();
          await other.remove();
        }),
        { numRuns: 15 },
      );
    });

    it('takes facts in any order in one batch, and twice as if once', async () => {
      await fc.assert(
        fc.asyncProperty(arrivals, async ([all, arrived]) => {
          const other = await kind.place();
          const fresh = await other.open();
          const twice = arrived.length - all.length;
          expect(await fresh.append(arrived)).toEqual({ kind: 'kept', added: all.length, known: twice });
          expect(await fresh.append(all)).toEqual({ kind: 'kept', added: 0, known: all.length });
          expect(fold((await fresh.read()).map(k => k.fact))).toEqual(fold(all));
          await fresh.close();
          await other.remove();
        }),
        { numRuns: 15 },
      );
    });

    it('never shows a reader of rows a chain with a hole', async () => {
      const [a, b, c] = chain(['a', 'b', 'c']) as [Fact, Fact, Fact];
      await store.append([c, a, b]);
      expect((await facts()).map(fact => fact.seq)).toEqual([1, 2, 3]);
    });

    it('reads on from a row, and no more than was asked for', async () => {
      await store.append(chain(['a', 'b', 'c', 'd']));
      const [first, second] = await store.read(0, 2);
      expect([first?.fact.id, second?.fact.id]).toEqual(['a', 'b']);
      expect((await store.read(second?.row)).map(kept => kept.fact.id)).toEqual(['c', 'd']);
      expect(await store.read(second?.row, 0)).toEqual([]);
      expect(await store.read(1_000_000)).toEqual([]);
    });

    it('finds facts by row, by id and by their place in a chain', async () => {
      await store.append([...chain(['a', 'b', 'c', 'd']), ...chain(['x', 'y'], 'phone')]);
      const kept = await store.read();
      const ids = async (which: Which) => (await store.pick(which)).map(({ fact }) => fact.id);
      const rowOf = (id: string) => kept.find(({ fact }) => fact.id === id)?.row ?? 0;
      expect(await store.pick({ rows: kept.map(({ row }) => row) })).toEqual(kept);
      expect(await ids({ rows: [rowOf('x'), rowOf('b'), rowOf('b'), 4711] })).toEqual(
        kept.map(({ fact }) => fact.id).filter(id => id === 'x' || id === 'b'),
      );
      expect(await ids({ rows: [] })).toEqual([]);
      expect(await store.pick({ id: 'c' })).toEqual(kept.filter(({ fact }) => fact.id === 'c'));
      expect(await ids({ id: 'none' })).toEqual([]);
      expect(await ids({ device: 'bench', after: 1, limit: 2 })).toEqual(['b', 'c']);
      expect(await ids({ device: 'phone', after: 0, limit: Number.POSITIVE_INFINITY })).toEqual(['x', 'y']);
      expect(await ids({ device: 'phone', after: 2, limit: 9 })).toEqual([]);
      expect(await ids({ device: 'none', after: 0, limit: 9 })).toEqual([]);
    });

    it('takes a thousand facts in one batch', async () => {
      const many = chain(Array.from({ length: 1234 }, (_, i) => `f${i}`));
      expect(await store.append(many)).toEqual({ kind: 'kept', added: 1234, known: 0 });
      expect(await facts()).toEqual(many);
    });

    it('B4 refuses another fact under a known id and writes nothing of the batch', async () => {
      await store.append(chain(['a']));
      const batch = [...chain(['x'], 'phone'), ...sealAll(CHAIN_START, [note('a', 'tablet', 'wet')])];
      expect(await store.append(batch)).toEqual({ kind: 'clash', id: 'a' });
      expect((await facts()).map(fact => fact.id)).toEqual(['a']);
    });

    it('B4 refuses two facts that claim one id within a batch', async () => {
      const batch = [...chain(['a']), ...sealAll(CHAIN_START, [note('a', 'phone')])];
      expect(await store.append(batch)).toEqual({ kind: 'clash', id: 'a' });
      expect(await store.read()).toEqual([]);
    });

    it('B6 refuses a batch with a hole in a chain, says what it expected, and writes nothing of it', async () => {
      const [a, b, c] = chain(['a', 'b', 'c']) as [Fact, Fact, Fact];
      await store.append([a]);
      expect(await store.append([...chain(['x'], 'phone'), c])).toEqual({
        kind: 'broken chain',
        device: 'bench',
        expected: `number 2 after ${a.hash}`,
        got: `number 3 after ${b.hash}`,
      });
      expect((await facts()).map(fact => fact.id)).toEqual(['a']);
    });

    it('B6 refuses a second fact in a place that is taken', async () => {
      await store.append(chain(['a', 'b']));
      const [, twin] = sealAll(CHAIN_START, [note('a'), note('other')]);
      expect(await store.append([twin as Fact])).toMatchObject({ kind: 'broken chain', device: 'bench' });
    });

    it('B5 never keeps a fact that does not fit its hash', async () => {
      const [a] = chain(['a']) as [Fact];
      await expect(store.append([{ ...a, by: 'someone else' }])).rejects.toThrow('append: fact a must have the hash');
      expect(await store.read()).toEqual([]);
    });

    it('B6 gives the builder of the next facts the end of its chain', async () => {
      const ends: { seq: number; hash: string }[] = [];
      for (const ids of [['a', 'b'], ['c']]) {
        await store.appendNext('bench', last => {
          ends.push(last);
          return sealAll(
            last,
            ids.map(id => note(id)),
          );
        });
      }
      const [, b] = await facts();
      expect(ends).toEqual([
        { seq: 0, hash: '0'.repeat(64) },
        { seq: 2, hash: b?.hash },
      ]);
      expect(verifyChain(await facts())).toEqual([]);
    });

    it('B6 writes nothing when the builder throws or builds the wrong thing, and goes on after', async () => {
      const stop = () => {
        throw new Error('changed my mind');
      };
      await expect(store.appendNext('bench', stop)).rejects.toThrow('changed my mind');
      await expect(store.appendNext('phone', last => [sealNext(last, note('a'))])).rejects.toThrow(
        'of device phone, got bench',
      );
      await expect(store.appendNext('bench', () => chain(['a', 'b']).slice(1))).rejects.toThrow('must return number 1');
      await store.appendNext('bench', last => [sealNext(last, note('a'))]);
      await expect(store.appendNext('bench', last => [sealNext(last, note('a'))])).rejects.toThrow(
        'new ids, got a again',
      );
      expect((await facts()).map(fact => fact.id)).toEqual(['a']);
    });

    it('B6 keeps one chain when many append to it at the same time', async () => {
      const ids = Array.from({ length: 40 }, (_, i) => `f${i}`);
      await Promise.all(ids.map(id => store.appendNext('bench', last => [sealNext(last, note(id))])));
      expect(verifyChain(await facts())).toEqual([]);
      expect((await facts()).map(fact => fact.id).sort()).toEqual([...ids].sort());
    });

    it('keeps a photo once, by the hash of its bytes', async () => {
      const bytes = Uint8Array.from({ length: 100_000 }, (_, i) => (i * 7) % 256);
      const hash = await store.putFile(bytes, 'image/jpeg');
      expect(hash).toBe(createHash('sha256').update(bytes).digest('hex'));
      expect(await store.putFile(bytes, 'image/jpeg')).toBe(hash);
      bytes.fill(0);
      const file = await store.getFile(hash);
      expect(file?.mediaType).toBe('image/jpeg');
      expect(
        createHash('sha256')
          .update(file?.bytes ?? new Uint8Array())
          .digest('hex'),
      ).toBe(hash);
      expect(await store.getFile('0'.repeat(64))).toBeUndefined();
      expect((await store.getFile(await store.putFile(new Uint8Array(), 'text/csv')))?.bytes).toEqual(new Uint8Array());
    });

    it('shows every fact as it lies there, a part at a time, and names its files', async () => {
      const all = [...chain(['a', 'b', 'c']), ...chain(['d'], 'phone')];
      await store.append(all);
      const hash = await store.putFile(Uint8Array.of(1, 2, 3), 'text/csv');
      const rows = await store.lying();
      expect(rows.map(({ row, body }) => ({ row, fact: JSON.parse(body) }))).toEqual(await store.read());
      for (const { body, id, hash, device, seq } of rows)
        expect(JSON.parse(body)).toMatchObject({ id, hash, device, seq });
      expect(await store.lying(rows[1]?.row, 1)).toEqual([rows[2]]);
      expect(await store.files()).toEqual([hash]);
      expect(await store.ailments()).toEqual([]);
    });

    it('tells who watches that facts arrived, and nobody after', async () => {
      let calls = 0;
      const stop = store.watch(() => calls++);
      await store.append(chain(['a']));
      await expect.poll(() => calls).toBeGreaterThan(0);
      stop();
      const heard = calls;
      await store.append(chain(['b'], 'phone'));
      await new Promise(done => setTimeout(done, 20));
      expect(calls).toBe(heard);
    });

    it('says so when it was closed', async () => {
      await store.close();
      await store.close();
      await expect(store.append([])).rejects.toMatchObject({ name: 'StoreError', code: 'closed' });
      await expect(store.read()).rejects.toMatchObject({ code: 'closed' });
    });

    if (kind.shared) {
      it('has everything when it is opened again', async () => {
        await store.append(chain(['a', 'b']));
        const hash = await store.putFile(Uint8Array.of(1, 2, 3), 'text/csv');
        await store.close();
        store = await place.open();
        expect(await facts()).toEqual(chain(['a', 'b']));
        expect(await store.getFile(hash)).toEqual({ bytes: Uint8Array.of(1, 2, 3), mediaType: 'text/csv' });
      });

      it('tells who watches of facts that another program wrote', async () => {
        const other = await place.open();
        let calls = 0;
        store.watch(() => calls++);
        await other.append(chain(['a']));
        await expect.poll(() => calls, { timeout: 5000 }).toBeGreaterThan(0);
        expect((await facts()).map(fact => fact.id)).toEqual(['a']);
        await other.close();
      });

      it('B6 keeps one chain when two programs append to it in turn', async () => {
        const other = await place.open();
        for (let i = 0; i < 20; i++) {
          await (i % 2 ? store : other).appendNext('bench', last => [sealNext(last, note(`f${i}`))]);
        }
        expect(verifyChain(await facts())).toEqual([]);
        expect(await other.read()).toEqual(await store.read());
        await other.close();
      });
    }
  });
}
