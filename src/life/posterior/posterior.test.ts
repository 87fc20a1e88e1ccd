import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import type { Life } from '../life.ts';
import { chanceIfReached, chanceOver } from './chance.ts';
import { momentsOf, type Posterior, posteriorOf } from './posterior.ts';
import type { Prior } from './prior.ts';

const PRIOR: Prior = {
  shape: { median: 2, spread: 0.35 },
  scale: { median: 60, spread: 0.7 },
  source: 'a test',
};
const failed = (age: number): Life => ({ fate: 'failed', age });
const running = (age: number): Life => ({ fate: 'running', age });
const weigh = (lives: readonly Life[], prior: Prior = PRIOR): Posterior => {
  const posterior = posteriorOf(prior, lives);
  if (posterior.kind === 'unknown') throw new Error(posterior.why);
  return posterior;
};

const age = fc.double({ min: 1, max: 100, noNaN: true });
const record = fc.array(
  fc.oneof(
    age.map(failed),
    age.map(running),
    fc
      .tuple(age, fc.double({ min: 0, max: 0.9, noNaN: true }))
      .map(([at, part]): Life => ({ fate: 'found', age: at, fineAt: at * part })),
  ),
  { maxLength: 8 },
);
const hours = fc.double({ min: 0.5, max: 10, noNaN: true });

describe('the chance over the event to come', () => {
  it('P1 is that of the worked example, either way', () => {
    const lives = [failed(26), running(14), running(19), running(33)];
    const out = chanceIfReached(weigh(lives), { age: 20, hours: 3 });
    const within = chanceOver(weigh([...lives, running(20)]), { age: 20, hours: 3 }).mean;
    // The value that comes with the properties of the reference, computed on a lattice of 801 x 1201.
    expect(out).toBeCloseTo(0.046493467094803, 11);
    expect(within).toBeCloseTo(0.046493467094803, 11);
  });
  test('P1 is the same with the part in the record, and with its outliving reckoned afterwards', () => {
    fc.assert(
      fc.property(record, age, hours, (lives, at, dt) => {
        const out = chanceIfReached(weigh(lives), { age: at, hours: dt });
        const within = chanceOver(weigh([...lives, running(at)]), { age: at, hours: dt }).mean;
        expect(within / out).toBeCloseTo(1, 6);
      }),
      { numRuns: 15 },
    );
  });
  test('of some hours comes down when another outlived just these, and goes up when it failed in them', () => {
    fc.assert(
      fc.property(record, age, hours, (lives, at, dt) => {
        const chance = (more: Life): number => chanceOver(weigh([...lives, more]), { age: at, hours: dt }).mean;
        const before = chance(running(at));
        expect(chance(running(at + dt))).toBeLessThanOrEqual(before * (1 + 1e-9));
        expect(chance({ fate: 'found', age: at + dt, fineAt: at })).toBeGreaterThanOrEqual(before * (1 - 1e-9));
      }),
      { numRuns: 15 },
    );
  });
  test('lies with its band between 0 and 1, in order', () => {
    fc.assert(
      fc.property(record, age, hours, (lives, at, dt) => {
        const { low, middle, high, mean } = chanceOver(weigh([...lives, running(at)]), { age: at, hours: dt });
        expect(0 <= low && low <= middle && middle <= high && high <= 1).toBe(true);
        expect(mean).toBeGreaterThan(low);
        expect(mean).toBeLessThanOrEqual(1);
      }),
      { numRuns: 15 },
    );
  });
  test('with the shape all but known and no guess of the scale is the closed one of waiting times', () => {
    // λ = η^-β is then gamma distributed with r and S = Σ t^β: the chance is 1 - (S / (S + growth))^r.
    const bare = (shape: number): Prior => ({ shape: { median: shape, spread: 1e-4 }, source: 'known' });
    fc.assert(
      fc.property(
        fc.array(age, { minLength: 1, maxLength: 5 }),
        fc.array(age, { maxLength: 5 }),
        fc.double({ min: 0.6, max: 4, noNaN: true }),
        hours,
        (bad, fine, shape, dt) => {
          const at = fine[0] ?? 0;
          const posterior = weigh([...bad.map(failed), ...fine.map(running)], bare(shape));
          const sum = [...bad, ...fine].reduce((s, t) => s + t ** shape, 0);
          const growth = (at + dt) ** shape - at ** shape;
          const closed = -Math.expm1(-bad.length * Math.log1p(growth / sum));
          expect(chanceOver(posterior, { age: at, hours: dt }).mean / closed).toBeCloseTo(1, 3);
        },
      ),
      { numRuns: 15 },
    );
  });
  it('of a record of ten thousand is that of its own life, and quite sure', () => {
    const lives = Array.from({ length: 10_000 }, (_, n) => failed(50 * (-Math.log((n + 0.5) / 10_000)) ** (1 / 3)));
    const posterior = weigh(lives);
    expect(posterior.basis).toBe('own record');
    const { mean, low, high } = chanceOver(posterior, { age: 30, hours: 3 });
    const known = -Math.expm1((30 / 50) ** 3 - (33 / 50) ** 3);
    expect(mean / known).toBeCloseTo(1, 2);
    expect(high / low).toBeLessThan(1.1);
  });
  it('needs an age of 0 or more and hours above 0', () => {
    expect(() => chanceOver(weigh([]), { age: -1, hours: 3 })).toThrow('age must be 0 or more, got -1');
    expect(() => chanceOver(weigh([]), { age: 1, hours: 0 })).toThrow('hours must be above 0, got 0');
  });
});

