/**
 * The share that still lasts at each age, from the record alone and with no curve assumed (Kaplan and Meier 1958, memory).
 *
 *   S(t) = Π (1 - d/n);  se = S √(Σ d/(n (n - d)));  limits S^exp(± z se / (S ln S))
 *
 * d failures at an age, n watched just before it (those not watched from new count once they are watched; a failure
 * comes before a fine one of the same age); se after Greenwood; limits on log(-log S), which stay between 0 and 1.
 * A find is placed at the age it was found, the latest it can be. Source: also Kalbfleisch and Prentice 2002, 1.4 (memory);
 * figures of R 4.2.2 with survival 3.5-3 in checks/rows/life.json.
 */
import { normalScore } from '../../numbers/index.ts';
import { ended, joined, type Life, mustBeLives } from '../life.ts';

export type Survival = {
  readonly age: number;
  readonly watched: number;
  readonly failed: number;
  readonly share: number; // that lasts beyond this age
  readonly error: number; // standard; not a number once none is left
  readonly low: number; // not a number where the error is, or where none failed before
  readonly high: number;
};

/** One entry an age at which something failed, in order; none where nothing did. */
export function kaplanMeier(lives: readonly Life[], confidence = 0.95): readonly Survival[] {
  mustBeLives('kaplanMeier', lives);
  const all = joined(lives);
  const z = normalScore((1 + confidence) / 2);
  const ages = [...new Set(all.filter(ended).map(({ age }) => age))].sort((a, b) => a - b);
  let [share, sum] = [1, 0];
  return ages.map(age => {
    const watched = all.filter(life => life.age >= age && (life.from ?? 0) < age).length;
    const failed = all.filter(life => ended(life) && life.age === age).length;
    share *= 1 - failed / watched;
    sum += failed / (watched * (watched - failed));
    const error = watched === failed ? Number.NaN : share * Math.sqrt(sum);
    const wide = Math.exp((z * Math.sqrt(sum)) / Math.abs(Math.log(share)));
    const known = Number.isFinite(error);
    return {
      age,
      watched,
      failed,
      share,
      error,
      low: known ? share ** wide : Number.NaN,
      high: known ? share ** (1 / wide) : Number.NaN,
    };
  });
}
