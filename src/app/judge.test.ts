import fc from 'fast-check';
import { beforeAll, describe, expect, test } from 'vitest';
import { demoText, kartReader, libraryFiles } from '../host/index.ts';
import type { Kart } from '../kart/index.ts';
import { alignment } from '../numbers/index.ts';
import { instrumentsFor } from './instruments.ts';
import { judgeTyped, type ReadingJudged } from './judge.ts';
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

describe('toe', () => {
  const toe = 'steering column/toe';
  test('says in words which way it stands and over which diameter', () => {
    expect(judged(toe, '1 mm')?.say.join(' ')).toContain('1.0 mm toe-out at 255 mm diameter');
    expect(judged(toe, '-1 mm')?.say.join(' ')).toContain('1.0 mm toe-in at 255 mm diameter');
  });
  test('off its target says what to do to both rods, as the alignment number says it alone', () => {
    const answer = alignment.ask({
      'toe-in total': '1 mm',
      'measuring diameter': '255 mm',
      'wanted toe-out': '2 mm',
      'wanted toe diameter': '260 mm',
      'steering arm': '95 mm',
      'steering arms': 'behind',
      'rod thread pitch': '1.25 mm',
      'rod threads': 'left and right',
    });
    if (answer.kind !== 'answer') throw new Error('the alignment number must answer');
    const move = judged(toe, '-1 mm')?.move ?? '';
    for (const sentence of answer.say.slice(1)) expect(move).toContain(sentence);
    // By hand: (2 asin(2/520) + 2 asin(1/510)) × 95 / 2 = 0.5517 mm a rod; over 2 × 1.25 mm a turn, 0.22 turns.
    expect(move).toMatch(/Shorten each tie rod by 0\.55 mm, 0\.22 turns of the rod, both by the same/);
    expect(move).toContain('Caution');
  });
  test('on its target moves nothing', () => {
    expect(judged(toe, '2 mm', 'toe bar or projector')).toMatchObject({ move: null, target: { way: 'on' } });
  });
  test('without what the kart file should say of the rods says the way and what is missing', () => {
    const { 'rod thread pitch': _, ...dimensions } = kart.dimensions;
    const found = judgeTyped({ ...kart, dimensions }, itemOf(toe), '0 mm');
    expect(found?.move).toMatch(/Shorten each tie rod by 0\.37 mm, both by the same/);
    expect(found?.move).toContain('add "rod thread pitch" under dimensions');
  });
});

describe('bar and ballast', () => {
  test('a bar off its target goes toward the clevis that wants more', () => {
    expect(judged('balance bar/brake bias', '2 mm')?.move).toMatch(/4\.99 mm toward the front clevis/);
    expect(judged('balance bar/brake bias', '9 mm')?.move).toMatch(/2\.01 mm toward the rear clevis/);
  });
  test('what to add is enough to prove the least mass, and a heavier kart is as good', () => {
    const mass = 'frame/total mass';
    expect(judged(mass, '175 kg', 'four scales')?.move).toMatch(/^Add 0\.2 kg of ballast or more/);
    expect(judged(mass, '175.2 kg', 'four scales')).toMatchObject({ state: 'inside', move: null, target: null });
    expect(judged(mass, '190 kg', 'four scales')).toMatchObject({ state: 'inside', move: null });
  });
  test('after adding it, few readings prove it too', () => {
    fc.assert(
      fc.property(fc.array(fc.integer({ min: 1740, max: 1752 }), { minLength: 1, maxLength: 6 }), tenths => {
        const at = (add: number) =>
          judged('frame/total mass', `${tenths.map(t => (t / 10 + add).toFixed(2)).join('; ')} kg`, 'four scales');
        const add = Number(/^Add ([\d.]+) kg/.exec(at(0)?.move ?? '')?.[1] ?? 0);
        // The scale is known as a share of the reading: 0.001 of a kilogram more is far below a step of it.
        expect(at(add + 0.01)?.state).toBe('inside');
      }),
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
