import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Life } from '../life.ts';
import { evidenceOf } from './evidence.ts';
import { type WeibullFit, weibullFit } from './fit.ts';
import { logLikelihood } from './likelihood.ts';

const failed = (age: number): Life => ({ fate: 'failed', age });
const running = (age: number): Life => ({ fate: 'running', age });
const found = (fineAt: number, age: number): Life => ({ fate: 'found', age, fineAt });

/** Records with a most likely life: something failed before the largest age. */
const age = fc.double({ min: 0.5, max: 100, noNaN: true });
const life = fc.oneof(
  age.map(failed),
  age.map(running),
  fc.tuple(age, fc.double({ min: 0, max: 0.95, noNaN: true })).map(([at, part]) => found(at * part, at)),
);
const record = fc
  .tuple(age, fc.array(life, { maxLength: 30 }))
  .map(([first, rest]) => [failed(first), running(1.2 * first + 1), ...rest]);
const fitOf = (lives: readonly Life[]): WeibullFit => {
  const fit = weibullFit(lives);
  if (fit.kind !== 'fit') throw new Error(fit.say);
  return fit;
};
const reason = (lives: readonly Life[]) => {
  const fit = weibullFit(lives);
  return fit.kind === 'no fit' ? fit.reason : fit.kind;
};

describe('the most likely life', () => {
  test('has no better one around it', () => {
    fc.assert(
      fc.property(
        record,
        fc.double({ min: -0.3, max: 0.3, noNaN: true }),
        fc.double({ min: -0.3, max: 0.3, noNaN: true }),
        (lives, a, b) => {
          const { shape, scale, logLikelihood: best } = fitOf(lives);
          const other = logLikelihood(evidenceOf(lives), { shape: shape * Math.exp(a), scale: scale * Math.exp(b) });
          expect(other).toBeLessThanOrEqual(best + 1e-9 * Math.abs(best));
        },
      ),
    );
  });
  test('is where a slow bisection of the closed line finds it', () => {
    const exact = record.map(lives => lives.filter(({ fate }) => fate !== 'found'));
    fc.assert(
      fc.property(exact, lives => {
        const { shape, scale } = fitOf(lives);
        const slow = bisected(lives);
        expect(shape / slow.shape).toBeCloseTo(1, 10);
        expect(scale / slow.scale).toBeCloseTo(1, 10);
      }),
    );
  });
  test('P2 in another unit has the scale in that unit, the same shape, and r ln k less log-likelihood', () => {
    fc.assert(
      fc.property(record, fc.double({ min: 0.01, max: 100, noNaN: true }), (lives, k) => {
        const [one, other] = [fitOf(lives), fitOf(lives.map(each => scaled(each, k)))];
        expect(other.shape / one.shape).toBeCloseTo(1, 8);
        expect(other.scale / (k * one.scale)).toBeCloseTo(1, 8);
        const exact = lives.filter(({ fate }) => fate === 'failed').length; // an interval is no density
        expect(other.logLikelihood).toBeCloseTo(one.logLikelihood - exact * Math.log(k), 6);
      }),
    );
  });
  test('P3 does not mind the order; each life twice leaves it, and halves the covariance', () => {
    fc.assert(
      fc.property(record, lives => {
        const [one, turned, twice] = [fitOf(lives), fitOf(lives.toReversed()), fitOf([...lives, ...lives])];
        for (const other of [turned, twice]) {
          expect(other.shape / one.shape).toBeCloseTo(1, 8);
          expect(other.scale / one.scale).toBeCloseTo(1, 8);
        }
        for (const name of ['scale', 'both', 'shape'] as const)
          expect(2 * twice.covariance[name]).toBeCloseTo(one.covariance[name], 6);
      }),
    );
  });
  test('has the covariance that second differences of the log-likelihood give', () => {
    const h = 1e-4;
    fc.assert(
      fc.property(record, lives => {
        const fit = fitOf(lives);
        const of = evidenceOf(lives);
        const at = (m: number, s: number): number =>
          logLikelihood(of, { shape: fit.shape * Math.exp(-s), scale: fit.scale * Math.exp(m) });
        const here = at(0, 0);
        const mm = -(at(h, 0) - 2 * here + at(-h, 0)) / h ** 2;
        const ss = -(at(0, h) - 2 * here + at(0, -h)) / h ** 2;
        const ms = -(at(h, h) - at(h, -h) - at(-h, h) + at(-h, -h)) / (4 * h ** 2);
        const size = mm * ss - ms * ms;
        fc.pre(size > 1e-3 * mm * ss && mm < 1e5 && ss < 1e5); // else the differences are all rounding
        expect(fit.covariance.scale / (ss / size)).toBeCloseTo(1, 2);
        expect(fit.covariance.shape / (mm / size)).toBeCloseTo(1, 2);
      }),
    );
  });
  it('is the same for one part moved between karts, told in two legs or in one', () => {
    const others = [failed(20), running(50), found(10, 30)];
    const whole = fitOf([...others, failed(34)]);
    const legs = fitOf([...others, running(12), { fate: 'failed', age: 34, from: 12 }]);
    expect(legs).toEqual(whole);
    const three = fitOf([
      ...others,
      { fate: 'failed', age: 34, from: 21 },
      { fate: 'running', age: 21, from: 12 },
      running(12),
    ]);
    expect(three).toEqual(whole);
  });
  it('of a long record is found though hardly any of it fails, and that late', () => {
    const lives = [
      ...Array.from({ length: 3000 }, (_, n) => running(1 + (n % 10))),
      failed(400),
      failed(450),
      running(500),
    ];
    const [fit, slow] = [fitOf(lives), bisected(lives)];
    expect(fit.shape / slow.shape).toBeCloseTo(1, 9);
    expect(fit.scale / slow.scale).toBeCloseTo(1, 9);
  });
  it('of a find between close looks is that of a failure between them', () => {
    const [between, exact] = [
      [found(29.99, 30.01), failed(20), running(40)],
      [failed(30), failed(20), running(40)],
    ].map(fitOf);
    expect(between?.shape).toBeCloseTo(exact?.shape ?? 0, 4);
    expect(between?.scale).toBeCloseTo(exact?.scale ?? 0, 4);
  });
});

