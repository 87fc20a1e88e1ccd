/**
 * A person's own units: what was written in one unit of the trade, said in the other. Only ever for showing: the SI value
 * stays what it was, and an end of a tolerance rounds to its strict side, so that nothing passes by being shown.
 */
import { formatQuantity } from './format.ts';
import { inchFraction } from './inches.ts';
import { parseQuantity } from './parse.ts';
import { type Dimension, findUnit, fromSi, type Unit } from './units.ts';

/** What can be chosen, for each kind of size that the trade writes in two ways; and the units it is written in. */
export const OWN_UNITS = {
  size: { of: ['mm', 'cm', 'in'], choices: ['mm', 'in'] },
  distance: { of: ['m', 'ft'], choices: ['m', 'ft'] },
  torque: { of: ['N·m', 'N·cm', 'kgf·m', 'ft·lb', 'in·lb'], choices: ['N·m', 'ft·lb', 'in·lb'] },
  pressure: { of: ['bar', 'psi', 'kPa'], choices: ['bar', 'psi', 'kPa'] },
  barometer: { of: ['hPa', 'mbar', 'inHg'], choices: ['hPa', 'inHg'] },
  temperature: { of: ['°C', '°F', 'K'], choices: ['°C', '°F'] },
  mass: { of: ['kg', 'lb'], choices: ['kg', 'lb'] },
  volume: { of: ['l', 'US gal'], choices: ['l', 'US gal'] },
  speed: { of: ['km/h', 'mph'], choices: ['km/h', 'mph'] },
} as const;
export type OwnKind = keyof typeof OWN_UNITS;
export const OWN_KINDS = Object.keys(OWN_UNITS) as readonly OwnKind[];
/** The unit of each kind; a kind that is left out is shown as it was written. */
export type OwnUnits = { readonly [K in OwnKind]?: string };

export type Written = { readonly si: number; readonly unit: string; readonly text: string };

/** The unit a person wants to see what was written in `unit`; `unit` itself where nothing was chosen. */
export function ownUnit(unit: string, own: OwnUnits): string {
  const symbol = findUnit(unit)?.symbol ?? unit;
  const kind = OWN_KINDS.find(one => (OWN_UNITS[one].of as readonly string[]).includes(symbol));
  const chosen = kind && own[kind];
  return chosen === undefined || chosen === symbol ? unit : chosen;
}

export type UnitsRead =
  | { readonly ok: true; readonly units: OwnUnits }
  | { readonly ok: false; readonly got: string; readonly expected: string };

/** A choice typed in one line: `in, psi, °F`. One unit of a kind; each says by itself of which. */
export function readOwnUnits(text: string): UnitsRead {
  const every = OWN_KINDS.map(kind => OWN_UNITS[kind].choices.join(' or '));
  const units: { [K in OwnKind]?: string } = {};
  for (const typed of text.split(/[,;]/).map(part => part.trim())) {
    if (typed === '') continue;
    const symbol = findUnit(typed)?.symbol ?? typed;
    const kind = OWN_KINDS.find(one => (OWN_UNITS[one].choices as readonly string[]).includes(symbol));
    if (kind === undefined) return { ok: false, got: typed, expected: every.join('; ') };
    if (units[kind] !== undefined && units[kind] !== symbol)
      return { ok: false, got: `${units[kind]} and ${symbol}`, expected: OWN_UNITS[kind].choices.join(' or ') };
    units[kind] = symbol;
  }
  return { ok: true, units };
}

/** A figure in a person's units; what is kept in kelvins is a difference, whatever its text says. */
export const figureInOwnUnits = (figure: Written, own: OwnUnits): string =>
  figure.unit === 'K' ? inOwnUnit(figure, own) : textInOwnUnits(figure.text, own);

/** `146.05 mm` → `5 3/4 in`; the text itself where nothing else was chosen. No finer than it was written. */
export function inOwnUnit(written: Written, own: OwnUnits, dimension?: Dimension): string {
  const { unit, text } = written;
  const to = ownUnit(unit, own);
  if (to === unit || !Number.isFinite(written.si)) return text;
  const of = dimensionOf(unit, dimension);
  return shownIn(written.si, to, digitsOf(text, unit, to, of), of);
}

/**
 * Both ends of what must hold, each rounded to its strict side: the shown tolerance lies inside the true one. More digits
 * where it would close otherwise; as they were written where it still does.
 */
export function limitsInOwnUnit(
  { min, max }: { readonly min: Written | null; readonly max: Written | null },
  own: OwnUnits,
): { readonly min: string | null; readonly max: string | null } {
  const as = (end: Written | null, up: boolean, more: number): string | null => {
    if (end === null) return null;
    const to = ownUnit(end.unit, own);
    if (to === end.unit) return end.text;
    const of = dimensionOf(end.unit, undefined);
    return strictly(end.si, to, digitsOf(end.text, end.unit, to, of) + more, up, of);
  };
  for (let more = 0; more <= 3; more++) {
    const [low, high] = [as(min, true, more), as(max, false, more)];
    if (low === null || high === null || siOf(low) <= siOf(high)) return { min: low, max: high };
  }
  return { min: min?.text ?? null, max: max?.text ?? null };
}

