import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { facts } from '../../../test/random-kart.ts';
import { kartFrom } from '../../../test/template-karts.ts';
import type { Payload } from '../../book/index.ts';
import type { KartBook } from '../../life/index.ts';
import { type Retention, readRetentions } from '../retentions/index.ts';
import { type Role, retentionRecord } from './retention-record.ts';

const catalogue = readRetentions(readFileSync(new URL('../../../data/retentions.yaml', import.meta.url), 'utf8'));
const named = (name: string): Retention => catalogue.retentions.find(one => one.name === name) as Retention;
const kart = kartFrom(`
parts:
  pedal: { kind: brake pedal, system: brakes }
  rod: { kind: brake push rod, system: brakes, joints: { lock nut: none, clevis pins: { second: strap round the clevis } } }
functions:
  stop: { severity: 1, hazard: no brakes, needs: { all of: [pedal, rod] } }
`);
const PINS = 'rod/clevis pins';
const ran = (n: number): Payload => ({ kind: 'ran', minutes: 10, event: `event ${n}` });
const made: Payload = { kind: 'made', joint: PINS };
const fail = (why: string): Payload => ({ kind: 'checked', item: PINS, result: 'fail', why });
/** So many events, looked at after each. */
const clean = (events: number): readonly Payload[] => Array.from({ length: events }, (_, n) => [ran(n), made]).flat();
const book = (...history: readonly Payload[]): KartBook => ({ kart, facts: facts([made, ...history]) });
const of = (books: readonly KartBook[], name = 'spring clip', role: Role = 'first') =>
  retentionRecord(books, catalogue)(named(name), role);

