/** Hazards small enough to reckon by hand, from the starting guesses of data/retentions.yaml, each trusted to a factor of 3. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { facts, minute } from '../../../test/random-kart.ts';
import { kartFrom } from '../../../test/template-karts.ts';
import { fold, type KartEvent, type Payload } from '../../book/index.ts';
import type { Kart } from '../../kart/index.ts';
import { readPriors } from '../../life/index.ts';
import { type Catalogue, readRetentions } from '../retentions/index.ts';
import { weakLinks } from './weak-links.ts';

const read = (file: string): string => readFileSync(new URL(`../../../data/${file}`, import.meta.url), 'utf8');
const retentions = readRetentions(read('retentions.yaml'));
const priors = readPriors(read('priors.yaml'));

const CLIP = '{ second: none }';
/** Two push rods beside a pedal. What their bodies last nobody said, so they have no number; what holds them has one. */
const rods = (needs: string, { left = CLIP, leftNut = 'none', right = CLIP, rightNut = 'none' } = {}): Kart =>
  kartFrom(`
parts:
  pedal: { kind: brake pedal, system: brakes }
  left: { kind: brake push rod, system: brakes, joints: { lock nut: ${leftNut}, clevis pins: ${left} } }
  right: { kind: brake push rod, system: brakes, joints: { lock nut: ${rightNut}, clevis pins: ${right} } }
functions:
  stop: { severity: 1, hazard: no brakes, needs: ${needs} }
`);
const EITHER = '{ any of: [left, right] }';
const BOTH = '{ all of: [left, right] }';
/** As if nothing held it. */
const bare = (kart: Kart, name: 'left' | 'right'): Kart => ({
  ...kart,
  parts: Object.fromEntries(
    Object.entries(kart.parts).map(([id, part]) => [id, id === name ? { ...part, joints: [] } : part]),
  ),
});

const of = (
  kart: Kart,
  said: readonly Payload[] = [],
  over: { readonly retentions?: Catalogue; readonly event?: KartEvent } = {},
) => {
  const book = facts(said);
  const ask = { now: minute(9000), retentions, priors, books: [{ kart, facts: book }], ...over };
  const [hazard] = weakLinks(kart, fold(book), ask).hazards;
  if (!hazard) throw new Error('kart must have a hazard');
  return hazard;
};
const guessing = (name: string, first: number): Catalogue => ({
  ...retentions,
  retentions: retentions.retentions.map(one => (one.name === name ? { ...one, chance: { first } } : one)),
});

const [LEFT, RIGHT] = ['left/clevis pins', 'right/clevis pins'] as const;
const P = 0.002; // a spring clip lets go over one event
/** The same step left out on the other side too, high dependence: P × (1 + P) / 2, NUREG/CR-1278 table 20-17 (memory). */
const hands = (p: number): number => (p * (1 + p)) / 2;

describe('one rod on one clip', () => {
  it('is lost as often as the clip lets go, at least: what the rod lasts nobody knows', () => {
    const { top, atLeast, unknown } = of(rods('left'));
    expect(top).toBeNull();
    expect(atLeast).toEqual({
      chance: P,
      low: P / 3,
      high: P * 3,
      words: '2 in 1,000, between fewer than 1 and 6',
      basis: 'Only our starting guess, for 1 link.',
    });
    expect(unknown.map(({ id }) => id)).toEqual(['left']);
  });

  it('buys all of it with a clip that never lets go, and nothing is said of what the rod buys', () => {
    expect(of(rods('left')).links).toEqual([
      expect.objectContaining({
        id: LEFT,
        ifPerfect: 0,
        ifForgotten: 1,
        buys: 'from 2 to 0 of 1,000 if it never let go',
        costs: 'from 2 to 1,000 of 1,000 if it has let go or was forgotten',
      }),
    ]);
  });

  it('that nothing holds has no number at all', () => {
    expect(of(bare(rods('left'), 'left'))).toMatchObject({
      top: null,
      atLeast: null,
      links: [],
      singlePoints: [{ id: 'left', couldAdd: [] }],
      unknown: [{ id: 'left' }],
    });
  });
});

