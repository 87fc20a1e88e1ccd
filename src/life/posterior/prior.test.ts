import fc from 'fast-check';
import { describe, expect, it, test } from 'vitest';
import { ageAtShare } from '../weibull/index.ts';
import { INTERVAL_SHARE, lifeOfAnswers, priorOfAnswers, withAnswer } from './prior.ts';

describe('two answers about ten parts', () => {
  test('mean the life that gives them back', () => {
    const share = fc.double({ min: 0.02, max: 0.98, noNaN: true });
    const by = fc.double({ min: 1, max: 500, noNaN: true });
    fc.assert(
      fc.property(share, share, by, by, (p, q, t, u) => {
        fc.pre(Math.abs(p - q) > 0.02 && Math.abs(Math.log(t / u)) > 0.05);
        const [one, two] = [
          { share: Math.min(p, q), by: Math.min(t, u) },
          { share: Math.max(p, q), by: Math.max(t, u) },
        ];
        const life = lifeOfAnswers(two, one);
        expect(life && ageAtShare(life, one.share) / one.by).toBeCloseTo(1, 8);
        expect(life && ageAtShare(life, two.share) / two.by).toBeCloseTo(1, 8);
      }),
    );
  });
  it('half gone by t50 and one in ten by t10: shape 1.884 / ln(t50/t10)', () => {
    // ln(ln 2 / -ln 0.9) = 1.884 to four figures; memory.
    expect(lifeOfAnswers({ share: 0.5, by: 40 }, { share: 0.1, by: 15 })?.shape).toBeCloseTo(
      1.884 / Math.log(40 / 15),
      3,
    );
  });
  it('that contradict each other mean none', () => {
    expect(lifeOfAnswers({ share: 0.5, by: 10 }, { share: 0.1, by: 20 })).toBeUndefined();
    expect(lifeOfAnswers({ share: 0.5, by: 10 }, { share: 0.5, by: 20 })).toBeUndefined();
    expect(lifeOfAnswers({ share: 0, by: 10 }, { share: 0.5, by: 20 })).toBeUndefined();
    expect(priorOfAnswers({ share: 0.1, by: Number.NaN }, { share: 0.5, by: 20 }, 0.4, 'asked')).toBeUndefined();
  });
});

it('a service interval is the hours by which one in ten is gone, for the shape of the kind', () => {
  const kind = { shape: { median: 2.5, spread: 0.4 }, source: 'the kind' };
  const prior = withAnswer(kind, { share: INTERVAL_SHARE, by: 20 }, 'interval of the maker');
  expect(ageAtShare({ shape: 2.5, scale: prior.scale?.median ?? 0 }, 0.1)).toBeCloseTo(20, 12);
  expect(prior.source).toBe('the kind; interval of the maker');
});