describe('how often a retention lets go', () => {
  it('is the starting guess alone where nothing is on record', () => {
    const found = of([]);
    expect(found?.likely).toMatchObject({ chance: 0.002, low: 0.002 / 3, high: 0.006 });
    expect(found?.likely.basis).toMatch(/^Only our starting guess/);
    expect(found?.own).toBe(false);
  });

  it('comes up when one was found gone and down with clean events, and says how much is still the guess', () => {
    const gone = of([book(...clean(10), ran(99), fail('clip missing'))]);
    expect(gone?.likely.chance).toBeCloseTo(3.64 / (2.64 / 0.002 + 11), 12);
    expect(gone?.likely.basis).toMatch(
      /^Mostly our starting guess: spring clip on every kart: 11 events looked at after, and it had let go once\. Guess: /,
    );
    expect(of([book(...clean(10))])?.likely.chance).toBeLessThan(0.002);
    const long = of([book(...clean(1400))]);
    expect(long?.own).toBe(true);
    expect(long?.likely.basis).toMatch(/^From your own record: .*1400 events looked at after, and it had let go never/);
  });

  it('says how often it was looked at and had let go', () => {
    expect(of([book(...clean(1))])?.likely.basis).toContain(
      '1 event looked at after, and it had let go never. Guess: ',
    );
    const twice = of([book(...clean(2), ran(98), fail('clip gone'), made, ran(99), fail('clip gone'))]);
    expect(twice?.likely.basis).toContain('4 events looked at after, and it had let go 2 times. Guess: ');
  });

  it('is one record over all karts of the owner', () => {
    const other: KartBook = { kart: { ...kart, name: 'other' }, facts: facts([made, ran(1), fail('clip gone')]) };
    const [both, one] = [of([book(...clean(5)), other]), of([book(...clean(5))])];
    expect(both?.likely.chance).toBeCloseTo(3.64 / (2.64 / 0.002 + 6), 12);
    expect(both?.likely.chance).toBeGreaterThan(one?.likely.chance ?? 1);
  });

  it('counts for the second what its words name, for the first what they do not, and for both what failed as it ran', () => {
    const strap = named('strap round the clevis').chance.second as number;
    const second = (...history: readonly Payload[]) =>
      of([book(...history)], 'strap round the clevis', 'second')?.likely.chance;
    const first = (...history: readonly Payload[]) => of([book(...history)])?.likely.chance ?? Number.NaN;
    expect(second(ran(1), fail('strap missing'))).toBeCloseTo(3.64 / (2.64 / strap + 1), 12);
    expect(first(ran(1), fail('strap missing'))).toBeLessThan(0.002);
    expect(second(ran(1), fail('pins walking out'))).toBeLessThan(strap);
    expect(first(ran(1), fail('pins walking out'))).toBeGreaterThan(0.002);
    const failed: Payload = { kind: 'failed', part: 'rod', joint: PINS, how: 'pin gone' };
    expect(second(ran(1), failed)).toBeGreaterThan(strap);
    expect(first(ran(1), failed)).toBeGreaterThan(0.002);
  });

  it('is the guess still where one was found gone before it ever ran', () => {
    expect(of([book(fail('clip gone'))])).toEqual(of([]));
  });

  it('counts for the first what failed as it ran, whichever the words name, and what names another way to hold', () => {
    const failed: Payload = { kind: 'failed', part: 'rod', joint: PINS, how: 'strap gone' };
    const one = 3.64 / (2.64 / 0.002 + 1);
    expect(of([book(ran(1), failed)])?.likely.chance).toBeCloseTo(one, 12);
    expect(of([book(ran(1), fail('wire gone'))])?.likely.chance).toBeCloseTo(one, 12);
  });

  it('counts all for the first where there is no second, and none where nobody knows the first', () => {
    const joint = kart.joints[PINS];
    if (!joint) throw new Error('the kart has it');
    const { second: _, ...alone } = joint;
    const on = (changed: typeof joint): KartBook => ({
      kart: { ...kart, joints: { ...kart.joints, [PINS]: changed } },
      facts: facts([made, ran(1), fail('strap missing')]),
    });
    expect(of([on(alone)])?.likely.chance).toBeCloseTo(3.64 / (2.64 / 0.002 + 1), 12);
    const unknown = on({ ...joint, retention: 'good will' });
    expect(of([unknown])?.likely.chance).toBe(0.002);
    expect(of([unknown], 'strap round the clevis', 'second')?.likely.chance).toBeCloseTo(3.64 / (2.64 / 0.02 + 1), 12);
  });

  it('tells a second clip from a clip, and an R-clip from a pin, in whatever letters', () => {
    const joint = kart.joints[PINS];
    if (!joint) throw new Error('the kart has it');
    /** How often first and second let go by the record of one event, 2.64 / guess events being the guess. */
    const times = (why: string, retention: string, second: string) => {
      const held = { ...kart, joints: { ...kart.joints, [PINS]: { ...joint, retention, second } } };
      const books = [{ kart: held, facts: facts([made, ran(1), fail(why)]) }];
      const counted = (name: string, role: Role): number =>
        (of(books, name, role)?.likely.chance ?? 0) * (2.64 / (named(name).chance[role] ?? 0) + 1) - 2.64;
      return [counted(retention, 'first'), counted(second, 'second')].map(count => Number(count.toFixed(9)));
    };
    const clips = (why: string) => times(why, 'spring clip', 'second clip');
    expect(clips('Second Clip missing')).toEqual([0, 1]);
    expect(clips('clip missing')).toEqual([1, 0]);
    expect(clips('clip and second clip missing')).toEqual([1, 0]); // it names both
    expect(times('r-clip gone', 'split pin', 'R-clip')).toEqual([0, 1]);
    expect(times('split pin and R-clip gone', 'split pin', 'R-clip')).toEqual([1, 0]);
  });

  it('counts for the first what names both, clip by clip', () => {
    const joint = kart.joints[PINS];
    if (!joint) throw new Error('the kart has it');
    const clips = { ...kart, joints: { ...kart.joints, [PINS]: { ...joint, second: 'wire clip' } } };
    const found = (why: string): KartBook => ({ kart: clips, facts: facts([made, ran(1), fail(why)]) });
    expect(of([found('clip gone')])?.likely.chance).toBeGreaterThan(0.002);
    expect(of([found('clip gone')], 'wire clip', 'second')?.likely.chance).toBeLessThan(0.05);
  });

  it("is its owner's own only past the half", () => {
    // the guess counts as 0.02 / 0.002 = 10 events
    const light = { ...catalogue, 'own record': { ...catalogue['own record'], weight: 0.02 } };
    const own = (events: number) =>
      retentionRecord([book(...clean(events))], light)(named('spring clip'), 'first')?.own;
    expect([own(10), own(11)]).toEqual([false, true]);
  });

  it('of one that nobody guessed is not known, whatever is on record', () => {
    expect(of([book(...clean(5))], 'torque alone', 'second')).toBeUndefined();
  });

  test('never falls with one more that let go, nor rises with one more clean event, and lies in its band', () => {
    fc.assert(
      fc.property(fc.nat({ max: 12 }), fc.nat({ max: 6 }), (events, gone) => {
        const bad = Array.from({ length: gone }, (_, n) => [ran(1000 + n), fail('clip gone'), made]).flat();
        const chance = (...more: readonly Payload[]) => of([book(...clean(events), ...bad, ...more)])?.likely;
        const [base, worse, better] = [chance(), chance(ran(5000), fail('clip gone')), chance(ran(5000), made)];
        if (!base || !worse || !better) throw new Error('it has a guess');
        expect(worse.chance).toBeGreaterThan(base.chance);
        expect(better.chance).toBeLessThan(base.chance);
        expect(base.low < base.chance && base.chance < base.high && base.high <= 1).toBe(true);
      }),
      { numRuns: 40 },
    );
  });
});
