/** What weak links say of themselves: places, words, and from what they are known. */
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { facts, minute } from '../../../test/random-kart.ts';
import { kartFrom } from '../../../test/template-karts.ts';
import { type Fact, fold, type KartEvent, type Payload } from '../../book/index.ts';
import type { Kart } from '../../kart/index.ts';
import { readPriors } from '../../life/index.ts';
import { readRetentions } from '../retentions/index.ts';
import { NOTE } from './model.ts';
import { weakLinks } from './weak-links.ts';

const read = (file: string): string => readFileSync(new URL(`../../../data/${file}`, import.meta.url), 'utf8');
const retentions = readRetentions(read('retentions.yaml'));
const priors = readPriors(read('priors.yaml'));
const kart = (second: string, needs = '{ all of: [pedal, rod] }', over = ''): Kart =>
  kartFrom(`
parts:
  pedal: { kind: brake pedal, system: brakes }
  rod: { kind: brake push rod, system: brakes, joints: { lock nut: none, clevis pins: { second: ${second} } } }
functions:
  stop: { severity: 1, hazard: no brakes, needs: ${needs} }
${over}`);
/** Pedal and rod made pumps: they share what they are filled from and what they stand on. */
const pumps = (needs: string): Kart => {
  const made = kart('none', needs);
  const parts = Object.values(made.parts).map(part => [part.id, { ...part, kind: 'master cylinder', joints: [] }]);
  return { ...made, parts: Object.fromEntries(parts) };
};
const event: KartEvent = {
  pos: 0,
  fact: 'e',
  at: minute(0),
  by: 'A',
  minutes: 0,
  laps: 0,
  event: 'Round 1',
  from: minute(900),
  until: minute(2000),
  runMinutes: 120,
  runLaps: 60,
  wet: false,
};
const of = (karts: Kart, ...said: Payload[]) => {
  const book: readonly Fact[] = facts(said);
  const found = weakLinks(karts, fold(book), {
    now: minute(800),
    event,
    retentions,
    priors,
    books: [{ kart: karts, facts: book }],
  });
  const [hazard] = found.hazards;
  if (!hazard) throw new Error('a hazard');
  return { ...found, ...hazard };
};
const PINS = 'rod/clevis pins';
const placed = { part: 'rod', system: 'brakes', corner: 'whole', place: { x: 0, y: 0 }, joint: PINS };

