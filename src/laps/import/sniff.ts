/** Which format a file has, told from its first bytes; and what is no log at all. */
import type { LogProblem } from '../model.ts';
import type { Encoding } from './text-of-bytes.ts';

export type Format = 'csv' | 'gpx' | 'nmea';

/** What has none of the marks of the others is taken for separated values, which say what they miss. */
export function formatOf(text: string): Format {
  if (/^\s*</.test(text)) return 'gpx';
  return /^[^\n]*\$[A-Z]{2}(RMC|GGA|VTG|GSA|GSV|GLL|ZDA),/m.test(text) ? 'nmea' : 'csv';
}

/** First bytes of what people take for a log: PKWARE zip, gzip (RFC 1952), PDF, SQLite (memory). */
const KNOWN: readonly (readonly [readonly number[], string, string])[] = [
  [[0x50, 0x4b, 3, 4], 'a zip archive or a spreadsheet', 'unpack it, or save the sheet as CSV, and import that'],
  [[0x1f, 0x8b], 'a gzip archive', 'unpack it and import what is inside'],
  [[0x25, 0x50, 0x44, 0x46], 'a PDF document', 'export the log as CSV, GPX or NMEA'],
  [[0x53, 0x51, 0x4c, 0x69, 0x74, 0x65], 'a database', 'export the log as CSV, GPX or NMEA'],
];
const EXPECTED = 'a log as CSV with a header, GPX 1.1 or NMEA 0183';
/** Of plain text next to nothing is a control character. */
const CONTROL_SHARE = 0.02;

export function notALog(head: Uint8Array, text: string, encoding: Encoding): LogProblem | undefined {
  const known = KNOWN.find(([bytes]) => bytes.every((byte, n) => head[n] === byte));
  if (known) return { expected: EXPECTED, got: known[1], remedy: known[2] };
  if (encoding === 'utf-8' && controls(head) > CONTROL_SHARE * head.length)
    return { expected: EXPECTED, got: 'a binary file', remedy: 'export the log as CSV, GPX or NMEA' };
  if (/^\s*(<!doctype html|<html|<head|<body)/i.test(text))
    return {
      expected: EXPECTED,
      got: 'a web page',
      remedy: 'save the file itself and not the page that shows it; you may have to sign in first',
    };
  return text.trim() === ''
    ? { expected: EXPECTED, got: 'nothing but white space', remedy: 'copy the log from the logger again' }
    : undefined;
}

function controls(bytes: Uint8Array): number {
  let count = 0;
  for (const byte of bytes) if (byte < 0x20 && byte !== 9 && byte !== 10 && byte !== 13) count++;
  return count;
}
