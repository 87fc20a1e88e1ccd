import { expect, test } from 'vitest';
import { keepIn } from '../place.ts';
import { changeBook, currentBook, freshBook } from './which.ts';

test('each book that an address serves has its own place on the device, found again by where it began', async () => {
  const keep = keepIn(undefined);
  const there: Record<string, readonly string[]> = { kartwright: ['demo'] };
  const starts = async (name: string): Promise<readonly string[]> => there[name] ?? [];
  expect(currentBook(keep)).toBe('kartwright');

  await changeBook(keep, ['mine'], starts);
  const mine = currentBook(keep);
  expect(mine).not.toBe('kartwright');
  there[mine] = ['phone', 'mine'];

  await changeBook(keep, ['demo'], starts);
  expect(currentBook(keep)).toBe('kartwright');
  await changeBook(keep, ['mine', 'tablet'], starts);
  expect(currentBook(keep)).toBe(mine);
  await changeBook(keep, ['a third'], starts);
  expect(['kartwright', mine]).not.toContain(currentBook(keep));
});

test('an empty book is begun beside the others', () => {
  const keep = keepIn(undefined);
  freshBook(keep);
  const first = currentBook(keep);
  freshBook(keep);
  expect(new Set(['kartwright', first, currentBook(keep)]).size).toBe(3);
});
