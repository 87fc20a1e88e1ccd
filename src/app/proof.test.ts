import { describe, expect, test } from 'vitest';
import { note } from '../../test/store-contract/note.ts';
import { redactionOf } from '../../test/store-contract/redacting.ts';
import { CHAIN_START, canonical, type Draft, sealAll } from '../book/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { copyBook } from './copy-book.ts';
import type { BookStore, Lying } from './ports.ts';
import { proofOf } from './proof.ts';

async function threeFacts(): Promise<BookStore> {
  const store = memoryStore();
  const photo = await store.putFile(Uint8Array.of(1, 2, 3), 'image/png');
  const found: Draft = {
    ...note('b'),
    kind: 'found',
    part: 'chain',
    defect: 'a stiff link',
    grade: 'safety',
    photo,
  } as Draft;
  delete (found as { text?: unknown }).text;
  await store.append(sealAll(CHAIN_START, [note('a'), found, note('c')]));
  return store;
}

test('a book says when a redaction was not done, and when nothing vouches for what was left', async () => {
  const store = await threeFacts();
  const facts = (await store.read()).map(({ fact }) => fact);
  await store.append([redactionOf(facts)]);
  expect(await proofOf(store)).toMatchObject({ facts: 4, redacted: 3, problems: [], lacking: [] });
  const undone = changed(store, row => ({ ...row, body: row.row === 1 ? canonical(facts[0]) : row.body }));
  expect((await proofOf(undone)).problems.map(({ where }) => where)).toEqual(['row 1, fact a']);
  const alone = changed(store, row => (row.row === 4 ? undefined : row));
  expect((await proofOf(alone)).problems.map(({ where }) => where)).toEqual(['fact a', 'fact b', 'fact c']);
  const lied = changed(store, row => ({ ...row, body: row.body.replace('chain', 'brake') }));
  expect((await proofOf(lied)).problems.map(({ where }) => where)).toEqual(['fact b']);
});

/** The store as somebody has changed it on the disk. */
const changed = (store: BookStore, change: (row: Lying) => Lying | undefined): BookStore =>
  Object.assign(Object.create(store) as BookStore, {
    lying: async (after?: number, limit?: number) =>
      (await store.lying(after, limit)).flatMap(row => change(row) ?? []),
    files: () => store.files(),
    ailments: () => store.ailments(),
    getFile: (hash: string) => store.getFile(hash),
  });
const second = (change: (row: Lying) => Lying | undefined) => (row: Lying) => (row.row === 2 ? change(row) : row);

