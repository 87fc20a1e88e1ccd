import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { gamma } from '../gamma.ts';
import { type Posterior, type Prior, posteriorOf } from '../posterior/index.ts';
import { hazardRate, meanLife } from '../weibull/index.ts';
import { renewals, replaceTogether } from './all-together.ts';
import { costRate, replaceByAge, upTime } from './by-age.ts';
import { renewByAge } from './minimal-repair.ts';
import { replaceThisPart } from './this-part.ts';

const wearing = fc.record({
  shape: fc.double({ min: 1.2, max: 6, noNaN: true }),
  scale: fc.double({ min: 5, max: 500, noNaN: true }),
});
const COSTS = { planned: 40, failure: 600 };

describe('replacing by age', () => {
  test('P4 at the best age costs (c_f - c_p) h(T) an hour, and no other age costs less', () => {
    fc.assert(
      fc.property(
        wearing,
        fc.double({ min: 2, max: 50, noNaN: true }),
        fc.double({ min: 0.01, max: 5, noNaN: true }),
        (life, ratio, other) => {
          const costs = { planned: 10, failure: 10 * ratio };
          const found = replaceByAge(life, costs);
          if (found.kind === 'no help') throw new Error(found.why);
          expect(found.rate / ((costs.failure - costs.planned) * hazardRate(life, found.at))).toBeCloseTo(1, 8);
          expect(costRate(life, costs, other * found.at)).toBeGreaterThanOrEqual(found.rate * (1 - 1e-12));
          expect(found.never).toBeGreaterThanOrEqual(found.rate * (1 - 1e-9));
          expect(costRate(life, costs, found.from) / found.rate).toBeCloseTo(1.02, 8);
        },
      ),
    );
  });
  test('is no help for a shape of 1 or below, nor where a failure costs no more', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.3, max: 1, noNaN: true }), shape => {
        const found = replaceByAge({ shape, scale: 30 }, COSTS);
        expect(found).toMatchObject({ kind: 'no help' });
        expect(found.never).toBeCloseTo(600 / (30 * gamma(1 + 1 / shape)), 8);
      }),
    );
    expect(replaceByAge({ shape: 3, scale: 30 }, { planned: 50, failure: 50 })).toMatchObject({ kind: 'no help' });
    expect(() => replaceByAge({ shape: 3, scale: 30 }, { planned: 0, failure: 50 })).toThrow('costs must be above 0');
  });
  test('counts the hours one lasts as a plain sum of small steps does', () => {
    fc.assert(
      fc.property(wearing, fc.double({ min: 0.1, max: 3, noNaN: true }), (life, part) => {
        const age = part * life.scale;
        const steps = 2000;
        const sum = Array.from({ length: steps }, (_, n) =>
          Math.exp(-((((n + 0.5) * age) / steps / life.scale) ** life.shape)),
        ).reduce((a, b) => a + b, 0);
        expect(upTime(life, age) / ((sum * age) / steps)).toBeCloseTo(1, 5);
        expect(upTime(life, 50 * life.scale) / meanLife(life)).toBeCloseTo(1, 10);
      }),
    );
  });
});

describe('replacing all together', () => {
  test('expects the failures that the series of Smith and Leadbetter adds up to', () => {
    // Smith and Leadbetter 1963, Technometrics 5:393 (memory): M(t) = Σ (-1)^(k-1) A_k t^(kβ) / Γ(1 + kβ),
    // A_k = γ_k - Σ_{j<k} γ_j A_(k-j), γ_k = Γ(1 + kβ) / k!. Converges fast for t of at most 1.
    fc.assert(
      fc.property(
        fc.double({ min: 1, max: 4, noNaN: true }),
        fc.double({ min: 0.1, max: 1, noNaN: true }),
        (shape, t) => {
          const g = (k: number): number => gamma(1 + k * shape) / gamma(1 + k);
          const a: number[] = [0];
          let sum = 0;
          for (let k = 1; k <= 25; k++) {
            let ak = g(k);
            for (let j = 1; j < k; j++) ak -= g(j) * (a[k - j] as number);
            a.push(ak);
            sum += ((k % 2 ? 1 : -1) * ak * t ** (k * shape)) / gamma(1 + k * shape);
          }
          expect(renewals({ shape, scale: 1 }, t)).toBeCloseTo(sum, 6);
        },
      ),
      { numRuns: 20 },
    );
  });
  it('without wear expects one failure a scale, and is no help', () => {
    expect(renewals({ shape: 1, scale: 20 }, 60)).toBeCloseTo(3, 8);
    expect(renewals({ shape: 2, scale: 20 }, 0)).toBe(0);
    expect(replaceTogether({ shape: 1, scale: 20 }, COSTS)).toBeUndefined();
  });
});

