import fc from 'fast-check';
import { expect, test } from 'vitest';
import { suggest } from './index.ts';

test('a slip of the finger finds its word', () => {
  expect(suggest('bheind', ['behind', 'bottom'])).toBe('behind');
  expect(suggest('take-off', ['take off', 'refit'])).toBe('take off');
  expect(suggest('rear hub lft', ['rear hub right', 'rear hub left'])).toBe('rear hub left');
});

test('nothing is suggested for a word that is like none, or that is there', () => {
  expect(suggest('carburettor', ['axle', 'seat'])).toBeUndefined();
  expect(suggest('axle', ['axle', 'axles'])).toBeUndefined();
  expect(suggest('', [])).toBeUndefined();
});

test('one letter lost from a long word always finds it again', () => {
  fc.assert(
    fc.property(fc.stringMatching(/^[a-z]{6,20}$/), fc.nat(), (word, at) => {
      const i = at % word.length;
      expect(suggest(word.slice(0, i) + word.slice(i + 1), [word])).toBe(word);
    }),
  );
});
