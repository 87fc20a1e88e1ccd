import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { scales } from './index.ts';

const FOUR = {
  'front left': '36.0 kg ± 0.1 kg',
  'front right': '39.5 kg ± 0.1 kg',
  'rear left': '51.0 kg ± 0.1 kg',
  'rear right': '54.5 kg ± 0.1 kg',
};
const STANCE = { wheelbase: '1045 mm', 'front track': '1080 mm', 'rear track': '1170 mm' };
const HEIGHT = {
  'front raised': '81.0 kg ± 0.1 kg',
  rise: '300 mm',
  'front wheel radius': '128 mm',
  'rear wheel radius': '139 mm',
};
const PLACES = [
  { name: 'floor', forward: '800 mm', left: '-200 mm', most: '6 kg' },
  { name: 'seat', forward: '300 mm', left: '250 mm', most: '8 kg' },
];

function answer(input: Readonly<Record<string, unknown>>) {
  const got = scales.ask(input);
  if (got.kind !== 'answer') throw new Error(JSON.stringify(got.problems));
  return got;
}
function paths(input: Readonly<Record<string, unknown>>): readonly string[] {
  const got = scales.ask(input);
  return got.kind === 'answer' ? [] : got.problems.map(({ path }) => path);
}
const told = (input: Readonly<Record<string, unknown>>): string => JSON.stringify(scales.ask(input));

describe('the scales answer', () => {
  test('four readings give shares, each with its uncertainty, and which diagonal the cross is', () => {
    const { figures, say } = answer(FOUR);
    expect(figures['front share']?.text).toBe('41.71 %');
    expect(figures['standard uncertainty of front share']?.si).toBeGreaterThan(0);
    expect(say.join(' ')).toContain('cross (front right with rear left) 50.00 %');
  });

  test('pounds are answered in pounds', () => {
    const lb = { 'front left': '80 lb', 'front right': '85 lb', 'rear left': '112 lb', 'rear right': '118 lb' };
    expect(answer(lb).figures.total?.text).toBe('395 lb');
  });

  test('a total alone answers what the rules ask, with the fuel that will burn', () => {
    const { figures, say } = answer({ total: '176.4 kg ± 0.3 kg', 'least mass': '175 kg', 'fuel to burn': '3 l' });
    expect(figures['mass at the flag']?.si).toBeCloseTo(176.4 - 3 * 0.745, 9);
    expect(say.join(' ')).toMatch(/under the least mass of 175 kg\. Add /);
  });

  test('over the least mass but too near it is said to be too near', () => {
    const input = { total: '180.2 kg', 'least mass': '180 kg', 'standard uncertainty': '0.2 kg' };
    expect(told(input)).toContain('too near it to be sure');
    expect(told({ ...input, total: '180.4 kg' })).not.toContain('too near');
  });

  test('the height says its uncertainty, and the lift carries its caution where it is read', () => {
    const { figures, say } = answer({ ...FOUR, ...STANCE, ...HEIGHT });
    expect(figures['centre above ground']?.si).toBeCloseTo(0.24, 3);
    expect(say.join(' ')).toContain('Caution: engine off.');
    expect(figures['standard uncertainty of height']?.si).toBeGreaterThan(0.0005);
  });

  test('a wanted share without places says which way the mass goes, and how much', () => {
    expect(told({ ...FOUR, ...STANCE, 'left target': '50 %' })).toContain(
      '3.5 kg must go from the right wheels to the left wheels',
    );
    expect(told({ ...FOUR, 'front target': '40 %' })).toContain('from the front wheels to the rear wheels');
    expect(told({ ...FOUR, 'front target': '42 % ± 1 %' })).toContain('where it is wanted; the chance');
    expect(
      answer({ ...FOUR, 'front target': '41 % ± 0.7 %' }).figures['chance of front share as wanted']?.si,
    ).toBeLessThan(0.5);
  });

  test('ballast that cannot do it says by how much, and still gives the nearest', () => {
    const { say, figures } = answer({
      ...FOUR,
      ...STANCE,
      places: PLACES,
      'front target': '50 %',
      'least mass': '200 kg',
    });
    expect(say.join(' ')).toMatch(/even with every place full, 5\.\d+ kg are missing/);
    expect(say.join(' ')).toMatch(/50 % front cannot be met here: .* kg too little/);
    expect(figures['ballast in all']?.text).toBe('14 kg');
  });

  test('ballast is fixed by the figures given, else by the strictest known, which it says', () => {
    const base = { ...FOUR, ...STANCE, places: PLACES, 'least mass': '188 kg' };
    expect(told(base)).toContain('strictest of several rule books');
    const ruled = told({
      ...base,
      'bolt diameter': '6 mm',
      'bolts a block': '1',
      'largest block': '20 kg',
      'mass a bolt': '2 kg',
    });
    expect(ruled).toMatch(/one block, \d bolts of 6 mm or more/);
    expect(ruled).not.toContain('strictest');
    expect(ruled).toContain('Caution: ballast that comes loose at speed hits people.');
  });

  test('nothing to add is said, without a bolt', () => {
    const said = told({ ...FOUR, ...STANCE, places: PLACES, 'least mass': '170 kg' });
    expect(said).toContain('No ballast is needed for this.');
    expect(said).not.toContain('Through-bolt');
  });
});

