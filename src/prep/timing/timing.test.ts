import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { item, smallKart } from '../../../test/small-kart.ts';
import { CHAIN_START, type Draft, type Fact, sealAll } from '../../book/index.ts';
import { learnTiming } from './learnt.ts';
import { timed } from './observed.ts';

const kart = smallKart(item('hub/seat', [{ on: 'event' }], { minutes: 6 }));
type Said = Record<string, unknown> & { readonly kind: string };
const log = (...said: readonly (readonly [minute: number, what: Said, by?: string])[]): readonly Fact[] =>
  sealAll(
    CHAIN_START,
    said.map(([minute, what, by = 'A'], n) => {
      const at = new Date(Date.parse('2026-05-01T08:00:00.000Z') + minute * 60_000).toISOString();
      return { ...what, id: `f${n}`, kart: 'small', at, recorded: at, by, device: 'b' } as Draft;
    }),
  );
const off = (part: string): Said => ({ kind: 'taken off', part });
const on = (part: string): Said => ({ kind: 'fitted', part });
const seat: Said = { kind: 'checked', item: 'hub/seat', result: 'pass' };

describe('what was timed', () => {
  test('is the time since the last tick of the same person', () => {
    const found = timed(
      kart,
      log([0, off('wheel')], [2, { kind: 'note', text: 'x' }, 'B'], [3, off('hub')], [10, seat]),
    );
    expect(found.map(({ key, took }) => [key, Number(took.toFixed(6))])).toEqual([
      ['take-off hub', 3],
      ['look hub/seat', 7],
    ]);
  });
  test('two people do not time each other', () => {
    expect(timed(kart, log([0, off('wheel')], [3, off('hub'), 'B']))).toEqual([]);
  });
  test('ticks written together share the time before them by what was planned', () => {
    const found = timed(kart, log([0, off('wheel')], [8, off('hub')], [8.1, seat]));
    expect(found.map(({ key, took }) => [key, Number(took.toFixed(6))])).toEqual([
      ['take-off hub', 2],
      ['look hub/seat', 6],
    ]);
  });
  test('a break, a struck tick and the first tick of all teach nothing', () => {
    expect(timed(kart, log([0, off('wheel')], [300, off('hub')]))).toEqual([]);
    expect(timed(kart, log([0, off('wheel')], [3, off('hub')], [4, { kind: 'struck', fact: 'f1', why: 'x' }]))).toEqual(
      [],
    );
    expect(timed(kart, log([0, on('wheel')]))).toEqual([]);
  });
});

describe('minutes learnt', () => {
  test('nothing timed: the plan’s own minutes', () => {
    expect(learnTiming([])('look hub/seat', 6)).toEqual({ typical: 6, slow: 6, timings: 0 });
  });
  test('many timings that agree are believed; one is half believed', () => {
    const at = '2026-05-01T08:00:00.000Z';
    const often = learnTiming(Array.from({ length: 60 }, () => ({ key: 'a', planned: 5, took: 10, at })));
    expect(often('a', 5).typical).toBeGreaterThan(9.5);
    const once = learnTiming([{ key: 'a', planned: 5, took: 10, at }]);
    expect(once('a', 5).typical).toBeGreaterThan(5);
    expect(once('a', 5).typical).toBeLessThan(8);
  });
  test('the slow figure holds about 80 times of 100 on work as scattered as that it was learnt from', () => {
    // Against the normal quantile of a general random generator: Box and Muller over a fixed stream.
    let seed = 7;
    const random = () => {
      seed = (seed * 16807) % 2147483647;
      return seed / 2147483647;
    };
    const normal = () => Math.sqrt(-2 * Math.log(random())) * Math.cos(2 * Math.PI * random());
    const took = () => 5 * Math.exp(0.2 + 0.4 * normal());
    const at = '2026-05-01T08:00:00.000Z';
    let within = 0;
    for (let n = 0; n < 400; n++) {
      const learnt = learnTiming(Array.from({ length: 12 }, () => ({ key: 'a', planned: 5, took: took(), at })));
      if (took() <= learnt('a', 5).slow) within++;
    }
    expect(within / 400).toBeGreaterThan(0.74);
    expect(within / 400).toBeLessThan(0.87);
  });
  test('slow is never under typical, both are above 0, and twice as long everywhere is twice as long', () => {
    const timing = fc.record({
      key: fc.constantFrom('a', 'b', 'c'),
      planned: fc.integer({ min: 1, max: 30 }),
      took: fc.double({ min: 0.4, max: 90, noNaN: true }),
      at: fc.constant('2026-05-01T08:00:00.000Z'),
    });
    fc.assert(
      fc.property(fc.array(timing, { minLength: 1, maxLength: 30 }), all => {
        const { typical, slow } = learnTiming(all)('a', 10);
        expect(typical).toBeGreaterThan(0);
        expect(slow).toBeGreaterThanOrEqual(typical);
        const double = learnTiming(all.map(one => ({ ...one, planned: one.planned * 2, took: one.took * 2 })))('a', 20);
        expect(double.typical).toBeCloseTo(2 * typical, 9);
      }),
    );
  });
});
