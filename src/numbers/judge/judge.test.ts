import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type Measure, parseQuantity } from '../../quantity/index.ts';
import { judge } from './judge.ts';
import { parseReadings, typedAs } from './readings.ts';

const measure = (text: string): Measure => {
  const read = parseQuantity(text);
  if (!read.ok) throw new Error(`${text}: ${read.remedy}`);
  return read.value;
};
const readings = (text: string): readonly Measure[] => {
  const read = parseReadings(text);
  if (!read.ok) throw new Error(`${text}: ${read.remedy}`);
  return read.value;
};

describe('a reading against its limits', () => {
  const max = measure('1400 mm');
  test('well inside is said with its chance', () => {
    expect(judge({ readings: readings('1390 mm'), max }).verdict).toBe('inside the limit, chance over 99.9 %');
  });
  test('inside but too near to prove it says so', () => {
    const found = judge({ readings: readings('1399.8 mm'), gauge: { resolution: 0.001 }, max });
    expect(found.state).toBe('unproven');
    expect(found.verdict).toContain('cannot prove it at 95 %');
  });
  test('outside says by how much and of which limit, in marks of the tape where one was read', () => {
    expect(judge({ readings: readings('1401.4 mm'), max }).verdict).toBe(
      'outside: 1.4 mm over the largest allowed, 1400 mm',
    );
    expect(judge({ readings: readings('5 1/4 in'), min: measure('5 3/8 in') }).verdict).toBe(
      'outside: 1/8 in under the least allowed, 5 3/8 in',
    );
  });
  test('an excess that rounds to nothing on the tape is told in full', () => {
    expect(judge({ readings: readings('55 1/8 in'), max }).verdict).toMatch(
      /^outside: 0\.17\d* mm over|^outside: 0\.18 mm over/,
    );
  });
  test('a reading on the limit is inside, whatever the last bit of its unit', () => {
    expect(judge({ readings: readings('5 3/4 in'), max: measure('146.05 mm') }).state).not.toBe('outside');
  });
  test('a temperature is told apart by degrees, not from absolute zero', () => {
    const found = judge({ readings: readings('55 °C'), max: measure('50 °C') });
    expect(found.verdict).toBe('outside: 5 °C over the largest allowed, 50 °C');
  });
  test('no reading, or no usable confidence, throws', () => {
    expect(() => judge({ readings: [] })).toThrow(/at least one/);
    expect(() => judge({ readings: readings('1 mm'), confidence: 1 })).toThrow(/confidence/);
  });
});

describe('how fine a reading is', () => {
  test.each([
    ['1398 mm', 0.001],
    ['142.5 mm', 0.0001],
    ['142,55 mm', 0.00001],
    ['5 3/4 in', 0.0254 / 16], // a tape is marked in sixteenths
    ['5⅝ in', 0.0254 / 16],
    ['5 5/32 in', 0.0254 / 32],
    ['5.625 in', 0.0000254],
  ])('%s is read to the step it was written with', (text, step) => {
    expect(typedAs(readings(text)).step).toBeCloseTo(step, 12);
  });
  test('without an instrument the step is that of the digits, and the answer says so', () => {
    expect(judge({ readings: readings('142.5 mm') }).notes.join(' ')).toContain('taken as 0.1 mm');
  });
});

describe('several readings', () => {
  test('a unit with the last serves them all', () => {
    expect(readings('142.5; 142.6; 142.4 mm').map(one => one.unit)).toEqual(['mm', 'mm', 'mm']);
  });
  test('an empty one among them is refused', () => {
    expect(parseReadings('1 mm;; 2 mm')).toMatchObject({ ok: false });
    expect(parseReadings('1 mm;')).toMatchObject({ ok: false });
  });
  test('their order changes nothing, and more of the same spread makes the mean surer', () => {
    const sizes = fc.array(fc.integer({ min: 1000, max: 2000 }), { minLength: 2, maxLength: 12 });
    fc.assert(
      fc.property(sizes, given => {
        const of = (all: readonly number[]) => judge({ readings: all.map(n => measure(`${n / 10} mm`)) });
        const [once, turned, twice] = [of(given), of(given.toReversed()), of([...given, ...given])];
        expect(turned.mean.si).toBeCloseTo(once.mean.si, 12);
        expect(turned.uncertainty.si).toBeCloseTo(once.uncertainty.si, 12);
        expect(twice.uncertainty.si).toBeLessThanOrEqual(once.uncertainty.si + 1e-15);
      }),
    );
  });
});

test('a wider limit never makes a reading less likely to be inside', () => {
  const tenths = fc.integer({ min: 0, max: 400 });
  fc.assert(
    fc.property(tenths, tenths, tenths, (at, edge, more) => {
      const chance = (max: number) =>
        judge({ readings: readings(`${at / 10} mm`), max: measure(`${max / 10} mm`) }).chance;
      expect(chance(edge + more) ?? -1).toBeGreaterThanOrEqual(chance(edge) ?? 2);
    }),
  );
});
