/**
 * What is thought of a life before the record is looked at: shape and scale, each lognormal, apart from one another.
 *
 * A scale is not carried over from industry: it comes from the person or the maker, as the hours by which a stated share
 * is gone, and is trusted to a factor of two either way (ln sd 0.7, common practice). Without it the scale is unknown,
 * and only a record with a failure in it says anything.
 */
import type { Weibull } from '../weibull/index.ts';

/** Lognormal: its median, and the standard deviation of its logarithm [1]. Both above 0. */
export type Guess = { readonly median: number; readonly spread: number };

export type Prior = {
  readonly shape: Guess;
  readonly scale?: Guess; // in the unit of the ages; none: nobody said how long it lasts
  readonly source: string; // shown with the number
};

/** Factor of two either way at one standard deviation. Common practice. */
export const SCALE_SPREAD = 0.7;
/** A stated service interval is read as the hours by which one in ten is gone. Common practice, and flagged as that. */
export const INTERVAL_SHARE = 0.1;

/** "By so many hours this share of them is gone." Hours above 0, share between 0 and 1. */
export type Gone = { readonly share: number; readonly by: number };

/**
 * The life two such answers mean: of ten, five gone by t50 and one gone by t10.
 *
 *   β = ln(ln(1 - p₂) / ln(1 - p₁)) / ln(t₂ / t₁);  η = t₂ / (-ln(1 - p₂))^(1/β)
 *
 * Undefined where the answers contradict each other: the larger share must be gone later. Source: the Weibull life itself.
 */
export function lifeOfAnswers(one: Gone, two: Gone): Weibull | undefined {
  const [first, last] = one.share < two.share ? [one, two] : [two, one];
  if (!(isAnswer(first) && isAnswer(last) && first.share < last.share && first.by < last.by)) return undefined;
  const shape = Math.log(Math.log1p(-last.share) / Math.log1p(-first.share)) / Math.log(last.by / first.by);
  return { shape, scale: scaleOfAnswer(last, shape) };
}

/** The scale that one answer means, for a shape. */
export const scaleOfAnswer = ({ share, by }: Gone, shape: number): number => by / (-Math.log1p(-share)) ** (1 / shape);

export const isAnswer = ({ share, by }: Gone): boolean => share > 0 && share < 1 && by > 0 && Number.isFinite(by);

/** A shape guessed for the kind, and one answer (or a service interval, `{ share: INTERVAL_SHARE, by }`). */
export const withAnswer = (prior: Prior, answer: Gone, from: string): Prior => ({
  shape: prior.shape,
  scale: { median: scaleOfAnswer(answer, prior.shape.median), spread: SCALE_SPREAD },
  source: `${prior.source}; ${from}`,
});

/** Two answers; `spread` is how far a shape of this kind is trusted. */
export function priorOfAnswers(one: Gone, two: Gone, spread: number, source: string): Prior | undefined {
  const life = lifeOfAnswers(one, two);
  return (
    life && {
      shape: { median: life.shape, spread },
      scale: { median: life.scale, spread: SCALE_SPREAD },
      source,
    }
  );
}
