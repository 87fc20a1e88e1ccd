import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { facts } from '../../../test/random-kart.ts';
import { kartFrom } from '../../../test/template-karts.ts';
import { fold, type Payload } from '../../book/index.ts';
import { guessOf } from './guess.ts';
import { readPriors } from './priors.ts';

const priors = readPriors(readFileSync(new URL('../../../data/priors.yaml', import.meta.url), 'utf8'));
const kart = kartFrom('template: six-speed gearbox\nlives: { chain: { half gone by: 25 h, source: own notes } }\n');
const guess = (kind: string, ...payloads: Payload[]) => guessOf(kart, fold(facts(payloads)), kind, priors);
const expected = (more: object): Payload => ({ kind: 'life expected', of: 'chain', ...more }) as Payload;

describe('what is guessed of a kind', () => {
  it('is the life of two answers: half gone by 30 h, 1 in 10 by 12 h', () => {
    // risk.md 6.2: b0 = 1.884 / ln(t50 / t10), eta0 = t50 / (ln 2)^(1/b0), by hand
    const found = guess('chain', expected({ halfHours: 30, tenthHours: 12 }));
    expect(found?.shape.median).toBeCloseTo(1.884 / Math.log(30 / 12), 3);
    expect(found?.scale?.median).toBeCloseTo(30 / Math.log(2) ** (1 / 2.0561), 2);
    expect(found?.source).toMatch(/half gone by 30 h, 1 in 10 gone by 12 h, said by .+ on \d{4}-/);
  });
  it('of the book goes before the kart file, the latest first, and a struck one not at all', () => {
    expect(guess('chain')?.source).toMatch(/own notes/);
    const [early, late] = [expected({ halfHours: 30 }), expected({ halfHours: 50, why: 'new maker' })];
    expect(guess('chain', early, late)?.source).toMatch(/50 h.*new maker/);
    expect(guess('chain', early, { kind: 'struck', fact: 'f0', why: 'another chain' })?.source).toMatch(/own notes/);
  });
  it('takes the service interval of a maker for 1 in 10 gone, and says so', () => {
    const [interval, tenth] = [{ tenthHours: 12, interval: true }, { tenthHours: 12 }].map(one =>
      guess('chain', expected(one)),
    );
    expect(interval?.scale).toEqual(tenth?.scale);
    expect(interval?.source).toMatch(/service interval of 12 h, read as 1 in 10 gone by then \(common practice\)/);
  });
  it('is nothing where one answer was given for a kind of which nobody knows the shape', () => {
    const one: Payload = { kind: 'life expected', of: 'frame', halfHours: 400 };
    expect(guess('frame', one)).toBeUndefined();
    expect(guess('frame', { ...one, tenthHours: 150 })?.scale).toBeDefined();
  });
});
