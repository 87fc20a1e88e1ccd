import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { facts } from '../../../test/random-kart.ts';
import { kartFrom } from '../../../test/template-karts.ts';
import { fold, type Payload } from '../../book/index.ts';
import { readPriors } from '../record/index.ts';
import { type SparesAsk, sparesBox } from './box.ts';
import { inBox } from './in-box.ts';

const priors = readPriors(readFileSync(new URL('../../../data/priors.yaml', import.meta.url), 'utf8'));
const kart = kartFrom(`template: six-speed gearbox
lives:
  chain: { one in ten gone by: 6 h, half gone by: 12 h }
  spark plug: { one in ten gone by: 4 h, half gone by: 12 h }
  brake pads: { one in ten gone by: 8 h, half gone by: 14 h }
  crankshaft: { one in ten gone by: 90000 h, half gone by: 200000 h }
costs:
  spares:
    chain: { price: 68, mass: 1.3 kg }
    spark plug: { price: 14, mass: 0.1 kg }
    crankshaft: { price: 1, mass: 1 g }
    brake pads: { mass: 0.3 kg }
`);
const ran: Payload[] = Array.from({ length: 5 }, () => ({ kind: 'ran', minutes: 60 }));
const counted = (of: string, count: number): Payload => ({ kind: 'spares counted', of, count });
const box = (limits: Partial<SparesAsk> = {}, ...more: Payload[]) => {
  const book = facts([...ran, ...more]);
  return sparesBox(kart, { books: [{ kart, facts: book }], priors, state: fold(book), hours: 3, ...limits });
};

describe('the spares box', () => {
  test('with a larger budget of either never finishes fewer weekends', () => {
    const amount = fc.record({ money: fc.nat(120), kilograms: fc.nat(20).map(tenths => tenths / 10) });
    fc.assert(
      fc.property(amount, amount, (one, more) => {
        const both = { money: one.money + more.money, kilograms: one.kilograms + more.kilograms };
        const [less, larger] = [box(one), box(both)].map(({ finish }) => finish.chosen.chance);
        expect(larger).toBeGreaterThanOrEqual((less ?? 1) - 1e-12);
      }),
      { numRuns: 8 },
    );
  });
  it('for no money is the box as it is, and without one no spares at all', () => {
    const { finish, buy } = box({ money: 0 }, counted('chain', 1));
    expect(buy).toEqual([]);
    expect(finish.chosen).toEqual(finish.box);
    expect(finish.box.chance).toBeGreaterThan(finish.none.chance);
    expect(box({ money: 0 }).finish.chosen).toEqual(box({ money: 0 }).finish.none);
  });
  it('never proposes what next to never fails, however cheap, nor what has no price', () => {
    const { buy, piles } = box();
    expect(buy.map(({ name }) => name).sort()).toEqual(['chain', 'spark plug']);
    expect(piles.find(({ name }) => name === 'brake pads')?.why).toMatch(/price is not known/);
  });
  it('names parts nobody knows a life of, and does not count them as sure', () => {
    const { unknown, piles } = box();
    expect(unknown.map(({ part }) => part)).toContain('piston');
    expect(piles.map(({ name }) => name)).not.toContain('piston');
  });
  it('B33 holds what was counted last, less what went on the kart since, never below none', () => {
    const fresh: Payload = { kind: 'fitted', part: 'chain', fresh: true };
    const there = (...payloads: Payload[]) => inBox(kart, facts(payloads)).get('chain');
    expect(there(fresh)).toBeUndefined();
    expect(there(counted('chain', 2), fresh)).toBe(1);
    expect(there(counted('chain', 0), fresh)).toBe(0);
    expect(there(counted('chain', 2), fresh, counted('chain', 3))).toBe(3);
    expect(there(counted('chain', 2), { kind: 'struck', fact: 'f0', why: 'of another kart' })).toBeUndefined();
  });
});
