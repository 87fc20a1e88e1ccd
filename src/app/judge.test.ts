import { beforeAll, describe, expect, test } from 'vitest';
import { demoText, kartReader, libraryFiles } from '../host/index.ts';
import type { Kart } from '../kart/index.ts';
import { instrumentsFor, judgeTyped, type ReadingJudged } from './judge.ts';
import { readReading } from './reading.ts';

let kart: Kart;
beforeAll(async () => {
  const read = await kartReader(libraryFiles()).read(demoText().kart);
  if (!read.ok) throw new Error('the demo kart must read');
  kart = read.kart;
});

const itemOf = (id: string) => {
  const item = kart.items[id];
  if (!item) throw new Error(`no item ${id}`);
  return item;
};
const judged = (id: string, text: string, instrument?: string): ReadingJudged | undefined =>
  judgeTyped(kart, itemOf(id), { text, ...(instrument === undefined ? {} : { instrument }) });

describe('which way a hub moves', () => {
  // The target of the demo kart is 142.55 mm; 5 1/2 in is exactly 139.7 mm, 5 3/4 in exactly 146.05 mm.
  test('a gap smaller than its target sends the hub out, in the marks of the tape that was read', () => {
    expect(judged('rear hub left/rear track', '5 1/2 in', 'tape')).toMatchObject({
      move: 'Move the left hub out 1/8 in.',
    });
  });
  test('a gap larger than its target sends the hub in, in millimetres where those were read', () => {
    expect(judged('rear hub right/rear track', '146.05 mm')).toMatchObject({ move: 'Move the right hub in 3.5 mm.' });
  });
  test('a gap on its target moves nothing', () => {
    expect(judged('rear hub left/rear track', '5 5/8 in', 'tape')).toMatchObject({ move: null, target: { way: 'on' } });
  });
  test('a width over its limit sends both hubs in by half each', () => {
    expect(judged('axle/overall rear width', '1402.8 mm', 'tape')?.move).toMatch(
      /^Move both hubs in, each 1\.4 mm or more/,
    );
  });
});

describe('readings and instruments', () => {
  test('several readings are kept as written, with their mean and the step of the instrument', () => {
    const read = readReading(
      { text: '142.5 mm; 142.6 mm; 142.4 mm', instrument: 'Steel Rule' },
      itemOf('rear hub left/rear track'),
      kart,
      'reading',
    );
    expect(read).toMatchObject({
      reading: { text: '142.5 mm; 142.6 mm; 142.4 mm', unit: 'mm', instrument: 'steel rule', resolution: 0.0005 },
    });
    expect('reading' in read && read.reading.si).toBeCloseTo(0.1425, 12);
  });
  test('readings in two units are refused with what would be right', () => {
    const read = readReading('142.5 mm; 5 5/8 in', itemOf('rear hub left/rear track'), kart, 'reading');
    expect(read).toMatchObject({ problem: { remedy: expect.stringContaining('one unit') } });
  });
  test('an instrument that is not listed, or reads something else, is told as not known', () => {
    expect(judged('axle/overall rear width', '1390 mm', 'laser')?.notes.join(' ')).toContain('not in the list');
    expect(judged('axle/overall rear width', '1390 mm', 'torque wrench')?.notes.join(' ')).toContain(
      'Instrument not known',
    );
  });
  test('the instruments offered read the item, and those its step names come first', () => {
    const names = instrumentsFor(kart, itemOf('axle/overall rear width'));
    expect(names[0]).toBe('tape');
    expect(names).not.toContain('torque wrench');
  });
  test('a single torque figure is a target, not limits that nothing could prove', () => {
    expect(judged('rear hub left/pinch bolts', '20 N·m', 'torque wrench')).toMatchObject({
      state: 'no limit',
      target: { way: 'on' },
    });
  });
});
