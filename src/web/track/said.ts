/** What was typed at the track, read as numbers: a bare number is in the unit that stands beside its field, the one that was chosen. */
import type { Problem } from '../../app/index.ts';
import { sentence } from '../../app/index.ts';
import { type Dimension, inUnit, parseQuantity } from '../../quantity/index.ts';
import { withUnit } from '../answer.ts';
import { ownUnitOf } from '../choice/choice.ts';
import { trackWords } from '../words/track.tsx';

/** What stands in the fields, by key; a tick is 'yes'. */
export type Typed = Readonly<Record<string, string>>;
/** Facts to write, each as the book takes it, or what is missing or no number, each at its field. */
export type Said<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export type Measured = {
  readonly key: string;
  readonly label: string;
  readonly unit: string;
  readonly dimension: Dimension;
};

/** The number in the unit of its field, typed in the one that was chosen; undefined where nothing was typed, or why it is none. */
export function numberSaid(typed: Typed, { key, label, unit, dimension }: Measured): number | Problem | undefined {
  const text = (typed[key] ?? '').trim();
  if (text === '') return undefined;
  const read = parseQuantity(withUnit(text, ownUnitOf(unit)), dimension);
  if (!read.ok) return problemAt(key, label, `“${text}”`, sentence(read.remedy));
  return Number(inUnit(read.value.si, unit, dimension).toPrecision(12)); // 69.8 °F is 21 °C, not 20.999999999999993
}

/** Whole laps, undefined where nothing was typed. */
export function lapsSaid(typed: Typed): number | Problem | undefined {
  const text = (typed.laps ?? '').trim();
  if (text === '') return undefined;
  const laps = Number(text);
  if (/^\d+$/.test(text) && laps >= 1 && laps <= MOST_LAPS) return laps;
  return problemAt('laps', trackWords.laps, `“${text}”`, trackWords.wholeNumber(MOST_LAPS));
}
const MOST_LAPS = 500; // as the book refuses more

export const problemAt = (key: string, label: string, got: string, remedy: string): Problem => ({
  code: 'wrong shape',
  where: `fact.${key}`,
  message: trackWords.expectedGot(label.charAt(0).toLowerCase(), label.slice(1), got),
  remedy,
});

export const isProblem = (read: number | Problem | undefined): read is Problem => typeof read === 'object';

/** Leaves out what was not said. */
export const said = <T extends Record<string, unknown>>(values: T): { [K in keyof T]?: NonNullable<T[K]> } =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]?: NonNullable<T[K]>;
  };
