/**
 * May the lives of several karts be told as one record? Only where they wear alike, as far as they show it.
 *
 *   odds = Z(all together) / Π Z(each kart);   Z = ∫ likelihood · guess
 *
 * Above 1 they tell one life, below 1 lives of their own. Few lives hardly move it: then pooling is what helps most, and
 * it is done. Below 1 in 10 (strong, after Jeffreys 1961, memory) each kart keeps its own record. Needs a guess of the scale,
 * and ages of all in one unit.
 */
import type { Life } from '../life.ts';
import { type NotKnown, type Posterior, posteriorOf } from './posterior.ts';
import type { Prior } from './prior.ts';

export type Pooled = {
  readonly kind: 'pooled' | 'apart';
  /** One for each kart, in order: the same one where they are pooled. */
  readonly posteriors: readonly Posterior[];
  readonly odds: number; // of one life for all, over lives of their own
  readonly say: string;
};

const APART = 0.1;

/** @param karts lives of one kind, kart by kart; those of one maker and one use, which the caller must see to */
export function pool(prior: Prior | undefined, karts: readonly (readonly Life[])[]): Pooled | NotKnown {
  const together = posteriorOf(prior, karts.flat());
  if (together.kind === 'unknown') return together;
  const own: Posterior[] = [];
  for (const lives of karts) {
    const each = posteriorOf(prior, lives);
    if (each.kind === 'unknown' || prior?.scale === undefined)
      return {
        kind: 'unknown',
        why: 'Whether several karts wear alike cannot be told before somebody says how long these last.',
      };
    own.push(each);
  }
  const odds = Math.exp(together.lnEvidence - own.reduce((sum, { lnEvidence }) => sum + lnEvidence, 0));
  const apart = !(odds >= APART);
  return {
    kind: apart ? 'apart' : 'pooled',
    posteriors: apart ? own : karts.map(() => together),
    odds,
    say: apart
      ? 'The karts do not wear these alike: each keeps its own record.'
      : `One record of ${karts.length} karts: nothing on it says that they wear these differently.`,
  };
}
