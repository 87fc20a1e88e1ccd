import { beforeEach, expect, test } from 'vitest';
import { note } from '../../test/store-contract/note.ts';
import { redactionOf } from '../../test/store-contract/redacting.ts';
import { CHAIN_START, type Fact, sealAll } from '../book/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import type { BookStore } from './ports.ts';
import { takenOutSince } from './taken-out.ts';

let facts: readonly [Fact, Fact];
let backup: BookStore;
const bookOf = async (...all: readonly Fact[]): Promise<BookStore> => {
  const store = memoryStore();
  expect((await store.append(all)).kind).toBe('kept');
  return store;
};
beforeEach(async () => {
  facts = sealAll(CHAIN_START, [note('a'), note('b')]) as unknown as [Fact, Fact];
  backup = await bookOf(...facts);
});

test('a later copy tells who stands again in a backup, and where', async () => {
  const later = await bookOf(...facts, redactionOf([facts[1]]));
  expect(await takenOutSince(backup, [later, later])).toEqual({
    until: '2026-05-01T08:00:00.000Z',
    again: [{ as: 'somebody 1', facts: ['b'] }],
  });
});

test('one that holds the redaction itself, another book, or none tells of nobody; until when stands there all the same', async () => {
  const redacted = await bookOf(...facts, redactionOf(facts));
  const other = await bookOf(...sealAll(CHAIN_START, [note('x', 'elsewhere')]));
  for (const [from, later] of [
    [redacted, [redacted]],
    [backup, [other]],
    [backup, []],
  ] as const)
    expect(await takenOutSince(from, later)).toEqual({ until: '2026-05-01T08:00:00.000Z', again: [] });
  expect(await takenOutSince(memoryStore(), [redacted])).toEqual({ until: '', again: [] });
});
