/** What the record and a starting guess say of one part over the event to come; nothing where neither says anything. */
import { ended, type Life } from './life.ts';
import {
  type Chance,
  type ChanceWords,
  chanceOver,
  chanceWords,
  type NotKnown,
  type Posterior,
  type Prior,
  posteriorOf,
} from './posterior/index.ts';

export type Outlook = {
  readonly kind: 'outlook';
  readonly chance: Chance;
  readonly words: ChanceWords;
  readonly posterior: Posterior;
};

/**
 * @param part the one asked about, running; it counts once, whether it stands among `lives` or not
 * @param lives all of its kind on record, of one owner's karts, their ages in the same unit
 * @param hours of the event to come, practice counted in; above 0
 */
export function outlookOf<L extends Life>(asked: {
  readonly part: L;
  readonly lives: readonly L[];
  readonly prior: Prior | undefined;
  readonly hours: number;
}): Outlook | NotKnown {
  const { part, lives, prior, hours } = asked;
  return outlookFrom(() => posteriorOf(prior, lives.includes(part) ? lives : [...lives, part]), part, hours);
}

/** The same where record and guess have been weighed before, the part among them. */
export function outlookFrom(weighed: () => Posterior | NotKnown, part: Life, hours: number): Outlook | NotKnown {
  if (ended(part)) return { kind: 'unknown', why: 'It has failed already: replace it.' };
  const posterior = weighed();
  if (posterior.kind === 'unknown') return posterior;
  const chance = chanceOver(posterior, { age: part.age, hours });
  return { kind: 'outlook', chance, words: chanceWords(chance, posterior), posterior };
}
