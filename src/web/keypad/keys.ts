/** What each key of the keypad makes of the text so far. A key that would spoil the number does nothing. */
import { keypadWords } from '../words/keypad.ts';

export type Key = { readonly key: string; readonly says: string; readonly face?: string; readonly wide?: true };

const digit = (n: string): Key => ({ key: n, says: n });
const DELETE: Key = { key: 'delete', says: keypadWords.deleteLastSign, face: 'delete' };
const SIGN: Key = { key: 'sign', says: keypadWords.plusOrMinus, face: '±' };
const NEXT: Key = { key: ';', says: keypadWords.nextReading, face: 'next' };
const POINT: Key = { key: '.', says: keypadWords.point, face: '.' };

const ABOVE: readonly Key[] = [
  ...['7', '8', '9'].map(digit),
  DELETE,
  ...['4', '5', '6'].map(digit),
  SIGN,
  ...['1', '2', '3'].map(digit),
  NEXT,
];
/** The marks of a tape that are asked for most; any other is whole, `and`, over. */
const EIGHTHS = ['1/16', '1/8', '1/4', '3/8', '1/2', '5/8', '3/4', '7/8'];

/** Of what is counted: no sign, no point, no second reading. */
export const COUNT = 'counted';
const DIGITS: readonly Key[] = [
  ...['7', '8', '9'].map(digit),
  DELETE,
  ...['4', '5', '6'].map(digit),
  digit('0'),
  ...['1', '2', '3'].map(digit),
];
/** Of time: never below nought. */
const TIMES = ['min', 'h'];

/** Four in a row. A unit that is read in fractions has keys for them. */
export const keysFor = (unit: string): readonly Key[] =>
  unit === COUNT
    ? DIGITS
    : TIMES.includes(unit)
      ? [...DIGITS, POINT]
      : unit === 'in'
        ? [
            ...ABOVE,
            digit('0'),
            POINT,
            { key: ' ', says: keypadWords.andFractionFollows, face: 'and' },
            { key: '/', says: keypadWords.over, face: '/' },
            ...EIGHTHS.map(fraction => ({ key: fraction, says: fraction })),
          ]
        : [...ABOVE, { ...digit('0'), wide: true }, { ...POINT, wide: true }];

const READING = /^(.*;)?\s*(.*)$/s;

/** Several readings are apart by `;`, and the last is the one that is typed. */
export function pressed(text: string, key: string): string {
  const [, before = '', now = ''] = READING.exec(text) ?? [];
  const all = (next: string): string => (before === '' ? next : `${before} ${next}`.trimEnd());
  if (key === 'delete') return now === '' ? before.slice(0, -1) : all(now.slice(0, -1).trimEnd());
  if (key === 'sign') return all(now.startsWith('-') ? now.slice(1) : `-${now}`);
  if (/^\d+\/\d+$/.test(key)) {
    const [, whole] = /^(-?\d*)(?:\s*|\s+\d+\/?\d*)$/.exec(now) ?? [];
    return whole === undefined ? text : all(/\d/.test(whole) ? `${whole} ${key}` : `${whole}${key}`);
  }
  const whole = /^-?\d+$/.test(now);
  if (key === ';') return /\d$/.test(now) && !/ \d+$/.test(now) ? `${text};` : text; // never behind half a fraction
  if (key === '.') return whole ? `${text}.` : /^-?$/.test(now) ? all(`${now}0.`) : text;
  if (key === ' ') return whole ? `${text} ` : text;
  if (key === '/') return whole || /^-?\d+ \d+$/.test(now) ? `${text}/` : text;
  return all(`${now}${key}`);
}
