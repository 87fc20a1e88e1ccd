import fc from 'fast-check';
import { describe, expect, it, vi } from 'vitest';
import { note } from '../../test/store-contract/note.ts';
import { arrivals, books } from '../../test/store-contract/random-facts.ts';
import { redactionOf } from '../../test/store-contract/redacting.ts';
import { CHAIN_START, type Draft, type Fact, fold, sealAll } from '../book/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { listSource } from './list-source.ts';
import type { BookStore, Snapshots } from './ports.ts';
import { Shelf } from './shelf.ts';
import { snapshotProof } from './snapshot-proof.ts';

const none = { read: async () => ({ ok: false as const, problems: [] }) };

/** A snapshot in memory; `lines` to look at it, or to hurt it. */
function inMemory(): Snapshots & { lines: readonly string[] | undefined } {
  return {
    lines: undefined,
    async read() {
      return this.lines;
    },
    async write(lines) {
      this.lines = [...lines];
    },
    async remove() {
      this.lines = undefined;
    },
  };
}

const byKart = (facts: readonly Fact[]): Map<string, readonly Fact[]> =>
  new Map([...new Set(facts.map(({ kart }) => kart))].map(kart => [kart, facts.filter(fact => fact.kart === kart)]));

it('gives the state that a fold gives, whatever was asked before and whatever arrived in between', async () => {
  await fc.assert(
    fc.asyncProperty(books, fc.array(fc.nat(), { minLength: 1, maxLength: 6 }), async (facts, asks) => {
      const store = memoryStore();
      const shelf = new Shelf({ store, reader: none });
      const moments = [undefined, ...facts.flatMap(fact => [fact.at, fact.recorded])];
      const askAll = async (): Promise<void> => {
        await shelf.refresh();
        for (const ask of asks)
          for (const name of shelf.names()) {
            const at = moments[ask % moments.length];
            expect(await shelf.state(name, at)).toEqual(fold(await shelf.facts(name), at));
          }
      };
      await store.append(facts.slice(0, Math.ceil(facts.length / 2)));
      await askAll();
      await store.append(facts);
      await askAll();
    }),
    { numRuns: 60 },
  );
});

