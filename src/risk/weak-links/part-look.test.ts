import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { facts } from '../../../test/random-kart.ts';
import { kartFrom } from '../../../test/template-karts.ts';
import type { Payload } from '../../book/index.ts';
import type { Kart, Part } from '../../kart/index.ts';
import { type KartBook, readPriors } from '../../life/index.ts';
import { partLooks } from './part-look.ts';

const priors = readPriors(readFileSync(new URL('../../../data/priors.yaml', import.meta.url), 'utf8'));
const LIVES = 'lives: { chain: { one in ten gone by: 10 h, half gone by: 25 h } }\n';
const named = (name: string, more = LIVES): Kart => ({
  ...kartFrom(`template: six-speed gearbox
${more}`),
  name,
});
const ran = (times: number): Payload[] => Array.from({ length: times }, () => ({ kind: 'ran', minutes: 60 }));
const cracked: Payload[] = [
  { kind: 'found', part: 'chain', defect: 'cracked plate', grade: 'safety' },
  { kind: 'taken off', part: 'chain' },
  { kind: 'fitted', part: 'chain', fresh: true },
];
const bookOf = (kart: Kart, payloads: readonly Payload[]): KartBook => ({ kart, facts: facts(payloads) });
const look = (kart: Kart, books: readonly KartBook[], hours = 2) =>
  partLooks(kart, { books, priors, hours })(kart.parts.chain as Part);

describe('how likely a part fails over the event', () => {
  it('grows with its age', () => {
    const kart = named('a');
    const chance = (hours: number) => look(kart, [bookOf(kart, ran(hours))]).likely?.chance ?? Number.NaN;
    expect(chance(2)).toBeLessThan(chance(8));
    expect(chance(8)).toBeLessThan(chance(16));
  });

  it('is not known with a shape alone: nobody said how long it lasts, and none has failed', () => {
    const kart = named('a', '');
    expect(look(kart, [bookOf(kart, ran(4))])).toMatchObject({
      likely: null,
      unknown: expect.stringMatching(/Nobody said/),
    });
    expect(look(kart, [bookOf(kart, [...ran(14), ...cracked, ...ran(3)])]).likely).not.toBeNull();
  });

  it('is not known without hours to come, nor for a part that no book holds', () => {
    const kart = named('a');
    expect(
      partLooks(kart, { books: [bookOf(kart, [])], priors, hours: undefined })(kart.parts.chain as Part).likely,
    ).toBeNull();
    const none = { likely: null, own: false };
    const why = 'No event ahead with its running time, so there are no hours to reckon over.';
    expect(look(kart, [bookOf(kart, [])], 0)).toEqual({ ...none, unknown: why });
    expect(look(kart, [])).toEqual({ ...none, unknown: 'The record does not hold this part.' });
    expect(look(kart, [bookOf(kart, ran(2))])).toMatchObject({ unknown: null, own: false });
  });

  it('is from its own record once enough of its kind have failed, and says so', () => {
    const kart = named('a');
    const times = (failures: number) => Array.from({ length: failures }, () => [...ran(6), ...cracked]).flat();
    expect(look(kart, [bookOf(kart, times(8))])).toMatchObject({ own: false, unknown: null });
    expect(look(kart, [bookOf(kart, times(30))])).toMatchObject({
      own: true,
      likely: { basis: expect.stringMatching(/^From your own record: 30 on record, 30 of them failed; /) },
    });
  });

  it('learns from another kart of the same owner, until the two show that they wear it differently', () => {
    const [a, b] = [named('a'), named('b')];
    const own = [...ran(20)];
    const alone = look(a, [bookOf(a, own)]).likely?.chance ?? Number.NaN;
    const worse = [...ran(6), ...cracked, ...ran(6)];
    expect(look(a, [bookOf(a, own), bookOf(b, worse)]).likely?.chance).toBeGreaterThan(alone);
    const lasting = Array.from({ length: 8 }, () => [
      ...ran(60),
      { kind: 'fitted', part: 'chain', fresh: true } as Payload,
    ]).flat();
    const short = Array.from({ length: 8 }, () => [...ran(2), ...cracked]).flat();
    const apart = look(a, [bookOf(a, lasting), bookOf(b, short)]);
    expect(apart.likely?.chance).toBe(look(a, [bookOf(a, lasting)]).likely?.chance);
  });
});
