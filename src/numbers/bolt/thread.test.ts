import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isStrength, strengthOf } from './strength.ts';
import { isPipeThread, isThread, readThread } from './thread.ts';

describe('a thread marking', () => {
  it('is read in the ways people write it', () => {
    for (const marking of ['M8', 'm8', 'M8x1.25', 'M8 x 1,25', 'M8×1.25', 'M8x1.25-6g', 'M8-6g', 'M8x1.250'])
      expect(readThread(marking)).toMatchObject({ name: 'M8x1.25', diameter: 0.008, pitch: 0.00125, leftHand: false });
    for (const marking of ['1/4-28', '1/4-28 UNF', '1/4"-28 UNF-2A', '1/4 - 28'])
      expect(readThread(marking)).toMatchObject({ name: '1/4-28', diameter: 0.00635 });
    expect(readThread('#10-32')).toMatchObject({ name: '10-32', diameter: 0.19 * 0.0254 });
    expect(readThread('M8x1.25 LH')).toMatchObject({ leftHand: true });
    expect(readThread('M25x1.5')).toMatchObject({ pitch: 0.0015 });
  });
  it('is refused with the thread most likely meant when no such thread exists', () => {
    const remedy = (marking: string) => JSON.stringify(readThread(marking));
    expect(remedy('M8x1.5')).toContain('did you mean \\"M8x1.25\\"');
    expect(remedy('M13')).toContain('there is no M13');
    expect(remedy('M25')).toContain('M25x1.5');
    expect(remedy('5/16-20')).toContain('5/16-18 UNC');
    expect(remedy('5/16-18 UNF')).toContain('5/16-18 UNC');
    expect(remedy('3/16-24')).toContain('10-32');
    for (const marking of ['', 'banana', 'M', 'Mx1', '1/0-20', 'M8x0', 'constructor', '8.8'])
      expect(isThread(readThread(marking)), marking).toBe(false);
  });
  it('never throws, whatever is written', () => {
    fc.assert(fc.property(fc.string({ maxLength: 40 }), marking => void readThread(marking)));
  });
  it('of a fitting is known as one', () => {
    for (const marking of ['G 1/8', '1/8-27 NPT', '1/8 NPT', 'R 1/4'])
      expect(isPipeThread(marking), marking).toBe(true);
    for (const marking of ['M8x1.25', '1/4-28', 'G']) expect(isPipeThread(marking), marking).toBe(false);
  });
});

describe('a class mark', () => {
  const metric = { series: 'metric', diameter: 0.008 } as const;
  const inch = { series: 'unified', diameter: 0.00635 } as const;
  it('promises proof below yield below breaking, for every class that is known', () => {
    const marks = ['4.6', '4.8', '5.6', '5.8', '6.8', '8.8', '9.8', '10.9', '12.9', 'a2-70', 'A4-80'];
    const all = [
      ...marks.map(m => strengthOf(m, metric)),
      ...['grade 2', 'Gr. 5', 'SAE grade 8'].map(m => strengthOf(m, inch)),
    ];
    expect(all).toHaveLength(14);
    for (const one of all) {
      if (!isStrength(one)) throw new Error(one.remedy);
      expect(one.proof).toBeLessThanOrEqual(one.yield);
      expect(one.yield).toBeLessThan(one.ultimate);
    }
  });
  it('of 8.8 is a little higher over 16 mm', () => {
    expect(strengthOf('8.8', { series: 'metric', diameter: 0.016 })).toMatchObject({ proof: 580e6, yield: 640e6 });
    expect(strengthOf('8.8', { series: 'metric', diameter: 0.018 })).toMatchObject({ proof: 600e6, yield: 660e6 });
  });
  it('that is none is refused with the one most likely meant', () => {
    const remedy = (mark: string, on: typeof metric | typeof inch) => JSON.stringify(strengthOf(mark, on));
    expect(remedy('88', metric)).toContain('\\"8.8\\"');
    expect(remedy('10,9', metric)).toContain('\\"10.9\\"');
    expect(remedy('12.8', metric)).toContain('\\"12.9\\"');
    expect(remedy('8', metric)).toContain('marks a nut');
    expect(remedy('45H', metric)).toContain('marks a nut or a set screw');
    expect(remedy('grade 8', metric)).toContain('grades are for inch threads');
    expect(remedy('8.8', inch)).toContain('an inch bolt has a grade');
    expect(remedy('5', inch)).toContain('grade 5');
    expect(isStrength(strengthOf('toString', metric))).toBe(false);
  });
});
