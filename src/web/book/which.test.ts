import { expect, test } from 'vitest';
import { keepIn } from '../place.ts';
import { bookChanger, changeBook, currentBook, freshBook } from './which.ts';

test('each book that an address serves has its own place on the device, found again by where it began', async () => {
  const keep = keepIn(undefined);
  const there: Record<string, readonly string[]> = { kartwright: ['demo'] };
  const look = async (name: string) => ({ starts: there[name] ?? [] });
  expect(currentBook(keep)).toBe('kartwright');

  await changeBook(keep, { starts: ['mine'] }, look);
  const mine = currentBook(keep);
  expect(mine).not.toBe('kartwright');
  there[mine] = ['phone', 'mine'];

  await changeBook(keep, { starts: ['demo'] }, look);
  expect(currentBook(keep)).toBe('kartwright');
  await changeBook(keep, { starts: ['mine', 'tablet'] }, look);
  expect(currentBook(keep)).toBe(mine);
  await changeBook(keep, { starts: ['a third'] }, look);
  expect(['kartwright', mine]).not.toContain(currentBook(keep));
});

test('the book of another team is another one, though both began from one export', async () => {
  const keep = keepIn(undefined);
  const look = async (name: string) => (name === 'kartwright' ? { starts: ['a'], team: 'red' } : { starts: [] });
  await changeBook(keep, { starts: ['a'], team: 'blue' }, look);
  expect(currentBook(keep)).toBe('kartwright-2');
  await changeBook(keep, { starts: ['a'], team: 'red' }, look);
  expect(currentBook(keep)).toBe('kartwright');
});

test('an empty book is begun beside the others', () => {
  const keep = keepIn(undefined);
  freshBook(keep);
  const first = currentBook(keep);
  freshBook(keep);
  expect(new Set(['kartwright', first, currentBook(keep)]).size).toBe(3);
});

test('heard twice that the server keeps another book, one is begun; a book that cannot be looked at is tried again', async () => {
  const keep = keepIn(undefined);
  let looks = 0;
  let changed = 0;
  const change = bookChanger(
    keep,
    async () => {
      if (++looks === 1) throw new Error('the browser has closed it');
      return { starts: ['demo'] };
    },
    () => changed++,
  );
  await change({ starts: ['mine'] });
  expect(currentBook(keep)).toBe('kartwright');
  await Promise.all([change({ starts: ['mine'] }), change({ starts: ['mine'] })]);
  expect(currentBook(keep)).toBe('kartwright-2');
  expect(keep.get('books').split(' ')).toEqual(['kartwright', 'kartwright-2']);
  expect(changed).toBe(1);
});
