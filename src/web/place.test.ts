import fc from 'fast-check';
import { expect, test } from 'vitest';
import { hashOf, keepIn, placeFrom } from './place.ts';

test('a step of any name comes back from its address', () => {
  fc.assert(
    fc.property(fc.string({ minLength: 1, unit: 'grapheme' }), step => {
      expect(placeFrom(hashOf({ sheet: 'work', step }))).toEqual({ sheet: 'work', step });
    }),
  );
});

test('a number comes back from its address, and its list from the address without one', () => {
  expect(placeFrom(hashOf({ sheet: 'numbers', number: 'rear-track' }))).toEqual({
    sheet: 'numbers',
    number: 'rear-track',
  });
  expect(placeFrom('#/numbers')).toEqual({ sheet: 'numbers' });
});

test('kart and part of a label come back from its address, whatever they are called', () => {
  fc.assert(
    fc.property(fc.string({ minLength: 1, unit: 'grapheme' }), about => {
      for (const sheet of ['part', 'box'] as const)
        expect(placeFrom(hashOf({ sheet, about }))).toEqual({ sheet, about });
    }),
  );
});

test('an address that says nothing known leads to the first sheet', () => {
  for (const hash of ['', '#', '#/nowhere', '#/work/%E0%A4%A', '#//'])
    expect(['today', 'work']).toContain(placeFrom(hash).sheet);
  expect(placeFrom('#/nowhere')).toEqual({ sheet: 'today' });
});

test('a browser that forbids storage still keeps what was said while the page is open', () => {
  const forbid = (): never => {
    throw new Error('forbidden');
  };
  const keep = keepIn({ getItem: forbid, setItem: forbid, removeItem: forbid });
  keep.set('name', 'R. Vale');
  expect(keep.get('name')).toBe('R. Vale');
});

/** What two tabs of a browser share. */
function storageOf() {
  const kept = new Map<string, string>();
  const storage = {
    isFull: false,
    getItem: (key: string) => kept.get(key) ?? null,
    removeItem: (key: string) => void kept.delete(key),
    setItem(key: string, value: string) {
      if (storage.isFull) throw new Error('quota exceeded');
      kept.set(key, value);
    },
  };
  return storage;
}

test('a device without room keeps what was typed last while the page is open, and after that what it had room for', () => {
  const storage = storageOf();
  const keep = keepIn(storage);
  keep.set('reading', '142');
  storage.isFull = true;
  keep.set('reading', '142.5');
  expect(keep.get('reading')).toBe('142.5');
  expect(keepIn(storage).get('reading')).toBe('142');
  storage.isFull = false;
  keep.set('reading', '142.55');
  expect(keepIn(storage).get('reading')).toBe('142.55');
});

test('what was written down in one tab stands in the other no more', () => {
  const storage = storageOf();
  const [one, other] = [keepIn(storage), keepIn(storage)];
  one.set('reading', '142.5');
  expect(other.get('reading')).toBe('142.5');
  other.set('reading', '');
  expect(one.get('reading')).toBe('');
});