describe('no most likely life', () => {
  it('P7 where nothing failed, and the reason says what the record is worth', () => {
    expect(reason([running(20), running(30)])).toBe('no failure');
    expect(reason([])).toBe('no record');
    expect(reason([running(0)])).toBe('no record');
  });
  it('P7 where every failure ties at the largest age', () => {
    expect(reason([failed(20)])).toBe('tied');
    expect(reason([failed(20), failed(20), running(10)])).toBe('tied');
    expect(reason([found(10, 20), running(5)])).toBe('tied');
  });
  it('but one failure before the largest age has one, and so has a tie before it', () => {
    expect(reason([failed(20), running(30)])).toBe('fit');
    expect(reason([failed(20), failed(20), running(30)])).toBe('fit');
  });
  it('where all that was found was bad from the first look, and the rest lasts', () => {
    expect(reason([found(0, 10), running(50), running(60)])).toBe('flat');
  });
  it('where hours before the watch are open', () => {
    expect(reason([failed(20), running(30), { fate: 'running', age: 25, from: 10 }])).toBe('not seen from new');
  });
  it('of an age that cannot be: that is a bug of the caller', () => {
    expect(() => weibullFit([failed(0)])).toThrow('lives[0].age must be an age above 0 for one that failed, got 0');
    expect(() => weibullFit([running(-1)])).toThrow('0 or more');
    expect(() => weibullFit([found(20, 10)])).toThrow('fineAt');
    expect(() => weibullFit([{ fate: 'running', age: 5, from: 6 }])).toThrow('from');
    expect(() => weibullFit([failed(Number.NaN)])).toThrow('age');
  });
});

const scaled = (one: Life, k: number): Life =>
  one.fate === 'found' ? { ...one, age: k * one.age, fineAt: k * (one.fineAt ?? 0) } : { ...one, age: k * one.age };

/** The same root, by halving alone. */
function bisected(lives: readonly Life[]): { shape: number; scale: number } {
  const bad = lives.filter(({ fate }) => fate === 'failed');
  const top = Math.max(...lives.map(({ age: at }) => at));
  const power = (one: Life, b: number): number => (one.age / top) ** b;
  const sum = (of: readonly Life[], what: (one: Life) => number): number => of.reduce((s, one) => s + what(one), 0);
  const middle = sum(bad, one => Math.log(one.age / top)) / bad.length;
  const g = (b: number): number =>
    sum(lives, one => power(one, b) * Math.log(one.age / top)) / sum(lives, one => power(one, b)) - 1 / b - middle;
  let [low, high] = [1e-6, 1];
  while (g(high) < 0) high *= 2;
  for (let n = 0; n < 200; n++) {
    const b = (low + high) / 2;
    if (g(b) < 0) low = b;
    else high = b;
  }
  return { shape: low, scale: top * (sum(lives, one => power(one, low)) / bad.length) ** (1 / low) };
}
