/** One reading, or several of the same thing, as a person writes them down. */
import { type Dimension, findUnit, type Measure, type Parsed, parseQuantity } from '../../quantity/index.ts';

const BARE = /^[+-]?[\d\s.,/⁄½¼¾⅛⅜⅝⅞eE-]+$/;

/**
 * `142.5 mm; 142.6 mm; 142.4 mm` or `142.5; 142.6; 142.4 mm`: a unit that stands only with the last serves them all.
 * @returns at least one measure, all in one unit; or what was expected, what came and what to do
 */
export function parseReadings(text: unknown, dimension?: Dimension): Parsed<readonly Measure[]> {
  if (typeof text !== 'string' || !text.includes(';')) {
    const one = parseQuantity(text, dimension);
    return one.ok ? { ok: true, value: [one.value] } : one;
  }
  const parts = text.split(';').map(part => part.trim());
  const last = parseQuantity(parts.at(-1), dimension);
  if (!last.ok) return last;
  const { unit, dimension: known } = last.value;
  const readings: Measure[] = [];
  for (const part of parts) {
    const read = parseQuantity(BARE.test(part) && unit !== '' ? `${part} ${unit}` : part, known);
    if (!read.ok) return read;
    if (read.value.unit !== unit)
      return {
        ok: false,
        expected: `every reading in ${unit}, as the last`,
        got: `"${part}"`,
        remedy: 'write all readings of one thing in one unit',
      };
    readings.push(read.value);
  }
  return { ok: true, value: readings };
}

/** How an inch was written: the tape's marks when as whole or fraction, not when as a decimal. */
const FRACTION = /(\d+)\s*[/⁄]\s*(\d+)/;
const GLYPHS: readonly (readonly [RegExp, number])[] = [
  [/[⅛⅜⅝⅞]/, 8],
  [/[¼¾]/, 4],
  [/½/, 2],
];
/** A tape in inches is divided in sixteenths. Common practice. */
const TAPE_MARKS = 16;

export type Typed = {
  /** The finest step that was written [SI]. */
  readonly step: number;
  /** Marks to the inch, where the reading is one of a tape. */
  readonly marks?: number;
};

/** How fine the readings were written: the last digit, or the marks of a tape in inches. */
export function typedAs(readings: readonly Measure[]): Typed {
  const each = readings.map(stepOf);
  return each.reduce((finest, one) => (one.step < finest.step ? one : finest));
}

function stepOf({ text, unit, dimension }: Measure): Typed {
  const glyph = GLYPHS.find(([pattern]) => pattern.test(text))?.[1];
  const below = Number(FRACTION.exec(text)?.[2] ?? glyph ?? Number.NaN);
  const number = /\d*(?:[.,](\d+))?/.exec(text.replace(/^[^\d.,]*/, ''));
  const digits = number?.[1]?.length ?? 0;
  if (unit === 'in' && digits === 0) {
    const marks = Math.max(TAPE_MARKS, Number.isNaN(below) ? 0 : below);
    return { step: 0.0254 / marks, marks };
  }
  const { mul = 1, div = 1 } = findUnit(unit, dimension) ?? {};
  return { step: ((Number.isNaN(below) ? 10 ** -digits : 1 / below) * mul) / div };
}
