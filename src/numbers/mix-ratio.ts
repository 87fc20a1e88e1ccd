/** A mixing ratio as it is written on the can: `20:1` is 20 parts of petrol to 1 part of oil. */
import { type Read, shown, written } from './written.ts';

/** Outside of it a ratio is a slip: 5:1 fouls the plug, beyond 100:1 no two-stroke of this kind lives. Common practice. */
export const POSSIBLE_RATIO = { least: 8, most: 100 } as const;
/** Ratios for which kart oils are sold; common practice. */
export const USUAL_RATIO = { least: 12, most: 50 } as const;

export const mixRatio = (meaning: string, example = '20:1') => written(`${meaning}, petrol to oil`, example, readRatio);

/** Parts of petrol to one part of oil [1]; what is upside down, a per cent or a bare number is refused. */
export function readRatio(text: unknown): Read<number> {
  const refuse = (remedy: string): Read<number> => ({
    ok: false,
    expected: `petrol to oil, ${POSSIBLE_RATIO.least}:1 to ${POSSIBLE_RATIO.most}:1`,
    got: shown(text),
    remedy,
  });
  if (typeof text === 'number') return refuse(`write it as text, petrol first: "${text}:1"`);
  if (typeof text !== 'string') return refuse('write it petrol first, such as "20:1"');
  const match = /^\s*(\d+(?:[.,]\d+)?)\s*(:|\/|to)\s*(\d+(?:[.,]\d+)?)\s*$/.exec(text);
  if (match === null) return refuse(withoutColon(text));
  const [petrol, oil] = [match[1], match[3]].map(part => Number(part?.replace(',', '.'))) as [number, number];
  if (oil > petrol) return refuse(`upside down: petrol stands first, so write "${oil}:${petrol}"`);
  if (oil !== 1) return refuse('write it to 1 part of oil, such as "20:1"');
  if (petrol < POSSIBLE_RATIO.least || petrol > POSSIBLE_RATIO.most)
    return refuse("look at the engine maker's sheet and write it petrol first, such as 20:1");
  return { ok: true, value: petrol };
}

function withoutColon(text: string): string {
  const number = Number.parseFloat(text.replace(',', '.'));
  if (!(number > 0)) return 'write it petrol first, such as "20:1"';
  if (/%|per\s?cent/.test(text)) {
    const [ofPetrol, ofMix] = [100 / number, 100 / number - 1].map(ratio => `${Number(ratio.toFixed(1))}:1`);
    return `a per cent reads two ways: write "${ofPetrol}" if the oil is ${number} % of the petrol, "${ofMix}" if it is ${number} % of the mix`;
  }
  return `write it petrol first, to one part of oil: "${number}:1"`;
}
