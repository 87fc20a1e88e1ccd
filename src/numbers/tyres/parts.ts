/** A part of the answer: its figures, what to do, what to doubt. Rounded here and nowhere before. */
import { formatQuantity } from '../../quantity/index.ts';
import type { Figure } from '../subject.ts';

export type Part = {
  readonly figures: Readonly<Record<string, Figure>>;
  readonly say: readonly string[];
  readonly notes: readonly string[];
};
export const NO_PART: Part = { figures: {}, say: [], notes: [] };

export const joined = (parts: readonly Part[]): Part => ({
  figures: Object.assign({}, ...parts.map(part => part.figures)),
  say: parts.flatMap(part => part.say),
  notes: [...new Set(parts.flatMap(part => part.notes))],
});

/** As finely as a gauge is read: a hundredth of a bar, a tenth of a psi. */
const PRESSURE_DIGITS: Readonly<Record<string, number>> = { bar: 2, psi: 1, kPa: 0, mbar: 0, hPa: 0, MPa: 3, Pa: 0 };
export const pressure = (si: number, unit: string): Figure => ({
  si,
  unit,
  text: formatQuantity(si, unit, PRESSURE_DIGITS[unit] ?? 2),
});
export const warmth = (si: number, unit: string): Figure => ({ si, unit, text: formatQuantity(si, unit, 0) });
/** A difference of temperatures, said in the degrees that a person reads. */
export const kelvins = (si: number): Figure => ({
  si,
  unit: 'K',
  text: formatQuantity(si, '°C', 1, 'temperature-difference'),
});
export const millimetres = (si: number): Figure => ({ si, unit: 'mm', text: formatQuantity(si, 'mm', 1) });
export const many = (si: number): Figure => ({ si, unit: '', text: formatQuantity(si, '', 0) });
export const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