describe('a shelf opened from a snapshot', () => {
  it('B34 answers as one that read every fact, whatever came before the snapshot and after it', async () => {
    await fc.assert(
      fc.asyncProperty(arrivals, fc.array(fc.nat(30), { maxLength: 4 }), async ([, arrived], breaks) => {
        const store = memoryStore();
        const snapshots = inMemory();
        const open = () => new Shelf({ store, reader: none, snapshots });
        let shelf = open();
        const facts = [...new Map(arrived.map(fact => [fact.id, fact])).values()];
        const bySeq = facts.toSorted((a, b) => a.seq - b.seq); // a store takes no chain with a hole
        for (const [n, fact] of bySeq.entries()) {
          await store.append([fact]);
          if (!breaks.includes(n)) continue;
          await shelf.refresh();
          await shelf.keepSnapshot();
          expect(await snapshotProof(store, snapshots)).toBe('fits');
          shelf = open();
        }
        await shelf.refresh();
        expect(shelf.names()).toEqual([...byKart(facts).keys()].sort());
        for (const [name, theirs] of byKart(bySeq)) {
          expect(await shelf.state(name)).toEqual(fold(theirs));
          expect(await shelf.facts(name)).toEqual(theirs);
          const at = theirs[0]?.recorded;
          expect(await shelf.state(name, at)).toEqual(fold(theirs, at));
        }
        const whole = new Shelf({ store, reader: none });
        await whole.refresh();
        expect([shelf.ends(), shelf.starts()]).toEqual([whole.ends(), whole.starts()]);
      }),
      { numRuns: 60 },
    );
  });

  const [facts] = fc.sample(books, { numRuns: 40, seed: 7 }).toSorted((a, b) => b.length - a.length);
  const bookOf = async (some = facts ?? []) => {
    const store = memoryStore();
    await store.append(some);
    return store;
  };
  const openOn = async (store: BookStore, snapshots: Snapshots) => {
    const shelf = new Shelf({ store, reader: none, snapshots });
    await shelf.refresh();
    return shelf;
  };

  it('reads no fact that is in it, of a book too long to hold in its last facts', async () => {
    const run = (id: string) => ({ ...note(id), kind: 'ran', minutes: 7, text: undefined }) as unknown as Draft;
    const long = sealAll(
      CHAIN_START,
      Array.from({ length: 1000 }, (_, n) => run(`r${n}`)),
    );
    const [store, snapshots] = [await bookOf(long), inMemory()];
    await (await openOn(store, snapshots)).keepSnapshot();
    expect(snapshots.lines?.join('').length).toBeLessThan(200 * 700 + 1000 * 200); // the runs, and the last facts
    const read = vi.spyOn(store, 'read');
    const pick = vi.spyOn(store, 'pick');
    const shelf = await openOn(store, snapshots);
    expect((await shelf.state('41')).minutes).toBe(7000);
    expect([read.mock.calls, pick.mock.calls]).toEqual([[[1000, 5000]], [[{ device: 'bench', after: 999, limit: 1 }]]]);
    expect(await shelf.state('41')).toEqual(fold(long));
  });

  const HURT: readonly [what: string, change: (lines: readonly string[]) => readonly string[]][] = [
    ['of another format', ([head = '', ...rest]) => [head.replace(/"snapshot":\d+/, '"snapshot":0'), ...rest]],
    ['of another end of a chain', ([head = '', ...rest]) => [head.replace(/"hash":"./, '"hash":"x'), ...rest]],
    ['of other rows', ([head = '', ...rest]) => [head.replace(/"row":\d+/g, '"row":99'), ...rest]],
    ['without one of its karts', lines => lines.slice(0, -1)],
    ['no JSON', ([, ...rest]) => ['{', ...rest]],
  ];
  for (const [what, change] of HURT)
    it(`throws away a snapshot that is ${what}, and reads the facts`, async () => {
      const [store, snapshots] = [await bookOf(), inMemory()];
      await (await openOn(store, snapshots)).keepSnapshot();
      snapshots.lines = change(snapshots.lines ?? []);
      const shelf = await openOn(store, snapshots);
      expect(snapshots.lines).toBeUndefined();
      for (const [name, theirs] of byKart(facts ?? [])) expect(await shelf.state(name)).toEqual(fold(theirs));
    });

  it('throws away a snapshot of more than the book holds, as after a backup was set back', async () => {
    const snapshots = inMemory();
    await (await openOn(await bookOf(), snapshots)).keepSnapshot();
    const before = (facts ?? []).filter(fact => fact.seq === 1);
    const shelf = await openOn(await bookOf(before), snapshots);
    expect(snapshots.lines).toBeUndefined();
    for (const [name, theirs] of byKart(before)) expect(await shelf.state(name)).toEqual(fold(theirs));
  });

  it('a state in it that is not what the facts give is found by the proof', async () => {
    const [store, snapshots] = [await bookOf(), inMemory()];
    await (await openOn(store, snapshots)).keepSnapshot();
    const lines = snapshots.lines ?? [];
    const WRONG: readonly [RegExp, string][] = [
      [/"count":\d+/, '"count":4711'],
      [/"minutes":[\d.]+/, '"minutes":4711'],
      [/"rows":\[\d+/, '"rows":[4711'],
      [/"tail":\[/, '"tail":[{"id":"x"},'],
      [/"named":\[[^\]]*\]/, '"named":["x"]'],
    ];
    for (const [right, wrong] of WRONG) {
      snapshots.lines = lines.map((line, n) => (n === 1 ? line.replace(right, wrong) : line));
      expect([wrong, await snapshotProof(store, snapshots)]).toEqual([wrong, 'thrown away']);
      expect(snapshots.lines).toBeUndefined();
    }
    snapshots.lines = lines;
    expect(await snapshotProof(store, snapshots)).toBe('fits');
    expect(await snapshotProof(store, inMemory())).toBe('none');
  });
});

it('B37 after a redaction a shelf says what the store holds, and no snapshot of before stays', async () => {
  const store = memoryStore();
  const snapshots = inMemory();
  const shelf = new Shelf({ store, reader: none, snapshots });
  const facts = sealAll(CHAIN_START, [note('a'), note('b')]);
  await store.append(facts);
  await shelf.refresh();
  await shelf.keepSnapshot();
  const opened = new Shelf({ store, reader: none, snapshots });
  await opened.refresh();
  expect(snapshots.lines?.join()).toContain('A. Sample');
  await store.append([redactionOf(facts)]);
  for (const one of [shelf, opened]) {
    await one.refresh();
    expect((await one.facts('41')).map(({ by }) => by)).toEqual(['somebody 1', 'somebody 1', 'O. Owner']);
    expect((await one.state('41')).last?.by).toBe('somebody 1');
    expect(snapshots.lines).toBeUndefined();
  }
  await shelf.keepSnapshot();
  const again = new Shelf({ store, reader: none, snapshots });
  await again.refresh();
  expect(snapshots.lines?.join()).not.toContain('A. Sample');
  expect((await again.state('41')).count).toBe(2);
});

it('reads a list as it reads a store', async () => {
  const [facts = []] = fc.sample(books, { numRuns: 1, seed: 3 });
  const store = memoryStore();
  await store.append(facts);
  const kept = await store.read();
  const list = listSource(kept.map(({ fact }) => fact));
  expect(await list.read(1, 2)).toEqual(await store.read(1, 2));
  for (const which of [
    { rows: [2, 1] },
    { id: facts[0]?.id ?? '' },
    { device: facts[0]?.device ?? '', after: 0, limit: 3 },
  ])
    expect((await list.pick(which)).toSorted((a, b) => a.row - b.row)).toEqual(await store.pick(which));
});