describe('weak links', () => {
  it('say of which kart, when, for which event, and what they are not', () => {
    expect(of(kart('none'))).toMatchObject({ kart: kart('none').name, at: minute(800), event: 'Round 1', note: NOTE });
    const { hazard } = of({
      ...kart('none'),
      functions: { stop: { name: 'stop', severity: 1, needs: { part: 'rod' } } },
    } as Kart);
    expect(hazard).toBe('"stop" lost');
  });

  it('name a pair of retentions, each alone and what takes both, with place and look', () => {
    const { links } = of(kart('strap round the clevis'));
    const link = (which: string) => links.find(({ id }) => id === `${PINS}, ${which}`);
    expect(link('first')).toMatchObject({
      ...placed,
      sort: 'first',
      says: 'rod, clevis pins: spring clip',
      unknown: null,
    });
    expect(link('first')).not.toHaveProperty('latent');
    expect(link('second')).toMatchObject({
      ...placed,
      sort: 'second',
      latent: true,
      says: 'rod, clevis pins: strap round the clevis, not looked at since',
    });
    expect(link('one hand')).toMatchObject({
      ...placed,
      sort: 'one hand',
      says: 'rod, clevis pins: spring clip and strap round the clevis, not looked at since',
    });
    expect(link('one hand')?.likely?.basis).toMatch(/^Only our starting guess/);
  });

  it('name what each buys and costs by the whole hazard', () => {
    for (const { buys, costs, ifPerfect, ifForgotten } of of(kart('strap round the clevis')).links) {
      expect(buys).toMatch(/^from [\d.]+ to (fewer than )?[\d.]+ of [\d,]+ if it never let go$/);
      expect(costs).toMatch(/^from [\d.]+ to [\d,.]+ of [\d,]+ if it has let go or was forgotten$/);
      expect(ifPerfect).toBeLessThanOrEqual(ifForgotten);
    }
  });

  it('come those first that buy most, single points by what a hand can do about them', () => {
    const { links, singlePoints } = of(kart('none'));
    const worth = links.map(({ ifPerfect }) => ifPerfect);
    expect(worth).toEqual(worth.toSorted((a, b) => a - b));
    const order = ['joint', 'one hand', 'part'];
    const places = singlePoints.map(({ sort }) => order.indexOf(sort));
    expect(new Set(places)).toEqual(new Set([0, 1, 2]));
    expect(places).toEqual(places.toSorted((a, b) => a - b));
  });

  it('could have a second only where one joint is not in work already', () => {
    const add = (...said: Payload[]) =>
      of(kart('none'), ...said).singlePoints.find(({ joint, sort }) => joint === PINS && sort === 'joint');
    expect(add()?.couldAdd).toEqual(['second clip', 'strap round the clevis']);
    const opened: Payload[] = [
      { kind: 'made', joint: PINS },
      { kind: 'loosened', joint: PINS },
    ];
    expect(add(...opened)).toMatchObject({
      couldAdd: [],
      likely: null,
      unknown: `open since ${minute(1).slice(0, 10)}, not made`,
    });
    expect(
      of(kart('none'))
        .singlePoints.filter(({ sort }) => sort !== 'joint')
        .flatMap(({ couldAdd }) => couldAdd),
    ).toEqual([]);
  });

  it('take what several parts share for one event of its own, with where it is', () => {
    const shared = (needs: string) => of(pumps(needs)).singlePoints.filter(({ sort }) => sort === 'shared');
    expect(shared('{ any of: [pedal, rod] }').map(({ id }) => id)).toEqual([
      'the brake fluid',
      'the mounting of the pumps',
    ]);
    const [fluid, ...more] = shared('{ all of: [rod] }');
    expect(more).toEqual([]); // a mounting is shared by two
    expect(fluid).toEqual({
      id: 'the brake fluid',
      sort: 'shared',
      system: 'brakes',
      corner: 'whole',
      place: { x: 0, y: 0 },
      says: 'the brake fluid: one bottle fills every circuit; old or wet fluid boils in all of them on the same lap',
      likely: {
        chance: 0.0005,
        low: 0.0005 / 3,
        high: 0.0005 * 3,
        words: expect.stringMatching(/^5 in 10,000/),
        basis: 'Only our starting guess: common practice: our choice.',
      },
      unknown: null,
      sentence:
        'The brake fluid stands between you and no brakes: one bottle fills every circuit; old or wet fluid boils in all of them on the same lap.',
      couldAdd: [],
    });
  });

  it('know from what they are known: the guess, mostly the guess, or the record', () => {
    const guess = of(kart('none')).atLeast?.basis;
    expect(guess).toMatch(/^Only our starting guess, for \d+ links\.$/);
    const clean = Array.from({ length: 1400 }, (_, n): Payload[] => [
      { kind: 'ran', minutes: 1, event: `event ${n}` },
      { kind: 'made', joint: PINS },
    ]).flat();
    const mostly = of(kart('none'), { kind: 'made', joint: PINS }, ...clean);
    expect(mostly.atLeast?.basis).toMatch(
      /^Mostly our starting guess: 1 of \d+ links from your own record, the rest our starting guess\.$/,
    );
    const alone = {
      ...kart('none'),
      functions: { stop: { name: 'stop', severity: 1, hazard: 'no brakes', needs: { part: 'rod' } } },
    } as Kart;
    expect(of(alone).singlePoints.length).toBeGreaterThan(1);
  });

  it('are pairs where two together are enough, the likeliest first, those without a number last', () => {
    const twice = `{ any of: [pedal, rod] }`;
    const { pairs, cutSets } = of(kart('none', twice));
    expect(pairs.length).toBe(Math.min(12, cutSets?.byOrder[1] ?? 0));
    const chances = pairs.map(({ likely }) => likely?.chance ?? -1);
    expect(chances).toEqual(chances.toSorted((a, b) => b - a));
    expect(pairs.every(({ ids, says }) => ids.length === 2 && says.every(text => text.length > 0))).toBe(true);
    expect(
      pairs.filter(({ likely }) => likely).every(({ likely }) => Object.keys(likely ?? {}).join() === 'chance,words'),
    ).toBe(true);
  });
});
