import { describe, expect, it } from 'vitest';
import { bareLife } from './bare-life.ts';

const ask = (input: unknown): Readonly<Record<string, unknown>> =>
  bareLife.ask(input) as Readonly<Record<string, unknown>>;
const refused = (input: unknown) => {
  const answer = bareLife.ask(input);
  if (!('kind' in answer) || answer.kind !== 'problems') throw new Error('a refusal was expected');
  return (answer as { problems: readonly { path: string; expected: string; got: string }[] }).problems;
};
const prior = { shape: { median: 2, spread: 0.35 }, scale: { median: 60, spread: 0.7 } };

describe('calc life', () => {
  it('gives shape, scale, covariance, log-likelihood and both limits', () => {
    const answer = ask({ times: [31, 44, 12, 20, 38, 50], failed: [1, 1, 0, 0, 0, 0] });
    // A12 of checks/rows/life.json: R 4.2.2, survival 3.5-3.
    expect(answer).toMatchObject({ lives: 6, failures: 2 });
    expect(answer.shape).toBeCloseTo(4.97777027474, 9);
    expect(answer.scale).toBeCloseTo(49.4255379434, 8);
    expect(answer.logLikelihood).toBeCloseTo(-8.90904652431, 9);
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
    expect(Object.keys(answer.limits as object)).toEqual(['wald', 'likelihoodRatio']);
    expect(answer.notes).toEqual([expect.stringContaining('too steep on average')]);
  });
  it('answers an array in order, and its own example', () => {
    expect(bareLife.ask([bareLife.example, bareLife.example])).toHaveLength(2);
  });
  it('says of one failure that the shape is hardly known', () => {
    expect(ask({ times: [26, 14, 19, 33], failed: [true, false, false, false] }).notes).toEqual([
      expect.stringContaining('next to nothing of the shape'),
    ]);
  });
  it('takes finds between two looks, and parts not watched from new', () => {
    const answer = ask({
      times: [14, 26, 17, 40],
      failed: [1, 1, 1, 0],
      fine: [10, 20, null, null],
      from: [0, 0, null, 0],
    });
    expect(answer).toMatchObject({ failures: 3 });
  });
  it('with a prior weighs both, and says the chance with its band in words', () => {
    const { posterior } = ask({ times: [26, 14, 19, 33, 20], failed: [1, 0, 0, 0, 0], prior, age: 20, hours: 3 });
    expect(posterior).toMatchObject({ basis: 'mostly starting guess', chance: expect.closeTo(0.0464934671, 9) });
    expect(JSON.stringify(posterior)).toContain('about 5 would see it fail');
  });
  it('takes two answers for a prior: half gone by 40, one in ten by 15', () => {
    const gone = [
      { share: 0.5, by: 40 },
      { share: 0.1, by: 15 },
    ];
    const { posterior } = ask({ times: [20], failed: [0], prior: { gone }, age: 20, hours: 3 });
    expect(posterior).toMatchObject({ basis: 'mostly starting guess', chance: expect.any(Number) });
    expect(refused({ times: [20], failed: [0], prior: { gone: gone.map(one => ({ ...one, by: 10 })) } })).toMatchObject(
      [{ path: 'prior/gone' }],
    );
  });
  it('with no failure and a prior answers with the reason and no shape', () => {
    const answer = ask({ times: [20, 30], failed: [0, 0], prior });
    expect(answer).toMatchObject({ noFit: 'no failure', posterior: { basis: 'mostly starting guess' } });
    expect(answer).not.toHaveProperty('shape');
  });
  it('with a shape alone and no failure the chance is unknown', () => {
    const answer = ask({ times: [20], failed: [0], prior: { shape: prior.shape } });
    expect(answer.posterior).toEqual({ unknown: expect.stringContaining('Nobody said how long') });
  });
});

describe('calc life refuses', () => {
  it('a record without a most likely life and no prior beside it, with the reason', () => {
    expect(refused({ times: [20, 30], failed: [0, 0] })).toMatchObject([
      { path: 'times', got: expect.stringContaining('None of 2 failed') },
    ]);
    expect(refused({ times: [20, 20], failed: [1, 1] })).toMatchObject([
      { got: expect.stringContaining('ever steeper') },
    ]);
    expect(refused({ times: [], failed: [] })).toMatchObject([{ got: 'No life is on record' }]);
  });
  it('ages that cannot be, all at once and each with its place', () => {
    const problems = refused({
      times: [-3, 0, 10, 12],
      failed: [0, 1, 1, 0],
      fine: [null, null, 11, null],
      from: [null, null, null, 13],
    });
    expect(problems.map(({ path }) => path)).toEqual(['times/0', 'times/1', 'fine/2', 'from/3']);
  });
  it('lists of other lengths, and what is no number', () => {
    expect(refused({ times: [3, 4], failed: [1] })).toMatchObject([{ path: 'failed', got: '1' }]);
    expect(refused({ times: ['3 h'], failed: [1] })).toMatchObject([{ path: 'times/0' }]);
    expect(refused({ times: [3], failed: ['yes'] })).toMatchObject([{ path: 'failed/0' }]);
  });
  it('a prior that is neither a shape nor two answers, or both', () => {
    expect(refused({ times: [3, 9], failed: [1, 0], prior: {} })).toMatchObject([{ path: 'prior', got: '{}' }]);
    const gone = [
      { share: 0.1, by: 2 },
      { share: 0.5, by: 4 },
    ];
    expect(refused({ times: [3, 9], failed: [1, 0], prior: { ...prior, gone } })).toMatchObject([{ path: 'prior' }]);
  });
  it('a prior of nothing, hours without a prior, an age without hours', () => {
    expect(refused({ times: [3, 9], failed: [1, 0], prior: { shape: { median: 0, spread: 0.3 } } })).toMatchObject([
      { path: 'prior/shape/median', got: '0' },
    ]);
    const flat = { shape: { median: 2, spread: 0 }, scale: { median: -60, spread: 0.7 } };
    expect(refused({ times: [3, 9], failed: [1, 0], prior: flat }).map(({ path }) => path)).toEqual([
      'prior/shape/spread',
      'prior/scale/median',
    ]);
    expect(refused({ times: [3, 9], failed: [1, 0], age: 3, hours: 2 })).toMatchObject([{ path: 'prior' }]);
    expect(refused({ times: [3, 9], failed: [1, 0], age: 3 })).toMatchObject([{ path: 'hours' }]);
  });
});
