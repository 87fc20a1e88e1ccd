/** What holds joints, and what a second retention can be. Data: data/retentions.yaml, starting guesses with their source. */
import { parse } from 'yaml';
import { z } from 'zod';

/** Made when the file is read: a page that reads none carries none of it. */
function file() {
  const words = z.string().min(1);
  const list = z.array(words).min(1);
  const chance = z.number().gt(0).lt(1);
  const amount = z.number().min(0);
  const dependence = z.enum(['none', 'low', 'moderate', 'high', 'complete']);
  const retention = z.strictObject({
    name: words,
    words: list,
    way: words,
    chance: z.strictObject({ first: chance.optional(), second: chance.optional() }),
    fits: list.optional(),
    money: amount.optional(),
    minutes: amount.optional(),
    needs: words.optional(),
  });
  return z.strictObject({
    note: words,
    source: words,
    'trusted to a factor of': z.number().min(1),
    'own record': z.strictObject({ weight: z.number().positive(), source: words }),
    unverified: z.strictObject({ gone: chance, source: words }),
    alike: z.strictObject({ share: chance, source: words }),
    dependence: z.strictObject({
      'one look': dependence,
      'at once within': z.number().min(0),
      'same person later': dependence,
      'same person later, in another order': dependence,
      'another person': dependence,
      source: words,
    }),
    weights: z.strictObject({ 1: amount, 2: amount, 3: amount, 4: amount, source: words }),
    signs: list,
    hedges: list,
    /** What can be added says with what it is paid for, and how it does as a second. */
    retentions: z
      .array(
        retention.refine(
          ({ fits, money, minutes, chance: { second } }) =>
            fits === undefined || (money !== undefined && minutes !== undefined && second !== undefined),
          { error: 'one that fits a joint has money, minutes and a chance as second' },
        ),
      )
      .min(1),
    shared: z.array(
      z.strictObject({
        name: words,
        kinds: list,
        least: z.number().int().optional(),
        says: words,
        chance,
        source: words,
      }),
    ),
  });
}

export type Catalogue = z.infer<ReturnType<typeof file>>;
export type Retention = Catalogue['retentions'][number];
export type SharedAmong = Catalogue['shared'][number];

/** Reads the shipped file. Throws, naming the place, where it is not of this shape: then the data is broken, not the question. */
export const readRetentions = (text: string): Catalogue => file().parse(parse(text));

/** What the words of a kart file mean. */
export type Named =
  | { readonly is: 'holds'; readonly retention: Retention }
  | { readonly is: 'sign' } // shows that something moved
  | { readonly is: 'perhaps' } // 'wire where drilled'
  | { readonly is: 'unknown' };

/** A text that names a retention and a sign means the retention; with a hedge in it nothing is sure to be there. */
export function namedBy(text: string, role: 'first' | 'second', { retentions, signs, hedges }: Catalogue): Named {
  if (hedges.some(word => says(text, word))) return { is: 'perhaps' };
  const retention = retentions.find(
    ({ words, chance }) => chance[role] !== undefined && words.some(word => says(text, word)),
  );
  if (retention) return { is: 'holds', retention };
  return signs.some(word => says(text, word)) ? { is: 'sign' } : { is: 'unknown' };
}

/** The word by itself, in one or many: 'tie' is not in 'tier'. */
function says(text: string, word: string): boolean {
  if (!text.toLowerCase().includes(word.toLowerCase())) return false; // most words of the list are in no text
  const escaped = word.replace(/[.*+?^${}()|[\]\\]/g, '\\$&');
  return new RegExp(`(?<![\\p{L}\\p{N}])${escaped}s?(?![\\p{L}\\p{N}])`, 'iu').test(text);
}
