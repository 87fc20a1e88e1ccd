/** Several numbers in one field, as they are written on the lid of a box: `33/13 29/16`, `16 17 18`, `21..28 teeth`. */
import { z } from 'zod';
import { type Dimension, type Measure, parseQuantity, type Refusal } from '../../quantity/index.ts';

const MOST = 60;

/** Numbers without a unit, apart by spaces or semicolons; `21..28` is every whole number of the range. JSON may give a list. */
export const several = (dimension: Dimension, meaning: string, example: string) =>
  z
    .unknown()
    .meta({ type: 'string', description: `${meaning}; several, apart by spaces`, examples: [example] })
    .transform((written, context): readonly Measure[] => {
      const outcome = readSeveral(written, dimension, example);
      if (outcome.ok) return outcome.value;
      const { expected, got, remedy } = outcome;
      context.issues.push({ code: 'custom', input: written, message: remedy, params: { expected, got } });
      return z.NEVER;
    });

type Read = { readonly ok: true; readonly value: readonly Measure[] } | Refusal;

function readSeveral(written: unknown, dimension: Dimension, example: string): Read {
  const refuse = (got: string, remedy: string): Refusal => ({ ok: false, expected: 'several numbers', got, remedy });
  const texts = Array.isArray(written) ? written.map(String) : typeof written === 'string' ? words(written) : [];
  if (texts.length === 0)
    return refuse(
      written === undefined ? 'nothing' : (JSON.stringify(written) ?? 'nothing').slice(0, 60),
      `write them one after the other, such as "${example}"`,
    );
  const single = texts.flatMap(spread);
  if (single.length > MOST) return refuse(`${single.length} of them`, `write at most ${MOST}`);
  const found: Measure[] = [];
  for (const text of single) {
    const parsed = parseQuantity(text, dimension);
    if (!parsed.ok)
      return { ...parsed, remedy: `${parsed.remedy}; several stand apart by spaces, such as "${example}"` };
    found.push(parsed.value);
  }
  return { ok: true, value: found };
}

/** A slash and a range keep what stands around them; a word such as `teeth` at the end is for all of them. */
const words = (text: string): readonly string[] =>
  text
    .replace(/\s*(teeth|tooth|T)\s*$/i, '')
    .replace(/\s*(\/|\.\.)\s*/g, '$1')
    .split(/[\s;]+|,\s+|,$/)
    .filter(word => word !== '');

function spread(text: string): readonly string[] {
  const [, low = '', high = ''] = /^(\d{1,3})\.\.(\d{1,3})$/.exec(text) ?? [];
  const [from, to] = [Number(low), Number(high)];
  return low === '' || to < from ? [text] : Array.from({ length: to - from + 1 }, (_, n) => String(from + n));
}
