import { describe, expect, it } from 'vitest';
import type { JointLook } from './joint-look.ts';
import { fromTo, guessed, likelyOf } from './likely.ts';
import type { Link } from './model.ts';
import { sentenceOf } from './words.ts';

const joint = {
  id: 'rod/pins',
  part: 'rod',
  name: 'pins',
  kind: 'pin',
  count: 2,
  retention: 'spring clip',
  item: 'rod/pins',
};
const link: Link = {
  id: 'rod/pins',
  sort: 'joint',
  part: 'rod',
  corner: 'whole',
  says: 'fluid: all brakes on one line: no rest',
  likely: null,
  unknown: null,
};
const held = (text: string) => ({ text, likely: null, unknown: null, own: false });
const look = (over: object = {}): JointLook =>
  ({
    joint,
    first: held('spring clip'),
    second: undefined,
    notCounted: undefined,
    inWork: false,
    ...over,
  }) as JointLook;
const sentence = (over: Partial<Link>, of: JointLook | undefined) => sentenceOf({ ...link, ...over }, of, 'no brakes');

describe('a link that is enough', () => {
  it('is a part that nothing stands in for, or what parts share', () => {
    expect(sentence({ sort: 'part' }, undefined)).toBe(
      'The rod itself stands between you and no brakes: nothing else does its work.',
    );
    expect(sentence({ sort: 'shared' }, undefined)).toBe(
      'Fluid stands between you and no brakes: all brakes on one line.',
    );
  });

  it('is what holds a joint, one or nothing but it, with what was not counted', () => {
    expect(sentence({}, look())).toBe('Nothing but spring clip stands between you and no brakes: rod, 2 × pins.');
    expect(sentence({}, look({ joint: { ...joint, count: 1 }, notCounted: 'paint: it holds nothing' }))).toBe(
      'One spring clip stands between you and no brakes: rod, pins. Not counted: paint: it holds nothing.',
    );
  });

  it('is the one hand, or the two, that both retentions hang on', () => {
    const second = (looked: string) => look({ second: { ...held('strap'), looked } });
    expect(sentence({ sort: 'one hand' }, second('looked at once'))).toBe(
      'One pair of hands stands between you and no brakes: rod, pins, spring clip and strap, looked at once.',
    );
    expect(sentence({ sort: 'one hand' }, second('looked at twice, by two people'))).toBe(
      'What takes both at once stands between you and no brakes: rod, pins, spring clip and strap, looked at twice, by two people.',
    );
  });
});

describe('a chance', () => {
  it.each([
    [0.04, 0.02, 'from 4 to 2 of 100'],
    [0.01, 0, 'from 1 to 0 of 100'],
    [0.004, 0.0025, 'from 4 to 2.5 of 1,000'],
    [0.001, 0.00005, 'from 1 to fewer than 0.1 of 1,000'],
    [0.001, 0.0001, 'from 1 to 0.1 of 1,000'],
    [0.0004, 0.00012, 'from 4 to 1.2 of 10,000'],
    [0.1234, 0.5678, 'from 12 to 57 of 100'],
  ])('that changes from %d to %d is told by one denominator: %s', (from, to, words) => {
    expect(fromTo(from, to)).toBe(words);
  });

  it('that is guessed is trusted to a factor each way, and never passes one', () => {
    expect(guessed(0.2, 3, 'a guess')).toMatchObject({ chance: 0.2, low: 0.2 / 3, high: 0.2 * 3, basis: 'a guess' });
    expect(guessed(0.5, 3, 'a guess').high).toBe(1);
    expect(likelyOf({ mean: 0.01, low: 0.002, high: 0.03 }, 'record').words).toBe(
      '1 in 100, between fewer than 1 and 3',
    );
  });
});
