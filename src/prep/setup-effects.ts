/** What a change of the set-up is said to do: hints, each with its source and who disagrees. Data: data/setup-effects.yaml. */
import { parse } from 'yaml';
import { z } from 'zod';

const words = z.string().min(1);
const effect = z.strictObject({
  change: words, // 'rear width wider'
  settings: z.array(words).min(1), // names it goes under
  way: words, // 'more', 'less', or a word of its own where the setting has no number
  entry: words.optional(),
  mid: words.optional(),
  exit: words.optional(),
  use: words.optional(),
  source: words,
  disagreement: words.optional(),
});
const file = z.strictObject({ note: words, effects: z.array(effect).min(1) });

export type SetupEffect = z.infer<typeof effect>;
export type SetupEffects = z.infer<typeof file>;

/** Reads the shipped file. Throws, naming the place, where it is not of this shape: then the data is broken, not the question. */
export const readSetupEffects = (text: string): SetupEffects => file.parse(parse(text));
