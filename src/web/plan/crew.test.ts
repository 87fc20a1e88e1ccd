import { describe, expect, test } from 'vitest';
import { keepIn } from '../place.ts';
import { ALONE, askOf, type Crew, keepCrew, keptCrew, minutesOf, nameOf, timesLeft } from './crew.ts';

const NOW = '2026-11-26T18:00:00.000Z';
const crew: Crew = {
  people: 2,
  names: ['R. Vale', ''],
  times: [{ minutes: 300, from: '2026-11-28T08:00:00.000Z' }, { minutes: 180 }],
};

describe('how long', () => {
  test.each([
    ['3 h', 180],
    ['90 min', 90],
    ['1 h 30 min', 90],
    ['1,5 h', 90],
    [' 2h ', 120],
  ])('%s is understood', (typed, minutes) => expect(minutesOf(typed)).toBe(minutes));

  test.each(['3', '', 'tonight', '0 min', '-1 h', '999 h'])('"%s" is not', typed =>
    expect(minutesOf(typed)).toBeUndefined(),
  );
});

describe('the times there are', () => {
  test('come in their order, and one that has begun is as long as what is left of it', () => {
    expect(timesLeft(crew, NOW)).toEqual([crew.times[1], crew.times[0]]);
    const begun: Crew = { ...crew, times: [{ minutes: 180, from: '2026-11-26T17:00:00.000Z' }] };
    expect(timesLeft(begun, NOW)).toEqual([{ minutes: 120, from: NOW }]);
  });

  test('that are all over leave no time, which is not time without end', () => {
    const over: Crew = { ...crew, times: [{ minutes: 30, from: '2026-11-26T17:00:00.000Z' }] };
    expect(askOf(over, NOW)).toEqual({ people: 2, windows: [{ minutes: 0 }] });
    expect(askOf(ALONE, NOW)).toEqual({ people: 1 });
  });
});

describe('what the device keeps', () => {
  test('is kept for each kart; mangled, it is as if nobody had said anything', () => {
    const keep = keepIn(undefined);
    keepCrew(keep, '41', crew);
    expect(keptCrew(keep, '41')).toEqual(crew);
    expect(keptCrew(keep, '7')).toEqual(ALONE);
    for (const text of [
      '{',
      '{"people":9,"names":[],"times":[]}',
      '{"people":2,"names":[],"times":[{"minutes":-1}]}',
    ]) {
      keep.set('crew 41', text);
      expect(keptCrew(keep, '41')).toEqual(ALONE);
    }
  });

  test('names a person by number where no name was given', () => {
    expect([nameOf(crew, 1), nameOf(crew, 2), nameOf(crew, 3)]).toEqual(['R. Vale', 'person 2', 'person 3']);
  });
});
