import { beforeAll, describe, expect, test } from 'vitest';
import { fold } from '../book/index.ts';
import { demoText, kartReader, libraryFiles } from '../host/index.ts';
import type { Kart } from '../kart/index.ts';
import { checkedRight } from './check-items.ts';
import { judgeReading } from './judge.ts';
import { readReading } from './reading.ts';

let kart: Kart;
beforeAll(async () => {
  const read = await kartReader(libraryFiles()).read(demoText().kart);
  if (!read.ok) throw new Error('the demo kart must read');
  kart = read.kart;
});

/** What stands against passing an item with a reading, on a kart with an empty book. */
const against = (id: string, text: string) => {
  const read = readReading(text, kart.items[id], kart, 'reading');
  if ('problem' in read) throw new Error(read.problem.message);
  const { reading } = read;
  const context = {
    kart,
    state: fold([]),
    facts: [],
    at: '2026-01-01T12:00:00.000Z',
    by: 'A. Bench',
    sure: true,
    where: 'facts[0]',
  };
  return {
    problems: checkedRight({ kind: 'checked', item: id, result: 'pass', reading }, context),
    judged: kart.items[id] && judgeReading(kart, kart.items[id], reading),
  };
};

describe('a pass outside its limits', () => {
  test('of a gap from bearing to hub is refused with the limits, and which way and how far the hub goes', () => {
    // The gap of kart 41 is (1390 - 655 - 2 × 75 - 2 × 149.95) / 2 = 142.55 mm; 9 in is 228.6 mm, 86.05 mm too far out.
    const [problem] = against('rear hub left/rear track', '228.6 mm').problems;
    expect(problem?.message).toContain('between 141.55 mm and 143.55 mm');
    expect(problem?.remedy).toMatch(/^Move the left hub in 86\.05 mm\. Then measure again/);
    expect(against('rear hub right/rear track', '9 in').problems[0]?.remedy).toMatch(
      /Move the right hub in 3 3\/8 in\./,
    );
    expect(against('rear hub left/rear track', '5 5/8 in').problems).toEqual([]);
  });
  test('of toe is refused with which rods to turn', () => {
    const [problem] = against('steering column/toe', '-1 mm').problems;
    expect(problem?.message).toContain('between 0 mm and 2.94 mm toe-out');
    expect(problem?.remedy).toContain('Shorten each tie rod by 0.55 mm, 0.22 turns');
  });
  test('of a mass is refused with what to add', () => {
    // Read to 1 kg: 175 kg + 1.645 × 1 kg / √12 = 175.47 kg shows 175 kg at 95 %; 1.47 kg short, up to the next step.
    expect(against('frame/total mass', '174 kg').problems[0]?.remedy).toMatch(/^Add 2 kg of ballast or more/);
  });
});

test('what is refused as a pass is what the judge finds outside, for every measured item of the kart', () => {
  const measured = Object.values(kart.items).filter(item => item.measure && item.joint === undefined);
  expect(measured.length).toBeGreaterThan(30);
  for (const { id, measure } of measured) {
    const { min, max } = measure?.plausible ?? {};
    if (!min || !max) continue;
    for (let n = 0; n <= 20; n++) {
      const { problems, judged } = against(
        id,
        `${((min.si + (n / 20) * (max.si - min.si)) / scaleOf(id)).toFixed(4)} ${measure?.unit}`,
      );
      expect(problems.length > 0, `${id} ${judged?.mean.text}`).toBe(judged?.state === 'outside');
    }
  }
});

/** SI of one unit that the item is asked in. */
function scaleOf(id: string): number {
  const item = kart.items[id];
  const read = readReading(`1 ${item?.measure?.unit}`, item, kart, 'reading');
  if ('problem' in read) throw new Error(read.problem.message);
  return read.reading.si;
}