describe('what cannot be is refused with what would be right', () => {
  test('nothing, or three of four', () => {
    expect(paths({})).toEqual(['front left']);
    const { 'rear right': _, ...three } = FOUR;
    expect(paths(three)).toEqual(['rear right']);
    expect(paths({ total: '180 kg', wheelbase: '1045 mm' })).toEqual(['wheelbase']);
  });

  test('a bare number, a length for a mass, and an unknown key, all at once', () => {
    expect(paths({ ...FOUR, 'front left': 36, 'rear left': '51 mm', weight: '1 kg' }).toSorted()).toEqual([
      'front left',
      'rear left',
      'weight',
    ]);
  });

  test('negative readings, two units, and readings that do not add up', () => {
    expect(paths({ ...FOUR, 'front left': '-36 kg' })).toContain('front left');
    expect(told({ ...FOUR, 'front left': '79 lb' })).toContain('lb and kg');
    expect(told({ ...FOUR, total: '190 kg' })).toContain('about the sum of the four, 181 kg');
    expect(paths({ ...FOUR, total: '181.3 kg' })).toEqual([]);
  });

  test('a diameter in place of a radius, level and raised exchanged, a rise beyond reason', () => {
    const asked = { ...FOUR, ...STANCE, ...HEIGHT };
    expect(told({ ...asked, 'front wheel radius': '256 mm' })).toContain('half of it is 128 mm');
    expect(told({ ...asked, 'front raised': '70 kg' })).toContain('exchange the two readings');
    expect(paths({ ...asked, 'front raised': '190 kg' })).toEqual(['front raised']);
    expect(paths({ ...asked, rise: '1000 mm' })).toEqual(['rise']);
    expect(paths({ ...asked, rise: '5 mm' })).toEqual(['rise']);
    const { rise: _, ...without } = asked;
    expect(paths(without)).toEqual(['rise']);
  });

  test('places that are for nothing, share a name, or hold nothing', () => {
    expect(paths({ ...FOUR, ...STANCE, places: PLACES })).toEqual(['places']);
    const twice = [...PLACES, { ...PLACES[0], most: '0 kg' }];
    expect(paths({ ...FOUR, ...STANCE, 'least mass': '185 kg', places: twice })).toEqual([
      'places/2/name',
      'places/2/most',
    ]);
    expect(paths({ ...FOUR, 'least mass': '185 kg', places: PLACES })).toEqual([
      'wheelbase',
      'front track',
      'rear track',
    ]);
    expect(paths({ ...FOUR, 'front target': '430 %' })).toEqual(['front target']);
  });

  test('outside what it was checked for is answered and marked', () => {
    const heavy = { 'front left': '90 kg', 'front right': '90 kg', 'rear left': '70 kg', 'rear right': '70 kg' };
    const { notes } = answer(heavy);
    expect(notes.join(' ')).toContain('total 320 kg');
    expect(notes.join(' ')).toContain('front and rear readings are not exchanged');
    expect(answer({ ...FOUR, 'least mass': '180 lb' }).notes.join(' ')).toContain('least mass 180 lb against 181 kg');
    expect(answer({ ...FOUR, 'least mass': '175 kg' }).notes.join(' ')).not.toContain('against');
    for (const raised of ['75.8 kg', '95 kg']) {
      const { notes: told } = answer({ ...FOUR, ...STANCE, ...HEIGHT, 'front raised': raised });
      expect(told.join(' '), raised).toMatch(/range this was checked for: height/);
    }
  });

  test('it never throws, whatever text it is given', () => {
    const key = fc.constantFrom(...Object.keys({ ...FOUR, ...STANCE, ...HEIGHT, 'least mass': 1, 'front target': 1 }));
    const text = fc.oneof(
      fc.constantFrom('0 kg', '1 mm', '-1 kg', '1e9 kg', '50 %', '1 m ± 5 m', '42 kg'),
      fc.string(),
    );
    fc.assert(
      fc.property(fc.dictionary(key, text), given => {
        const asked = scales.ask({ ...FOUR, ...STANCE, ...given });
        expect(asked.kind).toMatch(/answer|problems/);
        if (asked.kind === 'answer')
          for (const { text: shown } of Object.values(asked.figures)) expect(shown).not.toMatch(/NaN|Infinity/);
      }),
    );
  });
});
