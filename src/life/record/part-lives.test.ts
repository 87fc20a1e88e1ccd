import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { facts } from '../../../test/random-kart.ts';
import { item, smallKart } from '../../../test/small-kart.ts';
import { type Fact, fold, type Payload, partAge } from '../../book/index.ts';
import { outlookOf } from '../outlook.ts';
import { livesOf } from './part-lives.ts';

const kart = smallKart(item('hub/crack', [{ on: 'event' }]), item('wheel/bearing', [{ on: 'event' }]));
const ran = (hours: number): Payload => ({ kind: 'ran', minutes: 60 * hours, laps: 50 * hours });
const off: Payload = { kind: 'taken off', part: 'hub' };
const fresh = (more: Partial<Extract<Payload, { kind: 'fitted' }>> = {}): Payload => ({
  kind: 'fitted',
  part: 'hub',
  fresh: true,
  ...more,
});
const look = (result: 'pass' | 'fail', id = 'hub/crack'): Payload => ({ kind: 'checked', item: id, result });
const found = (grade: 'safety' | 'cosmetics' = 'safety'): Payload => ({
  kind: 'found',
  part: 'hub',
  defect: 'crack at the slot',
  grade,
});

/** Lives of the hub alone: frame and wheel are of its kind too. */
const lives = (...history: readonly Payload[]) =>
  livesOf([{ kart, facts: facts(history) }], 'thing').filter(({ part }) => part === 'hub');

describe('the lives of a part', () => {
  it('one that no fact mentions has run since the book began and still runs', () => {
    expect(lives(ran(2), ran(3))).toMatchObject([{ fate: 'running', age: 5, now: true, kart: 'small' }]);
  });
  it('one replaced fine lasted that long, and the new one starts anew', () => {
    const [old, now] = lives(ran(4), off, ran(1), fresh({ serial: 'B' }), ran(2));
    expect(old).toMatchObject({ fate: 'replaced', age: 4, now: false });
    expect(now).toMatchObject({ fate: 'running', age: 2, now: true, serial: 'B' });
  });
  it('one found cracked failed between the last good look and the find', () => {
    const history = [ran(2), look('pass'), ran(3), found(), off, fresh(), ran(1)];
    expect(lives(...history)).toMatchObject([
      { fate: 'found', age: 5, fineAt: 2, facts: ['f1', 'f3', 'f5'] },
      { fate: 'running', age: 1 },
    ]);
  });
  it('one replaced after its check failed was found by that check', () => {
    expect(lives(ran(2), look('pass'), ran(3), look('fail'), off, fresh())[0]).toMatchObject({
      fate: 'found',
      age: 5,
      fineAt: 2,
    });
  });
  it('one still on with a crack in it has ended all the same', () => {
    expect(lives(ran(2), found(), ran(1))).toMatchObject([{ fate: 'found', age: 2, fineAt: 0, now: true }]);
  });
  it('one whose good look came at the hours of the find is open before that', () => {
    expect(lives(ran(2), look('pass'), found())).toMatchObject([{ fate: 'found', age: 2, fineAt: 0 }]);
  });
  it('a mended defect, a scratch, and a fail that was passed since end no life', () => {
    const mended: Payload = { kind: 'mended', found: 'f1', how: 'dressed and tested for cracks' };
    expect(lives(ran(2), found(), mended, ran(1))).toMatchObject([{ fate: 'running', age: 3 }]);
    expect(lives(ran(2), found('cosmetics'), off, fresh())[0]).toMatchObject({ fate: 'replaced', age: 2 });
    expect(lives(ran(2), look('fail'), look('pass'), off, fresh())[0]).toMatchObject({ fate: 'replaced' });
  });
  it('one that failed while it ran failed at the age it had then, or that a person says', () => {
    const broke = (more: Partial<Extract<Payload, { kind: 'failed' }>> = {}): Payload => ({
      kind: 'failed',
      part: 'hub',
      how: 'broke at the slot',
      ...more,
    });
    const changed: Payload[] = [off, fresh(), ran(1)];
    expect(lives(ran(2), look('pass'), ran(3), broke(), ran(1), ...changed)).toMatchObject([
      { fate: 'failed', age: 5, facts: ['f3', 'f6'], now: false },
      { fate: 'running', age: 1 },
    ]);
    expect(lives(ran(2), broke({ afterMinutes: 200 }), ...changed)[0]).toMatchObject({ fate: 'failed', age: 200 / 60 });
    expect(lives(ran(2), broke())).toMatchObject([{ fate: 'failed', age: 2, now: true }]);
    expect(lives(ran(2), broke({ joint: 'hub/bolts' }), ...changed)[0]).toMatchObject({ fate: 'replaced', age: 2 });
  });
  it('one that failed with no running on record is no life of any length, and never one that ended fine', () => {
    const broke: Payload = { kind: 'failed', part: 'hub', how: 'broke' };
    expect(lives(broke, off, fresh(), ran(1))).toMatchObject([{ fate: 'running', age: 1 }]);
  });
  it('one that failed and was mended lives on, repaired; struck, it never failed', () => {
    const broke: Payload = { kind: 'failed', part: 'hub', how: 'broke' };
    const mended: Payload = { kind: 'mended', found: 'f1', how: 'sleeved' };
    expect(lives(ran(2), broke, mended, ran(1))).toMatchObject([{ fate: 'running', age: 3 }]);
    const struck: Payload = { kind: 'struck', fact: 'f1', why: 'the other side' };
    expect(lives(ran(2), broke, struck, ran(1))).toMatchObject([{ fate: 'running', age: 3 }]);
  });
  it('a joint that had come loose says nothing of the part', () => {
    expect(lives(ran(2), look('fail', 'hub/bolts'), off, fresh())[0]).toMatchObject({ fate: 'replaced' });
  });
  it('nor does a defect found at a joint', () => {
    const loose: Payload = { kind: 'found', part: 'hub', item: 'hub/bolts', defect: 'nut gone', grade: 'safety' };
    expect(lives(ran(2), loose, off, fresh())[0]).toMatchObject({ fate: 'replaced' });
  });
  it('hours carried in were not watched', () => {
    expect(lives(off, fresh({ carriedMinutes: 600 }), ran(3))).toMatchObject([{ fate: 'running', age: 13, from: 10 }]);
  });
  it('a struck fact ends nothing', () => {
    const struck: Payload = { kind: 'struck', fact: 'f2', why: 'the wrong part' };
    expect(lives(ran(4), off, fresh(), struck, ran(1))).toMatchObject([{ fate: 'running', age: 4 }]);
  });
  it('are counted in laps where that is asked', () => {
    expect(livesOf([{ kart, facts: facts([ran(2)]) }], 'thing', 'laps')[0]).toMatchObject({ age: 100 });
  });
  it('of a kind that is not on the kart are none', () => {
    expect(livesOf([{ kart, facts: facts([ran(2)]) }], 'no such kind')).toEqual([]);
  });
});

