import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { report, tries } from '../../test/faults/size.ts';
import { note } from '../../test/store-contract/note.ts';
import { redactionOf } from '../../test/store-contract/redacting.ts';
import { type Fact, sealNext, verifyChain } from '../book/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { type App, createApp, exchange, sameBook } from './index.ts';
import type { BookStore } from './ports.ts';

type Book = { readonly store: BookStore; readonly app: App; device: string };
const reader = { read: async () => ({ ok: false, problems: [] }) as never };

function book(device: string): Book {
  const store = memoryStore();
  const app = createApp({
    store,
    clock: { now: () => new Date(0) },
    ids: { next: () => '', salt: () => '0'.repeat(32) },
    reader,
    device,
  });
  return { store, app, device };
}
let n = 0;
const write = ({ store, device }: Book): Promise<unknown> =>
  store.appendNext(device, last => [sealNext(last, note(`${device} ${++n}`, device))]);
const held = async ({ store }: Book): Promise<readonly Fact[]> => (await store.read()).map(({ fact }) => fact);
const ids = async (one: Book): Promise<readonly string[]> => (await held(one)).map(({ id }) => id).toSorted();
/** A copy of a book as it is now; it writes under a name of its own from here on. */
async function copied(one: Book, device: string): Promise<Book> {
  const copy = book(device);
  await copy.store.append(await held(one));
  return copy;
}

/** Takes the writer of what is here so far out of it, as an owner would. */
async function forget(one: Book): Promise<void> {
  const named = (await held(one)).filter(({ by }) => by === 'A. Sample');
  const { store, device } = one;
  if (named.length > 0)
    await store.appendNext(device, last => [redactionOf(named, [], { last, device, id: `${device} ${++n}` })]);
}

const NAMES = ['bench', 'phone', 'tablet', 'track'];
const place = fc.nat({ max: NAMES.length - 1 });
const happening = fc.oneof(
  { weight: 5, arbitrary: fc.record({ is: fc.constant('write' as const), at: place }) },
  { weight: 4, arbitrary: fc.record({ is: fc.constant('meet' as const), at: place, with: place }) },
  { weight: 1, arbitrary: fc.record({ is: fc.constant('back up' as const), at: place }) },
  { weight: 1, arbitrary: fc.record({ is: fc.constant('restore' as const), at: place }) },
  { weight: 1, arbitrary: fc.record({ is: fc.constant('forget' as const), at: place }) },
);

describe('two books that meet', () => {
  test('hold the same afterwards, nothing gone and nothing doubled, whatever four devices did apart', async () => {
    await fc.assert(
      fc.asyncProperty(fc.array(happening, { maxLength: 60 }), async happenings => {
        const books = NAMES.map(book);
        const copies = new Map<number, Book>();
        let names = 0;
        for (const one of happenings) {
          const here = books[one.at] as Book;
          if (one.is === 'write') await write(here);
          if (one.is === 'forget') await forget(here);
          if (one.is === 'meet' && one.with !== one.at)
            expect((await exchange(here.app, (books[one.with] as Book).app)).problems).toEqual([]);
          if (one.is === 'back up') copies.set(one.at, await copied(here, here.device));
          const copy = copies.get(one.at);
          if (one.is === 'restore' && copy) books[one.at] = await copied(copy, `${here.device} ${++names}`);
        }
        const all = new Set((await Promise.all(books.map(ids))).flat());
        for (const a of books) for (const b of books) if (a !== b) await exchange(a.app, b.app);
        for (const one of books) {
          expect(new Set(await ids(one))).toEqual(all);
          expect((await ids(one)).length).toBe(all.size);
          expect(verifyChain(await held(one))).toEqual([]);
          const facts = await held(one);
          const redactions = new Set(
            facts.flatMap(fact => (fact.kind === 'redacted' ? fact.facts.map(f => f.fact) : [])),
          );
          for (const { id, by } of facts) if (redactions.has(id)) expect(by).toBe('somebody 1');
        }
      }),
      { numRuns: tries(200, 10_000) },
    );
    report(`${tries(200, 10_000)} interleavings of four devices that were apart: all hold the same afterwards`);
  }, 3_600_000);

  test('pass nothing a second time', async () => {
    const [a, b] = [book('bench'), book('phone')];
    for (const one of [a, b, a]) await write(one);
    expect(await exchange(a.app, b.app)).toEqual({ came: 1, went: 2, problems: [] });
    expect(await exchange(a.app, b.app)).toEqual({ came: 0, went: 0, problems: [] });
  });

  test('pass thousands of facts in several requests, each device in its order', async () => {
    const [a, b] = [book('bench'), book('phone')];
    await a.store.appendNext('bench', last => {
      const facts: Fact[] = [];
      for (let i = 0; i < 1234; i++) facts.push(sealNext(facts.at(-1) ?? last, note(`many ${i}`, 'bench')));
      return facts;
    });
    let asked = 0;
    const counting = {
      ...a.app,
      since(numbers: Record<string, number>) {
        asked++;
        return a.app.since(numbers);
      },
    };
    expect(await exchange(b.app, counting)).toMatchObject({ came: 1234, problems: [] });
    expect(asked).toBe(4);
  });

  test('name a chain that two programs wrote under one name, and let the others pass', async () => {
    const [a, b] = [book('bench'), book('bench')];
    await write(a);
    await write(b);
    await write(b);
    const other = book('phone');
    await write(other);
    await exchange(a.app, other.app);
    const met = await exchange(a.app, b.app);
    expect(met.problems.map(({ where }) => where)).toEqual(['device bench']);
    expect(await ids(b)).toEqual(
      expect.arrayContaining(await ids(other).then(all => all.filter(id => id.startsWith('phone')))),
    );
    expect((await held(a)).filter(({ device }) => device === 'bench').length).toBe(1);
  });

  test('take nothing that was changed on the way, and say which fact', async () => {
    const [a, b] = [book('bench'), book('phone')];
    await write(a);
    const forging = {
      ...a.app,
      since: async (numbers: Record<string, number>) =>
        (await a.app.since(numbers)).map(fact => ({ ...fact, by: 'someone else' })),
    };
    const met = await exchange(b.app, forging);
    expect(met.problems[0]?.message).toContain('The hash of this fact must be');
    expect(await held(b)).toEqual([]);
  });

  test('go on where they were cut off', async () => {
    const [a, b] = [book('bench'), book('phone')];
    for (let i = 0; i < 3; i++) await write(a);
    await write(b);
    const cut = { ...a.app, take: () => Promise.reject(new TypeError('the line is down')) };
    await expect(exchange(b.app, cut)).rejects.toThrow('the line is down');
    expect((await held(b)).length).toBe(4);
    expect(await exchange(b.app, a.app)).toEqual({ came: 0, went: 1, problems: [] });
  });

  test('are one book when they share where a device began, or one of them is empty', async () => {
    const [a, b, other, none] = [book('bench'), book('phone'), book('scratch'), book('new')];
    for (const one of [a, b, other]) await write(one);
    await exchange(a.app, b.app);
    await write(b);
    const starts = (one: typeof a) => one.app.starts();
    expect((await starts(a)).length).toBe(2);
    expect(sameBook(await starts(a), await starts(b))).toBe(true);
    expect(sameBook(await starts(a), await starts(none))).toBe(true);
    expect(sameBook(await starts(none), await starts(a))).toBe(true);
    expect(sameBook(await starts(a), await starts(other))).toBe(false);
  });
});
