/** Starting guesses of how parts of a kind fail. Data: data/priors.yaml, each with its source. */
import { parse } from 'yaml';
import { z } from 'zod';
import type { Prior } from '../posterior/index.ts';

/** Made when the file is read: a page that reads none carries none of it. */
function file() {
  const words = z.string().min(1);
  const above = z.number().positive();
  const shape = z.strictObject({ median: above, spread: above });
  const ranged = z.strictObject({ median: above, spread: above, from: above, to: above });
  return z.strictObject({
    note: words,
    parts: z.array(z.strictObject({ part: words, kinds: z.array(words), mode: words, shape, source: words })).min(1),
    /** Classes of failure, for a part that stands in no list: what is done about each. */
    modes: z.array(z.strictObject({ mode: words, shape: ranged, use: words, source: words })).min(1),
    /** What a public data base of industry says, to compare. */
    industry: z.array(z.strictObject({ item: words, shape: ranged, source: words })).min(1),
  });
}

export type Priors = z.infer<ReturnType<typeof file>>;

/** Reads the shipped file. Throws, naming the place, where it is not of this shape: then the data is broken, not the question. */
export const readPriors = (text: string): Priors => file().parse(parse(text));

/** The guess for a kind of `data/kinds`: a shape, and no life, which a person must say. Undefined where nobody guessed. */
export function priorOfKind(priors: Priors, kind: string): Prior | undefined {
  const found = priors.parts.find(({ kinds }) => kinds.includes(kind));
  return found && { shape: found.shape, source: `${found.part}, ${found.mode}: ${found.source}` };
}