/**
 * Every quantity in a text: `18 N·m to 22 N·m`, `± 0.5 mm`, `at most 1400 mm`, `142.55 mm (5 5/8 in)`. An end, and what lies
 * between, round to the strict side. What is no quantity stays.
 */
export function textInOwnUnits(text: string, own: OwnUnits): string {
  if (OWN_KINDS.every(kind => own[kind] === undefined)) return text;
  return text.replace(RANGE, (all: string, ...found: (string | undefined)[]) => {
    const [before = '', first, between = '', second, unit = ''] = found;
    const to = ownUnit(unit, own);
    if (to === unit || findUnit(unit)?.symbol === to) return all;
    const apart = before.startsWith('±') && /°/.test(unit) ? 'temperature-difference' : undefined;
    if (second === undefined) return `${before}${one(`${first} ${unit}`, own, sideOf(before), apart)}`;
    const [low, high] = [one(`${first} ${unit}`, own, 'up'), one(`${second} ${unit}`, own, 'down')];
    return siOf(low) <= siOf(high) ? `${before}${low}${between}${high}` : all;
  });
}

const NUMBER = String.raw`[+−-]?\d+(?:[.,]\d+)?(?: \d+\/\d+)?(?:\/\d+)?`;
const WRITTEN = [...new Set(OWN_KINDS.flatMap(kind => OWN_UNITS[kind].of as readonly string[])), 'L']
  .toSorted((a, b) => b.length - a.length)
  .map(unit => unit.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&'))
  .join('|');
const RANGE = new RegExp(
  String.raw`(?<![\d.,/\p{L}])(± ?|at (?:most|least) |up to |below |above |over )?(${NUMBER})(?:(?:[ \u00a0](?:${WRITTEN}))?( to |\.\.|–)(${NUMBER}))?[ \u00a0](${WRITTEN})(?![\p{L}\d·/²³^])`,
  'gu',
);

type Side = 'up' | 'down' | 'near';
const sideOf = (before: string): Side =>
  before === '' ? 'near' : /^(at least|above|over)/.test(before) ? 'up' : 'down';

function one(text: string, own: OwnUnits, side: Side, dimension?: Dimension): string {
  const read = parseQuantity(text.replace('−', '-'), dimension);
  if (!read.ok) return text;
  const { si, unit } = read.value;
  const of = dimensionOf(unit, read.value.dimension);
  if (side === 'near') return inOwnUnit({ si, unit, text }, own, of);
  const to = ownUnit(unit, own);
  return to === unit ? text : strictly(si, to, digitsOf(text, unit, to, of), side === 'up', of);
}

/** A rise is no temperature: kelvins are always a difference here. What a barometer reads counts from nothing. */
const dimensionOf = (unit: string, dimension: Dimension | undefined): Dimension | undefined =>
  unit === 'K'
    ? 'temperature-difference'
    : BAROMETER.includes(unit)
      ? 'pressure-absolute'
      : (dimension ?? findUnit(unit)?.dimension);
const BAROMETER: readonly string[] = OWN_UNITS.barometer.of;

/** So many digits that the last one is not coarser than the last one written, and never more than the unit carries. */
function digitsOf(text: string, from: string, to: string, dimension: Dimension | undefined): number {
  const [a, b] = [findUnit(from, dimension), findUnit(to, dimension)];
  if (a === undefined || b === undefined) return 2;
  const [, fraction] = /^[+−-]?(?:\d+ )?\d+\/(\d+)/.exec(text) ?? [];
  const [, decimals = ''] = /^[^\d]*\d+[.,](\d+)/.exec(text) ?? [];
  const last = fraction === undefined ? 10 ** -decimals.length : 0.1 / Number(fraction);
  const step = (last * a.mul * b.div) / (a.div * b.mul);
  return Math.max(0, Math.min(b.decimals, Math.ceil(-Math.log10(step) - 1e-9)));
}

/** An inch that lies on a mark of the tape as that mark, everything else with a point. */
function shownIn(si: number, unit: string, digits: number, dimension: Dimension | undefined): string {
  return onMark(si, unit) ?? trimmed(formatQuantity(si, unit, digits, dimension));
}

function strictly(si: number, unit: string, digits: number, up: boolean, dimension: Dimension | undefined): string {
  const mark = onMark(si, unit);
  if (mark !== undefined) return mark;
  const u = findUnit(unit, dimension) as Unit; // one of the table: it was chosen from it
  const scaled = fromSi(si, u) * 10 ** digits;
  const noise = 1e-12 * Math.abs(scaled);
  const value = up ? Math.ceil(scaled - noise) : Math.floor(scaled + noise);
  return trimmed(`${(value / 10 ** digits).toFixed(digits)} ${unit}`);
}

const TAPE = 64;
const LAST_BIT = 1e-12;
function onMark(si: number, unit: string): string | undefined {
  if (unit !== 'in' || si === 0) return undefined;
  const near = inchFraction(si, TAPE);
  return Math.abs(near.errorMetres) <= LAST_BIT * Math.abs(si) ? near.text : undefined;
}

const trimmed = (text: string): string => text.replace(/(\.\d*?)0+(?= )/, '$1').replace(/\.(?= )/, '');

const siOf = (text: string): number => {
  const read = parseQuantity(text);
  return read.ok ? read.value.si : Number.NaN;
};
