/** Readings: from the text a person gave to what the book keeps, and what the kart says they should lie between. */
import type { Reading } from '../book/index.ts';
import type { Instrument, Item, Kart } from '../kart/index.ts';
import { parseReadings } from '../numbers/index.ts';
import { type Dimension, findUnit, formatQuantity, type Measure, parseQuantity } from '../quantity/index.ts';
import { type Problem, refuse, sentence } from './problem.ts';

/** A reading as it comes in: its text, which may hold several with `;` between, or its text with what it was read with. What it is in SI is worked out here. */
export type ReadingInput =
  | string
  | { readonly text: string; readonly instrument?: string; readonly resolution?: string | number };

export type Limits = { readonly min?: Measure; readonly max?: Measure };

/**
 * The reading that `input` means for an item, or why it is none.
 * @param item decides the dimension; undefined: any quantity is taken as it is
 * @param where path of the reading, for the problem
 */
export function readReading(
  input: unknown,
  item: Item | undefined,
  kart: Kart,
  where: string,
): { readonly reading: Reading } | { readonly problem: Problem } {
  const given = typeof input === 'object' && input !== null ? input : { text: input };
  const { text, instrument, resolution } = given as { text?: unknown; instrument?: unknown; resolution?: unknown };
  const dimension = item && dimensionOf(item, kart);
  const read = parseReadings(text, dimension);
  if (!read.ok) return { problem: notOne(read, where) };
  const readings = read.value;
  const [first] = readings as readonly [Measure, ...Measure[]]; // never empty
  const fine = typeof resolution === 'string' ? parseQuantity(resolution, first.dimension) : undefined;
  if (fine && !fine.ok) return { problem: notOne(fine, `${where}.resolution`) };
  const named = instrument === undefined ? undefined : instrumentOf(kart, String(instrument));
  const step = fine ? fine.value.si : resolution === undefined ? listedStep(named, first) : Number(resolution);
  return {
    reading: {
      text: String(text).trim(),
      si: readings.reduce((total, one) => total + one.si, 0) / readings.length,
      unit: first.unit,
      ...(instrument === undefined ? {} : { instrument: named?.name ?? String(instrument) }),
      ...(step === undefined ? {} : { resolution: step }),
    },
  };
}

/** By its name as in the list, in any case; undefined when it is not in there. */
export function instrumentOf(kart: Kart, name: string | undefined): Instrument | undefined {
  const wanted = name?.trim().toLowerCase();
  return Object.values(kart.instruments ?? {}).find(one => one.name.toLowerCase() === wanted);
}

/** Can this instrument read that dimension at all? A list's step of temperature is one of degrees and of differences. */
export const canRead = ({ resolution }: Instrument, dimension: Dimension): boolean =>
  resolution.dimension === (dimension === 'temperature-difference' ? 'temperature' : dimension);

/** The finest step of a listed instrument on the scale that was read [SI]. */
function listedStep(instrument: Instrument | undefined, { unit, dimension }: Measure): number | undefined {
  if (instrument === undefined || !canRead(instrument, dimension)) return undefined;
  return unit === 'in' && instrument.inches ? instrument.inches.si : instrument.resolution.si;
}

/** 'between 18 N·m and 22 N·m', 'at most 1400 mm'; undefined when there is no limit. */
export function limitsInWords({ min, max }: Limits): string | undefined {
  if (min && max) return `between ${min.text} and ${max.text}`;
  if (min) return `at least ${min.text}`;
  if (max) return `at most ${max.text}`;
  return undefined;
}

/** Anything but a value that is inside is outside: NaN too. */
export const inside = (si: number, { min, max }: Limits): boolean =>
  Number.isFinite(si) && !(min && !atLeast(si, min.si)) && !(max && !atLeast(max.si, si));

/** The reading said again in the unit the item is asked in: '5 3/4 in (146.05 mm)'. */
export function said(reading: Reading, item: Item): string {
  const unit = item.measure?.unit;
  if (unit === undefined || findUnit(unit)?.symbol === reading.unit) return reading.text;
  const dimension = findUnit(unit)?.dimension;
  return dimension === undefined
    ? reading.text
    : `${reading.text} (${formatQuantity(reading.si, unit, undefined, dimension)})`;
}

// Two texts of one quantity may differ in the last bit once in SI (5 3/4 in and 146.05 mm): no reading is that fine.
const LAST_BIT = 1e-12;
const atLeast = (a: number, b: number): boolean => a >= b - LAST_BIT * Math.max(Math.abs(a), Math.abs(b));

export function dimensionOf(item: Item, kart: Kart): Dimension | undefined {
  const torque = item.joint === undefined ? undefined : kart.joints[item.joint]?.torque;
  const { target, min, max, plausible, unit } = item.measure ?? {};
  const known = target ?? min ?? max ?? plausible?.min ?? torque?.min;
  return known?.dimension ?? (unit === undefined ? undefined : findUnit(unit)?.dimension);
}

const notOne = (
  read: { readonly expected: string; readonly got: string; readonly remedy: string },
  where: string,
): Problem => refuse('reading', where, `Expected ${read.expected}, got ${read.got}.`, sentence(read.remedy));
