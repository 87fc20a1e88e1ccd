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

test('a device without room keeps what was said last while the page is open, never what stood there before', () => {
  const kept = new Map<string, string>();
  let isFull = false;
  const keep = keepIn({
    getItem: key => kept.get(key) ?? null,
    removeItem: key => void kept.delete(key),
    setItem(key, value) {
      if (isFull) throw new Error('quota exceeded');
      kept.set(key, value);
    },
  });
  keep.set('reading', '142');
  isFull = true;
  keep.set('reading', '142.5');
  expect(keep.get('reading')).toBe('142.5');
});