describe('a part moved between karts', () => {
  const moved: Payload = { kind: 'moved', part: 'hub', serial: 'A', to: 'other' };
  const here: Payload[] = [ran(4), moved, fresh(), ran(1)];
  const there: Payload[] = [ran(7), off, fresh({ serial: 'A', carriedMinutes: 240 }), ran(2), found(), off, fresh()];
  const books = [
    { kart, facts: facts(here) },
    { kart: { ...kart, name: 'other' }, facts: facts(there) },
  ];
  const pooled = livesOf(books, 'thing').filter(({ part }) => part === 'hub');

  it('takes its hours along, a leg on each kart', () => {
    expect(pooled).toMatchObject([
      { kart: 'small', fate: 'running', age: 4, now: false },
      { kart: 'small', fate: 'running', age: 1, now: true },
      { kart: 'other', fate: 'replaced', age: 7 },
      { kart: 'other', fate: 'found', age: 6, from: 4, fineAt: 4, serial: 'A' },
      { kart: 'other', fate: 'running', age: 0, now: true },
    ]);
  });
  it('is weighed as the one life it was', () => {
    const prior = { shape: { median: 2, spread: 0.4 }, scale: { median: 12, spread: 0.7 }, source: 'a guess' };
    const one = [...pooled.slice(1, 3), { ...pooled[3], from: 0 } as (typeof pooled)[number]];
    const part = pooled[1] as (typeof pooled)[number];
    const [legs, whole] = [pooled, one].map(lives => outlookOf({ part, lives, prior, hours: 2 }));
    expect(legs?.kind === 'outlook' && legs.chance.mean).toBeCloseTo(
      whole?.kind === 'outlook' ? whole.chance.mean : Number.NaN,
      10,
    );
  });
});

describe('what is on record and the state of the book', () => {
  const payload: fc.Arbitrary<Payload> = fc.oneof(
    fc.integer({ min: 0, max: 8 }).map(quarters => ran(quarters / 4)),
    fc.constantFrom<Payload>(off, fresh(), fresh({ carriedMinutes: 90 }), { kind: 'fitted', part: 'hub' }),
    fc.constantFrom<Payload>(look('pass'), look('pass', 'wheel/bearing'), {
      kind: 'moved',
      part: 'hub',
      to: 'other',
    }),
  );
  test('agree on the age of every part that is there now, whatever happened', () => {
    fc.assert(
      fc.property(fc.array(payload, { maxLength: 30 }), history => {
        const written: readonly Fact[] = facts(history);
        const state = fold(written);
        for (const life of livesOf([{ kart, facts: written }], 'thing')) {
          if (life.now) expect(life.age).toBeCloseTo(partAge(state, life.part).minutes / 60, 9);
          expect(life.age).toBeGreaterThanOrEqual(life.from ?? 0);
        }
      }),
    );
  });
  test('every hour a part ran while it was watched is in one life, and in one only', () => {
    fc.assert(
      fc.property(fc.array(payload, { maxLength: 30 }), history => {
        let [on, hours] = [true, 0];
        for (const fact of history) {
          if (fact.kind === 'ran' && on) hours += fact.minutes / 60;
          if (fact.kind === 'fitted') on = true;
          if (fact.kind === 'taken off' || fact.kind === 'moved') on = false;
        }
        const watched = lives(...history).reduce((sum, { age, from = 0 }) => sum + age - from, 0);
        expect(watched).toBeCloseTo(hours, 9);
      }),
    );
  });
});

it('the outlook of a part counts it once, and is unknown of one that has failed', () => {
  const all = lives(ran(4), off, fresh(), ran(2));
  const part = all[1] as (typeof all)[number];
  const prior = { shape: { median: 2, spread: 0.4 }, scale: { median: 12, spread: 0.7 }, source: 'a guess' };
  const [within, without] = [all, all.slice(0, 1)].map(some => outlookOf({ part, lives: some, prior, hours: 1 }));
  expect(within).toEqual(without);
  expect(outlookOf({ part, lives: all, prior: undefined, hours: 1 })).toMatchObject({ kind: 'unknown' });
  const [cracked] = lives(ran(2), found());
  expect(cracked && outlookOf({ part: cracked, lives: [cracked], prior, hours: 1 })).toMatchObject({ kind: 'unknown' });
});
