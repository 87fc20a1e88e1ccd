import { BARE, type Dimension, findUnit, shownAs, toSi, type Unit, unitsOf } from './units.ts';

/** A quantity as it was written and what it is in SI. Plain JSON. */
export type Measure = {
  readonly si: number;
  readonly unit: string; // the symbol of the unit it was written in, as in UNITS
  readonly text: string; // as it was written
  readonly dimension: Dimension;
};

/** Why a text is not a quantity: what was expected, what came, what to do. */
export type Refusal = { readonly ok: false; readonly expected: string; readonly got: string; readonly remedy: string };
export type Parsed<T> = { readonly ok: true; readonly value: T } | Refusal;

const FRACTION = String.raw`(?:(\d+)(?:\s+|\s*-\s*))?(\d+)\s*[/⁄]\s*(\d+)`;
const DECIMAL = String.raw`(\d+(?:[.,]\d+)?(?:[eE][+-]?\d+)?|[.,]\d+(?:[eE][+-]?\d+)?)`;
const QUANTITY = new RegExp(String.raw`^([+-]?)\s*(?:${FRACTION}|${DECIMAL})\s*(.*)$`, 's');
const VULGAR: Readonly<Record<string, string>> = {
  '½': '1/2',
  '¼': '1/4',
  '¾': '3/4',
  '⅛': '1/8',
  '⅜': '3/8',
  '⅝': '5/8',
  '⅞': '7/8',
};
const MAX_LENGTH = 100;
/** No quantity of a kart is larger in SI units; beyond it sums of squares would overflow. */
const BEYOND_MEASURE = 1e15;

/**
 * Reads `1045 mm`, `5 3/4 in`, `5-3/4"`, `24 N·m`, `70 in-lb`, `0.9 bar`, `1,5 mm`.
 * With a dimension, only its units are taken, and it decides between gauge and absolute pressure and between a
 * temperature and a difference; without one, `bar` is gauge and `°C` is a temperature.
 * A bare number is refused unless the dimension is a ratio or a count. `1,045 mm` is refused: it reads two ways.
 */
export function parseQuantity(text: unknown, dimension?: Dimension): Parsed<Measure> {
  const refuse = (remedy: string): Refusal => ({
    ok: false,
    expected: expectation(dimension),
    got: show(text),
    remedy,
  });
  if (typeof text === 'number')
    return refuse(`write it as text with its unit, for example "${text} ${unitsUnderstood(dimension)[0]}"`);
  if (typeof text !== 'string') return refuse(`write text such as "${example(dimension)}"`);
  const clean = tidy(text);
  if (clean === '') return refuse(`write a number and its unit, for example "${example(dimension)}"`);
  if (clean.length > MAX_LENGTH) return refuse(`write a single quantity, for example "${example(dimension)}"`);
  const match = QUANTITY.exec(clean);
  if (match === null) return refuse(`begin with a number, for example "${example(dimension)}"`);
  const [, sign, whole, num, den, decimal, symbol = ''] = match;
  if (decimal !== undefined && /^[1-9]\d{0,2},\d{3}$/.test(decimal))
    return refuse(
      `a comma before three digits reads two ways: write "${decimal.replace(',', '')}" or "${decimal.replace(',', '.')}" with the unit`,
    );
  if (Number(den) === 0) return refuse('write a fraction whose lower number is not 0');
  if (whole !== undefined && Number(num) >= Number(den))
    return refuse('write a fraction below 1 after a whole number, for example "5 3/4 in"');
  const size =
    decimal === undefined ? Number(whole ?? 0) + Number(num) / Number(den) : Number(decimal.replace(',', '.'));
  const value = sign === '-' ? -size : size;
  const unit = unitFor(symbol, dimension);
  if (unit === undefined) {
    const known = unitsUnderstood(dimension).join(', ');
    if (symbol === '') return refuse(`add the unit; understood: ${known}`);
    const other = findUnit(symbol);
    const why =
      other === undefined
        ? `"${symbol}" is not a unit known here`
        : `"${shownAs(other)}" is a unit of ${plain(other.dimension)}`;
    return refuse(`${why}; understood: ${known}`);
  }
  const si = toSi(value, unit);
  if (!(Math.abs(si) <= BEYOND_MEASURE)) return refuse('write a number that is not beyond all measure');
  if (si < 0 && (unit.dimension === 'temperature' || unit.dimension === 'pressure-absolute'))
    return refuse(`nothing lies below absolute zero of ${plain(unit.dimension)}: check the sign and the unit`);
  return { ok: true, value: { si, unit: unit.symbol, text: text.trim(), dimension: unit.dimension } };
}

