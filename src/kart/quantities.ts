/** Reads the quantities of a map, saying where a wrong one stands. */
import { type Dimension, type Measure, type Parsed, parseQuantity, parseRange } from '../quantity/index.ts';
import type { Report } from './problem.ts';
import { child, locate, top } from './source.ts';

/** The quantity behind a key; undefined when the key is not there or its value was reported. */
export const quantityAt = (holder: object, key: string, report: Report, dimension?: Dimension): Measure | undefined =>
  read(holder, key, report, text => parseQuantity(text, dimension));

/** A range behind a key: `18..22 N·m`, or one quantity as a range of no width. */
export const rangeAt = (
  holder: object,
  key: string,
  report: Report,
  dimension?: Dimension,
): { readonly min: Measure; readonly max: Measure } | undefined =>
  read(holder, key, report, text => parseRange(text, dimension));

function read<T>(holder: object, key: string, report: Report, parse: (text: unknown) => Parsed<T>): T | undefined {
  const text = child(holder, key);
  if (text === undefined) return undefined;
  const parsed = parse(text);
  if (parsed.ok) return parsed.value;
  report(locate(holder, top(undefined), [key]), parsed);
  return undefined;
}
