/** A field whose text is not a quantity with a unit, such as a mixing ratio or the sizes in a jet box. */
import { z } from 'zod';

export type Read<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly expected: string; readonly got: string; readonly remedy: string };

/** Reads a text by its own rule; what it refuses becomes a problem with what was expected and what to write. */
export const written = <T>(meaning: string, example: string, read: (text: unknown) => Read<T>) =>
  z
    .unknown()
    .meta({ type: 'string', description: meaning, examples: [example] })
    .transform((text, context): T => {
      const outcome = read(text);
      if (outcome.ok) return outcome.value;
      const { expected } = outcome;
      const got = text === undefined ? 'nothing' : outcome.got;
      const remedy = text === undefined ? `add it, for example "${example}"` : outcome.remedy;
      context.issues.push({ code: 'custom', input: text, message: remedy, params: { expected, got } });
      return z.NEVER;
    });

/** What came, as it is shown in a refusal. */
export const shown = (text: unknown): string => {
  const whole = typeof text === 'string' ? `"${text}"` : (JSON.stringify(text) ?? String(text));
  return whole.length > 60 ? `${whole.slice(0, 60)}…` : whole;
};
