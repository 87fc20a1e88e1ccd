import fc from 'fast-check';
import { expect, test } from 'vitest';
import { fold } from '../../book/index.ts';
import { demoText, kartReader, libraryFiles } from '../../host/index.ts';
import type { Kart } from '../../kart/index.ts';
import { choose } from '../choice/choice.ts';
import { keepIn } from '../place.ts';
import { chosenOf, lastOn, nominalOf, shownOn } from './figures.ts';
import { frontEnd } from './front-end.ts';
import { LETTERING, type Length, letterOf, type Sheet, WIDTH } from './model.ts';
import { rearAxle } from './rear-axle.ts';
import { drawnOn } from './which.ts';

const read = await kartReader(libraryFiles()).read(demoText().kart);
if (!read.ok) throw new Error(read.problems.map(p => p.message).join('\n'));
const kart = read.kart;
const state = fold([]);
const both = (of: Kart): readonly Sheet[] => [rearAxle({ kart: of, state }), frontEnd({ kart: of, state })];

const inMm = (si: number) => ({ si, unit: 'mm', text: `${si * 1000} mm`, dimension: 'length' as const });
const withSizes = (sizes: Readonly<Record<string, number>>): Kart => ({
  ...kart,
  dimensions: {
    ...kart.dimensions,
    ...Object.fromEntries(Object.entries(sizes).map(([name, mm]) => [name, inMm(mm / 1000)])),
  },
});
const without = (...names: readonly string[]): Kart => ({
  ...kart,
  dimensions: Object.fromEntries(Object.entries(kart.dimensions).filter(([name]) => !names.includes(name))),
});
const sizeOf = ({ way, from, to }: Length): number => Math.abs(way === 'across' ? to.x - from.x : to.y - from.y);
const shown = (sheet: Sheet, key: string): string => {
  const figure = sheet.figures[key];
  return figure ? shownOn(figure) : 'no such figure';
};

test('the rear axle of the demo has the numbers that its file gives by hand', () => {
  const sheet = rearAxle({ kart, state });
  // By hand: (1390 - 655) / 2 - 75 - 149.95 = 142.55; (1040 - 655) / 2 - 142.55 = 49.95; 1390 - 207 = 1183.
  expect(shown(sheet, 'gap left')).toBe('142.55 ±1');
  expect(shown(sheet, 'gap right')).toBe('142.55 ±1');
  expect(shown(sheet, 'inside left')).toBe('(49.95)');
  expect(shown(sheet, 'track')).toBe('(1183)');
  expect(shown(sheet, 'width')).toBe('1390, max 1400');
  expect(shown(sheet, 'chain')).toBe('0 ±0.5');
  expect(shown(sheet, 'bore')).toBe('⌀50, max 50');
});

test('the front end of the demo has the numbers that its file gives by hand', () => {
  const sheet = frontEnd({ kart, state });
  // By hand: 1158 - 130 = 1028; 2 × 255 / 260 = 1.96; 3 × 255 / 260 = 2.94.
  expect(shown(sheet, 'track')).toBe('(1028)');
  expect(shown(sheet, 'toe')).toBe('1.96, 0 to 2.94');
  expect(shown(sheet, 'wheelbase')).toBe('1045, 1010 to 1070');
  expect(shown(sheet, 'caster left')).toBe('18°');
  expect(sheet.figures['rod left']).toMatchObject({ nominal: null, from: null });
});

test('with inches chosen the table follows, ends to their strict side, and the drawing keeps its millimetres', () => {
  const keep = keepIn(undefined);
  choose(keep, 'en-GB', 'size', 'in');
  const { figures } = rearAxle({ kart, state });
  const front = frontEnd({ kart, state }).figures;
  choose(keep, 'en-GB', 'size', '');
  // By hand: 142.55 / 25.4 = 5.6122; 1 / 25.4 = 0.03937, shown not above it; 1400 / 25.4 = 55.118; 1010 / 25.4 = 39.764; 1070 / 25.4 = 42.126.
  expect(figures['gap left']).toMatchObject({ nominal: '142.55', tolerance: '±1' });
  expect(figures['gap left'] && chosenOf(figures['gap left'])).toBe('5.612 in');
  expect(figures['gap left']?.chosen?.tolerance).toMatch(/^±0\.03\d? in$/);
  expect(figures.width?.chosen?.tolerance).toBe('max 55.11 in');
  expect(front.wheelbase?.chosen?.tolerance).toMatch(/^39\.77 in to 42\.12 in$/);
  expect(front['caster left']?.chosen).toBeNull();
});

test('the widths of a chain of lengths add up to the overall width of the drawing', () => {
  const { lengths } = rearAxle({ kart, state });
  const of = (figure: string): number => sizeOf(lengths.find(length => length.figure === figure) as Length);
  const sides = ['left', 'right'].flatMap(side => [`gap ${side}`, `hub ${side}`, `outboard ${side}`]);
  expect(of('faces') + sides.reduce((sum, key) => sum + of(key), 0)).toBeCloseTo(of('width'), 6);
  expect(of('width')).toBeCloseTo(1390, 6);
});