describe('record and guess', () => {
  test('a find between two looks weighs what the two outlivings differ by', () => {
    fc.assert(
      fc.property(record, age, fc.double({ min: 0.1, max: 0.95, noNaN: true }), (lives, at, part) => {
        const evidence = (more: Life): number => Math.exp(weigh([...lives, more]).lnEvidence - weigh(lives).lnEvidence);
        const between = evidence({ fate: 'found', age: at, fineAt: at * part });
        expect(between).toBeCloseTo(evidence(running(at * part)) - evidence(running(at)), 9);
      }),
      { numRuns: 15 },
    );
  });
  it('hours nobody watched count as outlived: two legs of one part are that part', () => {
    const whole = weigh([failed(40)]);
    const late = weigh([failed(12), { fate: 'failed', age: 40, from: 20 }]);
    const legs = weigh([running(20), { fate: 'failed', age: 40, from: 20 }]);
    expect(legs.lnEvidence).toBeCloseTo(whole.lnEvidence, 12);
    expect(late.lnEvidence).not.toBeCloseTo(weigh([failed(12), failed(40)]).lnEvidence, 3);
  });
  it('P7 with no failure there is a posterior all the same', () => {
    const { meanShape, sdLnShape } = momentsOf(weigh([running(20), running(30)]));
    expect(meanShape).toBeGreaterThan(1);
    expect(sdLnShape).toBeLessThan(0.35);
  });
  it('say how much of it is the guess', () => {
    expect(weigh([]).basis).toBe('starting guess');
    expect(weigh([failed(26), running(14), running(19), running(33)]).basis).toBe('mostly starting guess');
    expect(weigh([...[31, 44, 28].map(failed), ...[12, 20, 38, 50].map(running)]).basis).toBe('own record');
  });
  it('give no chance where nobody guessed, nor where nobody said how long they last and none failed', () => {
    expect(posteriorOf(undefined, [failed(20), failed(30)])).toMatchObject({ kind: 'unknown' });
    const shapeOnly: Prior = { shape: PRIOR.shape, source: 'the kind' };
    expect(posteriorOf(shapeOnly, [running(20)])).toMatchObject({ kind: 'unknown' });
    expect(posteriorOf(shapeOnly, [running(20), failed(30)])).toMatchObject({ kind: 'posterior' });
  });
  it('without a guess tell a chance from ten failures on, and say that it is the record alone', () => {
    const ten = Array.from({ length: 10 }, (_, n) => failed(20 + 3 * n));
    const posterior = posteriorOf(undefined, ten);
    expect(posterior).toMatchObject({ kind: 'posterior', basis: 'own record' });
    expect(posteriorOf(undefined, ten.slice(1))).toEqual({
      kind: 'unknown',
      why: 'Nobody guessed how these fail, and 9 on record that failed are too few to tell: it takes 10.',
    });
  });
  it('refuse a guess of nothing', () => {
    const zero: Prior = { shape: { median: 2, spread: 0 }, source: 'zero' };
    expect(() => posteriorOf(zero, [failed(3)])).toThrow('shape must have median and spread above 0, got 2 and 0');
  });
  it('that contradict each other meet where both weigh, far outside of the guess', () => {
    const sure: Prior = { shape: { median: 2, spread: 0.05 }, scale: { median: 1, spread: 0.05 }, source: 'sure' };
    const { meanLnScale, sdLnScale } = momentsOf(
      weigh(
        Array.from({ length: 2000 }, () => running(900)),
        sure,
      ),
    );
    expect(meanLnScale).toBeGreaterThan(8 * 0.05); // the guess has 0
    expect(sdLnScale).toBeLessThan(0.1);
    expect(weigh([{ fate: 'found', age: 1e-9, fineAt: 0 }], PRIOR).lnEvidence).toBeLessThan(-5);
  });
  test('in another unit say the same', () => {
    fc.assert(
      fc.property(record, fc.double({ min: 0.01, max: 100, noNaN: true }), (lives, k) => {
        const other = lives.map(
          (one): Life =>
            one.fate === 'found'
              ? { ...one, age: k * one.age, fineAt: k * (one.fineAt ?? 0) }
              : { ...one, age: k * one.age },
        );
        const prior = { ...PRIOR, scale: { median: 60 * k, spread: 0.7 } };
        const [here, there] = [
          chanceOver(weigh(lives), { age: 20, hours: 3 }),
          chanceOver(weigh(other, prior), { age: 20 * k, hours: 3 * k }),
        ];
        expect(there.mean / here.mean).toBeCloseTo(1, 8);
        expect(there.high / here.high).toBeCloseTo(1, 4);
      }),
      { numRuns: 15 },
    );
  });
});
