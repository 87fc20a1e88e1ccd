import { describe, expect, test } from 'vitest';
import { bad, good, HEAD } from '../../test/fixtures/kart-text.ts';

const file = (joint: string): string =>
  `${HEAD}parts: { clip: { joints: { extra: { retention: self-locking nut, ${joint} } } } }`;
const joint = (text: string) => {
  const kart = good(file(text));
  return { joint: kart.joints['clip/extra'], item: kart.items['clip/extra'] };
};

describe('a bolt without a torque of its maker', () => {
  test('is pulled to a range computed from thread and class, and the step says so', () => {
    const { joint: bolt, item } = joint('kind: bolt, thread: M8, class: "8.8"');
    expect(bolt?.torque).toMatchObject({
      min: { si: 15.2, unit: 'N·m', text: '15.2 N·m' },
      max: { si: 17.8, unit: 'N·m', text: '17.8 N·m' },
      source: "computed from M8x1.25 8.8, not the maker's figure",
    });
    expect(item).toMatchObject({
      action: 'torque',
      source: "computed from M8x1.25 8.8, not the maker's figure",
      measure: { unit: 'N·m', min: { si: 15.2 }, max: { si: 17.8 } },
    });
    expect(item?.accept).toBe('15.2 N·m to 17.8 N·m, computed; self-locking nut');
    expect(item?.caution).toMatch(/oiled.*thin casting.*running torque of the locking nut/);
  });
  test('keeps the figure that its file gives', () => {
    const { joint: bolt, item } = joint('kind: bolt, thread: M8, class: "8.8", torque: 9 N·m, source: manual page 3');
    expect(bolt?.torque).toMatchObject({ max: { si: 9 }, source: 'manual page 3' });
    expect(bolt?.torque?.computed).toBeUndefined();
    expect(item?.caution).toBeUndefined();
  });
  test('has none where the file takes it away, or thread or class are not known', () => {
    for (const text of [
      'kind: bolt, thread: M8, class: "8.8", torque: none',
      'kind: bolt, thread: M8',
      'kind: bolt, class: "8.8"',
      'kind: nut, thread: M8, class: "8"',
      'kind: set screw, thread: M6, class: 45H',
      'kind: stud nuts, thread: M8, class: "8.8"',
      'kind: clamp, thread: M8, class: "8.8"',
      'kind: union, thread: G 1/8',
    ])
      expect(joint(text), text).toMatchObject({ item: { action: 'secure' }, joint: { kind: expect.any(String) } });
  });
  test('may be an inch bolt: 11.9 kN at 90 % of yield, K 0.15, scatter 0.25', () => {
    expect(joint('kind: bolt, thread: 1/4-28 UNF, class: grade 5').joint?.torque?.max.si).toBeCloseTo(9, 6);
  });
});

describe('a thread or a class that does not exist', () => {
  test.each([
    ['kind: bolt, thread: M8x1.5', 'thread', /"M8x1.25"/],
    ['kind: bolt, thread: M13', 'thread', /there is no M13/],
    ['kind: bolt, thread: 1/4-24', 'thread', /1\/4-28 UNF|1\/4-20 UNC/],
    ['kind: nut, thread: eight', 'thread', /write M, the diameter/],
    ['kind: bolt, thread: M8, class: "88"', 'class', /"8.8"/],
    ['kind: bolt, thread: M8, class: "8"', 'class', /marks a nut/],
    ['kind: bolt, thread: M8, class: grade 8', 'class', /inch/],
    ['kind: bolt, thread: 1/4-28, class: "8.8"', 'class', /grade/],
    ['kind: nut, thread: M8, class: "81"', 'class', /look at the mark/],
    ['kind: bolt, class: "8.9"', 'class', /"8.8"/],
  ])('%s is refused with what would be right', (text, key, remedy) => {
    const problems = bad(file(text));
    expect(problems).toHaveLength(1);
    expect(problems[0]).toMatchObject({ path: `parts > clip > joints > extra > ${key}` });
    expect(problems[0]?.remedy).toMatch(remedy);
  });
  test('is told for thread and class at once', () => {
    expect(bad(file('kind: bolt, thread: M8x1.5, class: "9.9"')).map(p => p.path.split(' > ').at(-1))).toEqual([
      'thread',
      'class',
    ]);
  });
});
