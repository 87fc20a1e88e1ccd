/**
 * One sentence of NMEA 0183 or IEC 61162-1: `$`, address, fields, `*` and the checksum, which is the exclusive or of all
 * characters between `$` and `*` in two hexadecimal digits. Source: as quoted in many public manuals (excerpts read).
 */
export type NoSentence = 'no sentence' | 'no checksum' | 'checksum' | 'other sentences';

/** Field n from 0; an empty text for one that is empty or not there. */
export type Sentence = { readonly formatter: string; readonly field: (n: number) => string };

const DOLLAR = 0x24;
const COMMA = 0x2c;
const HEX = /^[0-9A-Fa-f]{2}\s*$/;

/** @param wanted formatters to take apart. What stands before the last `$` of a line is passed over. */
export function sentenceOf(line: string, wanted: ReadonlySet<string>): Sentence | NoSentence {
  const start = line.charCodeAt(0) === DOLLAR ? line.lastIndexOf('$') : line.indexOf('$');
  if (start < 0) return line.includes('!') ? 'other sentences' : 'no sentence';
  const star = line.indexOf('*', start);
  if (star < 0) return 'no checksum';
  const commas: number[] = [];
  let sum = 0;
  for (let at = start + 1; at < star; at++) {
    const code = line.charCodeAt(at);
    sum ^= code;
    if (code === COMMA) commas.push(at);
  }
  const written = line.slice(star + 1);
  if (!HEX.test(written) || Number.parseInt(written, 16) !== sum) return 'checksum';
  // A proprietary address begins with P; else two characters name the talker, whoever it is.
  const formatter = line.slice(start + 3, start + 6);
  if (line[start + 1] === 'P' || !wanted.has(formatter) || commas[0] !== start + 6) return 'other sentences';
  const field = (n: number): string => {
    const from = commas[n];
    return from === undefined ? '' : line.slice(from + 1, commas[n + 1] ?? star);
  };
  return { formatter, field };
}

/** What the checksum vouches for need only be told from nothing. */
export const numberOf = (text: string): number => (text === '' ? Number.NaN : Number(text));

/** Degrees of `4807.038` and `N`: the two digits before the point and what follows are minutes. NaN for anything else. */
export function degreesOf(text: string, side: string): number {
  const point = text.indexOf('.');
  const whole = (point < 0 ? text.length : point) - 2;
  const minutes = numberOf(text.slice(Math.max(0, whole)));
  const degrees = whole > 0 ? Number(text.slice(0, whole)) : Number.NaN;
  const sign = side === 'N' || side === 'E' ? 1 : side === 'S' || side === 'W' ? -1 : Number.NaN;
  return minutes >= 0 && minutes < 60 && degrees >= 0 ? sign * (degrees + minutes / 60) : Number.NaN;
}

/** Seconds of the day of `hhmmss.ss`; NaN for anything else. */
export function secondsOf(text: string): number {
  const [hours, minutes, seconds] = [Number(text.slice(0, 2)), Number(text.slice(2, 4)), numberOf(text.slice(4))];
  return hours < 24 && minutes < 60 && seconds >= 0 && seconds < 61
    ? hours * 3600 + minutes * 60 + seconds
    : Number.NaN;
}
