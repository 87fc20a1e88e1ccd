import type { Lapse } from './model.ts';

const WORDS: Readonly<Record<string, Lapse>> = {
  'each event': { on: 'event' },
  'each session': { on: 'session' },
  'first run': { on: 'first run' },
  'after session': { on: 'after session' },
  wet: { on: 'wet' },
  impact: { on: 'impact' },
  disturbed: { on: 'disturbed' },
  fitted: { on: 'fitted' },
};
const UNITS: Readonly<Record<string, 'hours' | 'laps' | 'days'>> = { h: 'hours', laps: 'laps', d: 'days' };

export const LAPSE_PATTERN = new RegExp(
  String.raw`^(?:${Object.keys(WORDS).join('|')}|(?!0+(?:\.0+)? )\d{1,6}(?:\.\d{1,3})? (?:${Object.keys(UNITS).join('|')}))$`,
);
export const LAPSE_EXPECTED = `${Object.keys(WORDS).join(', ')}, or an amount such as "10 h", "200 laps", "365 d"`;

/** Reads what stands in an item's `when` list; the text must match LAPSE_PATTERN. */
export const parseLapse = (text: string): Lapse => {
  const word = WORDS[text];
  if (word) return word;
  const [amount = '', unit = ''] = text.split(' ');
  const on = UNITS[unit];
  if (on === undefined || !LAPSE_PATTERN.test(text))
    throw new Error(`parseLapse: text must be ${LAPSE_EXPECTED}, got "${text}"`);
  return { on, limit: Number(amount) };
};