it('renewing what is repaired costs least where a step either way costs more, and never pays without wear', () => {
  const growth = { shape: 1.8, scale: 25 };
  const { at = 0, rate = 0 } = renewByAge(growth, 300, 40) ?? {};
  for (const age of [0.98 * at, 1.02 * at]) expect((300 + 40 * (age / 25) ** 1.8) / age).toBeGreaterThan(rate);
  expect(renewByAge({ shape: 1, scale: 25 }, 300, 40)).toBeUndefined();
});

describe('when to replace this part', () => {
  const weigh = (prior: Prior): Posterior => posteriorOf(prior, [{ fate: 'running', age: 9 }]) as Posterior;
  const known = weigh({ shape: { median: 4, spread: 1e-4 }, scale: { median: 30, spread: 1e-4 }, source: 'known' });
  const guessed = weigh({ shape: { median: 3, spread: 0.3 }, scale: { median: 40, spread: 0.7 }, source: 'a guess' });

  it('where the life is known costs what replacing by age costs, at the ages between events', () => {
    const { boundaries, events, age, because } = replaceThisPart(known, { age: 9, hours: 1, costs: COSTS });
    for (const { age: at, rate = 0 } of boundaries)
      expect(rate / costRate({ shape: 4, scale: 30 }, COSTS, at)).toBeCloseTo(1, 4);
    expect({ events, age, because }).toEqual({ events: 3, age: 12, because: 'cost' }); // 11.79 h, AR06 of the checks
  });
  it('a safety cap stands over the cost, and so does the limit of the maker', () => {
    const costs = COSTS;
    const capped = replaceThisPart(known, { age: 9, hours: 1, costs, cap: 0.004 });
    expect(capped).toMatchObject({ because: 'safety cap', events: 0 });
    expect(capped.boundaries[0]?.chance).toBeGreaterThan(0.004);
    const limited = replaceThisPart(known, { age: 9, hours: 1, costs, limit: 11 });
    expect(limited).toMatchObject({ because: 'limit', events: 2, age: 11 });
    expect(limited.say[0]).toBe(
      'Replace it after 2 more events, at 11 h: one event more would pass the limit of 11 h.',
    );
  });
  it('where a failure can hurt worst cost has no say', () => {
    const asked = { age: 9, hours: 1, costs: COSTS, severity: 1 } as const;
    expect(replaceThisPart(known, asked)).toMatchObject({ kind: 'not foreseen' });
    expect(replaceThisPart(known, { ...asked, cap: 0.02 })).toMatchObject({ because: 'safety cap' });
  });
  it('up to the cap no event had a larger chance than it, and the next has', () => {
    const { events = -1, boundaries } = replaceThisPart(guessed, { age: 9, hours: 2, cap: 0.05 });
    expect(events).toBeGreaterThan(0);
    for (const { chance } of boundaries.slice(0, events)) expect(chance).toBeLessThanOrEqual(0.05);
    expect(boundaries[events]?.chance).toBeGreaterThan(0.05);
  });
  it('says that age is no help where it wears nothing', () => {
    const random = weigh({
      shape: { median: 0.9, spread: 0.05 },
      scale: { median: 40, spread: 0.5 },
      source: 'chance',
    });
    const { kind, noWear, say } = replaceThisPart(random, { age: 9, hours: 2, costs: COSTS });
    expect(kind).toBe('not foreseen');
    expect(noWear).toBeGreaterThan(0.9);
    expect(say.join(' ')).toMatch(/By cost, replacing by age is no help: \d+ in 100 of the lives that fit do not wear/);
  });
  it('needs hours above 0 and a cap between 0 and 1', () => {
    expect(() => replaceThisPart(known, { age: 9, hours: 0 })).toThrow('hours must be above 0, got 0');
    expect(() => replaceThisPart(known, { age: 9, hours: 1, cap: 1 })).toThrow('cap must be between 0 and 1, got 1');
  });
});