/** Reads `18..22 N·m`, `18 N·m to 22 N·m`, or one quantity as a range of no width. The lower end comes first. */
export function parseRange(
  text: unknown,
  dimension?: Dimension,
): Parsed<{ readonly min: Measure; readonly max: Measure }> {
  const ends = typeof text === 'string' ? text.split(/\s*(?:\.\.\.?|…|–|\bto\b)\s*/) : [];
  const [first, second] = ends;
  if (first === undefined || second === undefined) {
    const single = parseQuantity(text, dimension);
    return single.ok ? { ok: true, value: { min: single.value, max: single.value } } : single;
  }
  if (ends.length > 2)
    return { ok: false, expected: 'a range of two ends', got: show(text), remedy: 'write it as "18..22 N·m"' };
  const max = parseQuantity(second, dimension);
  if (!max.ok) return { ...max, got: show(text) };
  const bare = /^[+-]?[\d\s.,/⁄-]+$/.test(tidy(first));
  const min = parseQuantity(bare ? `${first} ${max.value.unit}` : first, max.value.dimension);
  if (!min.ok) return { ...min, got: show(text) };
  if (min.value.si > max.value.si)
    return {
      ok: false,
      expected: 'the lower end first',
      got: show(text),
      remedy: 'exchange the two ends, or correct the one that is wrong',
    };
  return { ok: true, value: { min: min.value, max: max.value } };
}

function unitFor(symbol: string, dimension: Dimension | undefined): Unit | undefined {
  if (symbol !== '') return findUnit(symbol, dimension);
  return dimension !== undefined && BARE.includes(dimension)
    ? { symbol: '', dimension, mul: 1, div: 1, plus: 0, decimals: 3, also: [] }
    : undefined;
}

function tidy(text: string): string {
  return text
    .replace(/[\u2212\u2012\u2010\u2011]/g, '-') // minus sign, figure dash, hyphens
    .replace(/[\u00a0\u2009\u202f]/g, ' ')
    .replace(/[½¼¾⅛⅜⅝⅞]/g, glyph => ` ${VULGAR[glyph]}`)
    .trim();
}

const COMMON = ['mm', 'in', 'kg', 'lb', 'N·m', 'in·lb', 'bar', 'psi', '°C', '°', 'min', 'h', 'l', 'ml'];
const unitsUnderstood = (dimension?: Dimension): readonly string[] =>
  dimension === undefined ? COMMON : unitsOf(dimension);
const plain = (dimension: Dimension): string =>
  dimension.startsWith('pressure') ? dimension.replace('-', ', ') : dimension.replace('-', ' ');
const example = (dimension?: Dimension): string => `12 ${unitsUnderstood(dimension)[0]}`;
const expectation = (dimension?: Dimension): string =>
  dimension === undefined
    ? 'a number with its unit'
    : `${plain(dimension)} with its unit (${unitsOf(dimension).join(', ')})`;
function show(value: unknown): string {
  if (typeof value === 'string') return value.length > 60 ? `"${value.slice(0, 60)}…"` : `"${value}"`;
  if (typeof value === 'object' && value !== null) return Array.isArray(value) ? 'a list' : 'an object'; // it may have no text
  return String(value);
}