test('every length is drawn as long as it says, on any kart, inside its sheet', () => {
  const sizes = fc.record({
    wheelbase: fc.integer({ min: 900, max: 1100 }),
    'overall rear width': fc.integer({ min: 1330, max: 1400 }),
    'overall front width': fc.integer({ min: 1050, max: 1300 }),
    'bearing faces': fc.integer({ min: 600, max: 680 }),
    'hub length left': fc.integer({ min: 60, max: 115 }),
    'hub length right': fc.integer({ min: 60, max: 115 }),
    'axle length': fc.integer({ min: 1000, max: 1050 }),
    'kingpin spacing': fc.integer({ min: 560, max: 700 }),
    'rear tyre diameter': fc.integer({ min: 250, max: 290 }),
  });
  fc.assert(
    fc.property(sizes, picked => {
      for (const sheet of both(withSizes(picked)))
        for (const length of sheet.lengths) {
          const figure = sheet.figures[length.figure];
          const { x, y, width, height } = sheet.view;
          // A tie rod that nobody gave is drawn to the column, as long as it comes out.
          if (figure?.nominal !== null) expect(sizeOf(length)).toBeCloseTo(Number(figure?.nominal), 2);
          for (const end of [length.from, length.to]) {
            expect(end.x).toBeGreaterThan(x);
            expect(end.x).toBeLessThan(x + width);
            expect(end.y).toBeGreaterThan(y);
            expect(end.y).toBeLessThan(y + height);
          }
          const [from, room] = length.way === 'across' ? [y, height] : [x, width];
          expect(length.at - from).toBeGreaterThan(LETTERING);
          expect(from + room - length.at).toBeGreaterThan(LETTERING);
        }
    }),
    { numRuns: 40 },
  );
});

test('a length that stands in two places on one line of the sheet does not run into the next', () => {
  for (const { lengths } of both(kart))
    for (const a of lengths)
      for (const b of lengths) {
        if (a === b || a.way !== b.way || Math.abs(a.at - b.at) > 1) continue;
        const [first, second] = [a, b].map(({ way, from, to }) =>
          (way === 'across' ? [from.x, to.x] : [from.y, to.y]).toSorted((m, n) => m - n),
        ) as [number[], number[]];
        expect((first[1] ?? 0) <= (second[0] ?? 0) + 1e-9 || (second[1] ?? 0) <= (first[0] ?? 0) + 1e-9).toBe(true);
      }
});

test('what the kart file does not give reads as a dash and a word, and is drawn as something beside', () => {
  const sheet = rearAxle({ kart: without('hub length left', 'axle diameter'), state });
  for (const key of ['hub left', 'gap left', 'inside right', 'bore']) expect(shown(sheet, key)).toBe('– not given');
  expect(shown(sheet, 'faces')).toBe('655');
  const strange = frontEnd({ kart: { ...kart, dimensions: {} }, state });
  expect(shown(strange, 'wheelbase')).toBe('– not given');
  for (const { shape } of strange.strokes) expect(JSON.stringify(shape)).not.toMatch(/null|NaN/);
});

test('a reading that is no number is not known, and nothing is drawn from it', () => {
  const sheet = rearAxle({ kart: withSizes({ 'overall rear width': Number.NaN }), state });
  expect(shown(sheet, 'width')).not.toMatch(/NaN/);
  expect(JSON.stringify(sheet.strokes)).not.toContain('null'); // as JSON writes what is no number
});

test('the last reading and the last set-up stand beside the dimension, the newer of the two', () => {
  const mark = (pos: number) => ({
    pos,
    fact: `f${pos}`,
    at: '2026-05-01T10:00:00.000Z',
    by: 'R. Vale',
    minutes: 0,
    laps: 0,
  });
  const reading = (text: string, si: number) => ({ text, si, unit: 'mm' });
  const known = {
    ...state,
    items: { 'axle/overall rear width': { readings: [{ ...mark(4), reading: reading('1389 mm', 1.389) }] } },
    settings: { 'overall rear width': { ...mark(3), value: '1390 mm' }, Toe: { ...mark(5), value: '2 mm out' } },
  };
  const [rear, front] = [rearAxle({ kart, state: known }), frontEnd({ kart, state: known })];
  expect(rear.figures.width).toMatchObject({ last: { text: '1389 mm', how: 'read', by: 'R. Vale' } });
  expect(front.figures.toe && lastOn(front.figures.toe)).toBe('set 2 mm out');
});

test('each figure has a letter of its own, and each is drawn once', () => {
  for (const sheet of both(kart)) {
    const keys = Object.keys(sheet.figures);
    const letters = keys.map(key => letterOf(sheet, key));
    expect(new Set(letters).size).toBe(keys.length);
    expect(letters).not.toContain('');
    const drawn = [...sheet.lengths, ...sheet.leaders, ...sheet.angles].flatMap(({ figure }) => figure ?? []);
    expect(drawn.toSorted()).toEqual(keys.toSorted());
  }
});

test('a kart of the usual size is drawn at 1:10 on A4 and on Letter', () => {
  // 1800 mm at 1:10 are 180 mm: A4 is 210 mm and Letter 215.9 mm wide, with margins of 12 mm each side.
  for (const sheet of both(kart)) expect(sheet.view.width).toBe(WIDTH);
  expect(WIDTH / 10).toBeLessThanOrEqual(210 - 2 * 12);
});

test('every reading that is measured on the axle or the front end leads to its drawing', () => {
  for (const sheet of both(kart))
    for (const { item, nominal, ...figure } of Object.values(sheet.figures)) {
      if (item === null) continue;
      const of = kart.items[item];
      expect(of && drawnOn(of), `${item} ${nominalOf({ item, nominal, ...figure })}`).toBe(sheet.name);
    }
});
