import fc from 'fast-check';
import { expect, test } from 'vitest';
import { parseReadings } from '../../numbers/index.ts';
import { COUNT, keysFor, pressed } from './keys.ts';

const typed = (...keys: string[]): string => keys.reduce(pressed, '');

test('a whole and a fraction are typed as they are said', () => {
  expect(typed('5', ' ', '3', '/', '4')).toBe('5 3/4');
  expect(typed('1', '3', ' ', '1', '1', '/', '3', '2')).toBe('13 11/32');
  expect(typed('3', '/', '4')).toBe('3/4');
});

test('one key takes a fraction of the tape, and another takes its place', () => {
  expect(typed('5', '3/4')).toBe('5 3/4');
  expect(typed('5', ' ', '3/4')).toBe('5 3/4');
  expect(typed('3/4')).toBe('3/4');
  expect(typed('5', '3/4', '7/8')).toBe('5 7/8');
  expect(typed('3/4', '7/8')).toBe('3/4'); // which of the two was meant is not known
  expect(typed('1', '.', '5', '1/2')).toBe('1.5');
});

test('the sign turns round and belongs to the reading that is typed', () => {
  expect(typed('2', '.', '5', 'sign')).toBe('-2.5');
  expect(typed('sign', '2', 'sign')).toBe('2');
  expect(typed('1', ';', '2', 'sign')).toBe('1; -2');
});

test('a point begins with a nought where nothing stands, and comes once', () => {
  expect(typed('.', '5')).toBe('0.5');
  expect(typed('sign', '.', '5')).toBe('-0.5');
  expect(typed('1', '.', '2', '.', '3')).toBe('1.23');
});

test('delete takes back one sign, down to nothing', () => {
  expect(typed('1', '4', '2', 'delete')).toBe('14');
  expect(typed('5', '3/4', 'delete')).toBe('5 3/');
  expect(typed('1', ';', 'delete')).toBe('1');
  expect(typed('1', ';', '2', 'delete', 'delete')).toBe('1');
  expect(typed('delete')).toBe('');
});

test('several readings are apart, and an empty one does not come between', () => {
  expect(typed('1', '4', '2', '.', '5', ';', ';', '1', '4', '3')).toBe('142.5; 143');
  expect(typed('6', ' ', '3', ';', '/', '4', ';', '1')).toBe('6 3/4; 1'); // half a fraction is no reading
});

test('whatever is pressed is a length once no fraction is half typed, or a fraction that is refused in words', () => {
  const keys = keysFor('in').map(({ key }) => key);
  fc.assert(
    fc.property(fc.array(fc.constantFrom(...keys), { maxLength: 12 }), pressedKeys => {
      const text = typed(...pressedKeys);
      if (!/\d$/.test(text) || / \d+$/.test(text.replace(/; /g, ';'))) return;
      const read = parseReadings(`${text} in`, 'length');
      if (!read.ok) expect(read.remedy).toMatch(/fraction|beyond all measure|begin with a number/);
    }),
  );
});

test('pieces have digits only, time a point as well, and neither a sign', () => {
  const keys = (unit: string) => keysFor(unit).map(({ key }) => key);
  expect(keys(COUNT).toSorted()).toEqual(['0', '1', '2', '3', '4', '5', '6', '7', '8', '9', 'delete']);
  for (const unit of ['min', 'h']) expect(keys(unit)).toEqual([...keys(COUNT), '.']);
});