describe('two rods that back each other up, one clip each', () => {
  it('are lost when both clips let go or one pair of hands forgot both', () => {
    const { atLeast } = of(rods(EITHER));
    const whole = (p: number): number => 1 - (1 - hands(p)) * (1 - p * p);
    expect(atLeast?.chance).toBeCloseTo(whole(P), 15);
    expect(atLeast?.low).toBeCloseTo(whole(P / 3), 15);
    expect(atLeast?.high).toBeCloseTo(whole(P * 3), 15);
    expect(atLeast?.basis).toBe('Only our starting guess, for 3 links.');
  });

  it('gain most from the hands, then as much from either clip', () => {
    const [most, ...clips] = of(rods(EITHER)).links;
    expect(most).toMatchObject({ sort: 'shared', ifForgotten: 1 });
    expect(most?.ifPerfect).toBeCloseTo(P * P, 15);
    expect(clips.map(({ id }) => id)).toEqual([LEFT, RIGHT]);
    for (const { ifPerfect, ifForgotten } of clips) {
      expect(ifPerfect).toBeCloseTo(hands(P), 15);
      expect(ifForgotten).toBeCloseTo(1 - (1 - hands(P)) * (1 - P), 15);
    }
  });

  it('are four pairs, of which only clip and clip has a number', () => {
    const clip = (which: string) => `${which}, clevis pins: spring clip`;
    const [first, ...rest] = of(rods(EITHER)).pairs;
    expect(first).toEqual({
      ids: [LEFT, RIGHT],
      says: [clip('left'), clip('right')],
      likely: { chance: P * P, words: 'fewer than 1 in 10,000, mostly fewer than 1' },
    });
    expect(rest).toEqual([
      { ids: ['left', 'right'], says: ['left', 'right'], likely: null },
      { ids: ['left', RIGHT], says: ['left', clip('right')], likely: null },
      { ids: [LEFT, 'right'], says: [clip('left'), 'right'], likely: null },
    ]);
  });

  it('say of a pair how far off it may be: three times each way for both', () => {
    const [first] = of(rods(EITHER), [], { retentions: guessing('spring clip', 0.3) }).pairs;
    expect(first?.likely?.chance).toBeCloseTo(0.3 * 0.3, 15);
    expect(first?.likely?.words).toBe('9 in 100, between 1 and 80'); // 0.1 × 0.1; 0.9 × 0.9 = 81
  });

  it('show nothing of what a clip buys where the other rod is held by nothing that has a number', () => {
    const { links: none, atLeast: least, pairs: both } = of(bare(rods(EITHER), 'right'));
    expect(none).toEqual([]);
    expect(least).toMatchObject({ chance: 0, low: 0, high: 0 });
    expect(both.map(({ likely }) => likely)).toEqual([null, null]);
  });
});

describe('pairs', () => {
  it('come likeliest first, whatever order the kart file has them in', () => {
    const kart = rods(EITHER, {
      left: '{ retention: R-clip, second: none }',
      rightNut: '{ retention: safety wire, second: none }',
    });
    const known = of(kart).pairs.filter(({ likely }) => likely !== null);
    expect(known.map(({ ids }) => ids)).toEqual([
      [LEFT, 'right/lock nut'],
      [LEFT, RIGHT],
    ]);
    expect(known[0]?.likely?.chance).toBeCloseTo(0.004 * 0.003, 15);
    expect(known[1]?.likely?.chance).toBeCloseTo(0.004 * 0.002, 15);
  });

  it('are told for the likeliest dozen, and counted for all', () => {
    const nut = '{ second: none }';
    const kart = rods('{ any of: [{ all of: [left, pedal] }, right] }', { leftNut: nut, rightNut: nut });
    const { pairs, cutSets } = of(kart);
    expect(cutSets?.byOrder[1]).toBeGreaterThan(12);
    expect(pairs.length).toBe(12);
    const chances = pairs.map(({ likely }) => likely?.chance ?? -1);
    expect(chances).toEqual(chances.toSorted((a, b) => b - a));
  });
});

describe('from what the whole is known', () => {
  /** A guess that ten clean events outweigh: it counts as 0.01 / 0.002 = 5. */
  const light: Catalogue = { ...retentions, 'own record': { ...retentions['own record'], weight: 0.01 } };
  const clean = (...joints: readonly string[]): readonly Payload[] =>
    Array.from({ length: 11 }, (_, n): Payload[] => [
      ...joints.map((joint): Payload => ({ kind: 'made', joint })),
      { kind: 'ran', minutes: 1, event: `event ${n}` },
    ]).flat();
  const basis = (kart: Kart, ...joints: readonly string[]) =>
    of(kart, clean(...joints), { retentions: light }).atLeast?.basis;
  const nut = { leftNut: '{ second: none }' };

  it('is the record alone where every link has one', () => {
    expect(basis(rods('left'), LEFT)).toBe('From your own record, for 1 link.');
    expect(basis(rods('left', nut), LEFT, 'left/lock nut')).toBe('From your own record, for 2 links.');
  });

  it('is mostly the guess only where fewer than half of the links have a record', () => {
    const rest = 'links from your own record, the rest our starting guess.';
    expect(basis(rods('left', nut), LEFT)).toBe(`1 of 2 ${rest}`);
    const three = rods(BOTH, { ...nut, right: '{ retention: R-clip, second: none }' });
    expect(basis(three, LEFT, RIGHT)).toBe(`2 of 3 ${rest}`);
    expect(basis(three, LEFT)).toBe(`Mostly our starting guess: 1 of 3 ${rest}`);
  });
});

describe('a second retention', () => {
  const kart = rods('left', { left: '{ second: strap round the clevis }' });
  const event = (name: string): KartEvent => ({
    ...{ pos: 0, fact: 'e', at: minute(0), by: 'A', minutes: 0, laps: 0, wet: false },
    ...{ event: name, from: minute(0), until: minute(9000), runMinutes: 60, runLaps: 60 },
  });
  const seen: readonly Payload[] = [
    { kind: 'made', joint: LEFT },
    { kind: 'ran', minutes: 10, event: 'Round 1' },
  ];
  const second = (name: string) => of(kart, seen, { event: event(name) }).links.find(({ sort }) => sort === 'second');

  it('that was looked at for the event still running is there; for the next one it may be gone', () => {
    expect(second('Round 1')).not.toHaveProperty('latent');
    expect(second('Round 2')).toMatchObject({ latent: true });
  });
});
