/** Numbers on jets: they carry no unit, and what they mean is asked beside them. */
import { type Read, shown, written } from '../written.ts';

/** By bore a kart's main jet is about 100 to 200; by flow up to some hundreds. Common practice. */
const POSSIBLE = { least: 10, most: 1000 } as const;
const MOST_SIZES = 100;

export const jetNumber = (meaning: string, example: string) => written(meaning, example, readJet);
export const jetNumbers = (meaning: string, example: string) =>
  written(`${meaning}; several stand apart by spaces`, example, text => readJets(text, example));

export function readJet(text: unknown): Read<number> {
  const number =
    typeof text === 'number' ? text : typeof text === 'string' ? Number(text.trim().replace(',', '.')) : Number.NaN;
  if (number >= POSSIBLE.least && number <= POSSIBLE.most && text !== '') return { ok: true, value: number };
  const bore = /^\s*([\d.,]+)\s*mm\s*$/.exec(typeof text === 'string' ? text : '');
  return {
    ok: false,
    expected: `the number on the jet, ${POSSIBLE.least} to ${POSSIBLE.most}, without a unit`,
    got: shown(text),
    remedy: bore
      ? `write the number as it is stamped: a bore of ${bore[0].trim()} is usually stamped "${Math.round(100 * Number(bore[1]?.replace(',', '.')))}"`
      : 'write the number as it is stamped, such as "165"',
  };
}

function readJets(text: unknown, example: string): Read<readonly number[]> {
  const words = Array.isArray(text)
    ? text
    : typeof text === 'string'
      ? text.split(/[\s;]+|,\s+/).filter(w => w !== '')
      : [];
  const refused = (remedy: string): Read<readonly number[]> => ({
    ok: false,
    expected: 'the numbers on the jets',
    got: shown(text),
    remedy,
  });
  if (words.length === 0) return refused(`write them one after the other, such as "${example}"`);
  if (words.length > MOST_SIZES) return refused(`write at most ${MOST_SIZES}`);
  const sizes: number[] = [];
  for (const word of words) {
    const read = readJet(word);
    if (!read.ok) return { ...read, remedy: `${read.remedy}; several stand apart by spaces, such as "${example}"` };
    sizes.push(read.value);
  }
  return { ok: true, value: sizes };
}