describe('a book is proved from what lies there', () => {
  test('one that is whole says how much it looked at', async () => {
    expect(await proofOf(await threeFacts())).toEqual({
      facts: 3,
      redacted: 0,
      files: 1,
      problems: [],
      lacking: [],
    });
  });

  const DAMAGE: readonly [what: string, change: (row: Lying) => Lying | undefined, said: RegExp][] = [
    [
      'a word of it was changed',
      row => ({ ...row, body: row.body.replace('stiff', 'loose') }),
      /must be [0-9a-f]{64} for what it says, got/,
    ],
    ['it is no JSON any more', row => ({ ...row, body: row.body.slice(0, 40) }), /Expected one fact as JSON, got/],
    ['it stands under another id', row => ({ ...row, id: 'x' }), /Expected id b, as the fact says, got x beside it/],
    ['it has another number', row => ({ ...row, seq: 7 }), /Expected number 2 of device bench, got number 7/],
    ['it was taken out', () => undefined, /Expected number 2 of device bench, got number 3/],
  ];
  for (const [what, change, said] of DAMAGE)
    test(`where ${what}, that fact is named, with its row, what was expected and what was found`, async () => {
      const { problems } = await proofOf(changed(await threeFacts(), second(change)));
      expect(problems[0]?.where).toMatch(what === 'it was taken out' ? /^row 3, fact c$/ : /^row 2, fact [bx]$/);
      expect(problems.map(({ message }) => message).join('\n')).toMatch(said);
      expect(problems[0]?.remedy).toContain('backup');
    });

  test('a file that leads back to rows that came before is found out, not read for ever', async () => {
    const round = Object.assign(
      changed(await threeFacts(), row => row),
      {
        lying: async () => (await threeFacts()).lying(),
      },
    );
    const { problems } = await proofOf(round);
    expect(problems.map(({ message }) => message)).toEqual([
      expect.stringContaining('Expected a row after 3, got row 1'),
    ]);
  });

  test('a fact that was changed and given a fitting hash is betrayed by the one after it', async () => {
    const store = memoryStore();
    await store.append(sealAll(CHAIN_START, [note('a'), note('b'), note('c')]));
    const other = memoryStore();
    await other.append(sealAll(CHAIN_START, [note('a'), note('b', 'bench', 'another word')]));
    const [, forged] = await other.lying();
    const { problems } = await proofOf(
      changed(
        store,
        second(() => forged),
      ),
    );
    expect(problems.map(({ where }) => where)).toEqual(['row 3, fact c']);
    expect(problems[0]?.message).toContain(`Expected a fact that follows ${forged?.hash}`);
  });

  test('a photo whose bytes changed is named; one that is named but elsewhere is counted, and is no damage', async () => {
    const store = await threeFacts();
    const [hash] = await store.files();
    const other = Object.assign(
      changed(store, row => row),
      {
        getFile: async () => ({ bytes: Uint8Array.of(1, 2, 4), mediaType: 'image/png' }),
      },
    );
    expect((await proofOf(other)).problems).toMatchObject([{ where: `file ${hash}` }]);
    const gone = Object.assign(
      changed(store, row => row),
      { files: async () => [] },
    );
    expect(await proofOf(gone)).toMatchObject({ problems: [], lacking: [hash] });
  });

  test('a place that cannot be read on is damage; one that is out of reach is not judged', async () => {
    const store = await threeFacts();
    const torn = Object.assign(
      changed(store, row => row),
      {
        lying: async () =>
          Promise.reject(Object.assign(new Error('the file of the book is damaged'), { code: 'damaged' })),
      },
    );
    expect((await proofOf(torn)).problems[0]?.message).toContain('the file of the book is damaged');
    const busy = Object.assign(
      changed(store, row => row),
      {
        lying: async () => Promise.reject(Object.assign(new Error('locked'), { code: 'busy' })),
      },
    );
    await expect(proofOf(busy)).rejects.toThrow('locked');
  });
});

describe('a whole book copied', () => {
  test('lies in the new place fact by fact and file by file; once more changes nothing', async () => {
    const [from, to] = [await threeFacts(), memoryStore()];
    const done = { kind: 'copied', facts: 3, files: 1, lacking: [] };
    expect(await copyBook(from, to)).toEqual(done);
    expect(await copyBook(from, to)).toEqual(done);
    expect(await to.read()).toEqual(await from.read());
  });

  test('writes nothing into a place that holds another book', async () => {
    const to = memoryStore();
    await to.append(sealAll(CHAIN_START, [note('other', 'phone')]));
    expect(await copyBook(await threeFacts(), to)).toMatchObject({ kind: 'refused', problems: [{ code: 'book' }] });
    expect((await to.read()).length).toBe(1);
  });

  test('writes nothing when the book it comes from is damaged, and names the fact', async () => {
    const to = memoryStore();
    const from = changed(
      await threeFacts(),
      second(row => ({ ...row, body: row.body.replace('stiff', 'loose') })),
    );
    expect(await copyBook(from, to)).toMatchObject({ kind: 'refused', problems: [{ where: 'row 2, fact b' }] });
    expect(await to.read()).toEqual([]);
  });

  test('cut off by a full disk it says so, and goes on when there is room', async () => {
    const from = memoryStore();
    await from.append(
      sealAll(
        CHAIN_START,
        Array.from({ length: 4500 }, (_, n) => note(`f${n}`)),
      ),
    );
    const to = memoryStore();
    let room = 2;
    const small = Object.assign(Object.create(to) as BookStore, {
      append: async (facts: Parameters<BookStore['append']>[0]) => {
        if (room-- === 0) throw Object.assign(new Error('the disk is full'), { code: 'disk full' });
        return to.append(facts);
      },
      lying: (after?: number, limit?: number) => to.lying(after, limit),
      files: () => to.files(),
      ailments: () => to.ailments(),
      getFile: (hash: string) => to.getFile(hash),
      putFile: (bytes: Uint8Array, type: string) => to.putFile(bytes, type),
    });
    await expect(copyBook(from, small)).rejects.toThrow('the disk is full');
    expect((await to.read()).length).toBe(4000);
    expect(await copyBook(from, to)).toMatchObject({ kind: 'copied', facts: 4500 });
  });
});
