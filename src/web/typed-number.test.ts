import { expect, test } from 'vitest';
import { notANumber, typedNumber } from './typed-number.ts';

test('a number may have a point or a comma, and one that is being typed is one already', () => {
  expect(['12', ' 2.5 ', '2,5', '2.', '0'].map(typedNumber)).toEqual([12, 2.5, 2.5, 2, 0]);
});
test('anything else is no number and says so; nothing typed says nothing', () => {
  for (const text of ['-5', '1e99', 'ten', '1 2', 'NaN', '12345678'])
    expect(notANumber(text, 'minutes', '40'), text).toContain(
      `Expected minutes as a number of 0 or more, below a million, got “${text}”`,
    );
  expect(notANumber(' ', 'minutes', '40')).toBeUndefined();
  expect(notANumber('40', 'minutes', '40')).toBeUndefined();
});
