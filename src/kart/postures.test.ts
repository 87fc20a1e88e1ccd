import { describe, expect, it } from 'vitest';
import { good, HEAD, only } from '../../test/fixtures/kart-text.ts';
import { leastPostureMinutes, POSTURES, postureMinutes } from './index.ts';

const withPostures = (postures: string): string => `${HEAD}postures: ${postures}\n`;

describe('bringing the kart into another posture', () => {
  it('takes the minutes its file says, from each posture; three where it says nothing', () => {
    const kart = good(withPostures('{ scales: { minutes: 6, from: { ground: 5 } }, side: { people: 2 } }'));
    expect(POSTURES.map(from => postureMinutes(kart, from, 'scales'))).toEqual([6, 5, 0, 6]);
    expect(POSTURES.map(from => postureMinutes(kart, from, 'side'))).toEqual([3, 3, 3, 0]);
    expect(leastPostureMinutes(kart, 'scales')).toBe(5);
    expect(postureMinutes(good(HEAD), 'stand', 'ground')).toBe(3);
  });

  it('takes as long as from the slowest where nobody knows how it stands', () => {
    const kart = good(withPostures('{ ground: { minutes: 2, from: { scales: 7 } } }'));
    expect(postureMinutes(kart, undefined, 'ground')).toBe(7);
  });

  it.each([
    ['{ lift: { minutes: 2 } }', /stand|ground/],
    ['{ stand: { minutes: -2 } }', /minutes, 0 or more/],
    ['{ stand: { minutes: 3 min } }', /minutes, such as 2.5/],
    ['{ stand: { people: 4 } }', /at most 3 people/],
    ['{ stand: { from: { floor: 2 } } }', /stand|ground/],
    ['{ stand: { from: { stand: 2 } } }', /other than "stand".*stands so already/s],
  ])('%s is refused with the reason', (postures, said) => {
    const { message, remedy, line } = only(withPostures(postures));
    expect(`${message} ${remedy}`).toMatch(said);
    expect(line).toBe(4);
  });
});
