import { describe, expect, it } from 'vitest';
import type { Chance } from './chance.ts';
import { type Posterior, posteriorOf } from './posterior.ts';
import { atMostAfter, basisWords, chanceWords } from './words.ts';

const from = posteriorOf(
  { shape: { median: 2, spread: 0.35 }, scale: { median: 60, spread: 0.7 }, source: 'a guess' },
  [{ fate: 'running', age: 14 }],
) as Posterior;
const chance = (mean: number, low: number, high: number): Chance => ({ kind: 'chance', mean, low, middle: mean, high });

describe('a chance in words', () => {
  it('is so many of a hundred, both sides of it, with its band in the same hundred', () => {
    const words = chanceWords(chance(0.032, 0.012, 0.084), from);
    expect(words.short).toBe('3 in 100, between 1 and 8');
    expect(words.long).toBe(
      'Of 100 weekends like this one with a part this old, about 3 would see it fail, about 97 would not; the number could lie between 1 and 8 of 100.',
    );
    expect(words.basis).toBe('Mostly our starting guess: 1 on record, none of them failed. Guess: a guess.');
  });
  it('counts in a thousand or ten thousand where a hundred would say nothing', () => {
    expect(chanceWords(chance(0.0032, 0.0001, 0.02), from).short).toBe('3 in 1,000, between fewer than 1 and 20');
    expect(chanceWords(chance(0.00034, 0, 0.001), from).short).toBe('3 in 10,000, between 0 and 10');
    expect(chanceWords(chance(0.000001, 0, 0.00001), from).short).toBe(
      'fewer than 1 in 10,000, between 0 and fewer than 1',
    );
  });
  it('just below a hundredth or a thousandth is told as that one', () => {
    expect(chanceWords(chance(0.0096, 0.004, 0.02), from).short).toBe('1 in 100, between fewer than 1 and 2');
    expect(chanceWords(chance(0.00096, 0.0004, 0.002), from).short).toBe('1 in 1,000, between fewer than 1 and 2');
    expect(chanceWords(chance(0.0094, 0.004, 0.02), from).short).toBe('9 in 1,000, between 4 and 20');
  });
  it('above a half rounds the side that is left', () => {
    const words = chanceWords(chance(0.963, 0.7, 0.99), from);
    expect(words.short).toBe('96 in 100, between 70 and 99');
    expect(words.long).toContain('about 96 would see it fail, about 4 would not');
  });
  it('is never certain', () => {
    expect(chanceWords(chance(0.999, 0.97, 0.9999), from).short).toBe(
      'more than 99 in 100, between 97 and more than 99',
    );
  });
  it('says that nothing is on record', () => {
    const bare = { ...from, basis: 'starting guess' as const };
    expect(basisWords(bare)).toBe('Only our starting guess: nothing on record yet. Guess: a guess.');
  });
});

it('twenty clean weekends still allow 14 in 100 each, about three over twenty', () => {
  // Hanley and Lippman-Hand 1983: the rule of three (memory); the exact value 1 - 0.05^(1/20).
  expect(atMostAfter(20)).toBeCloseTo(0.1391, 4);
  expect(atMostAfter(300)).toBeCloseTo(3 / 300, 3);
  expect(() => atMostAfter(0)).toThrow('cleanEvents must be 1 or more, got 0');
});
