/** A day and a time of day, here and as the person chose. */
import { choice } from './choice.ts';

const NAMED = new Intl.DateTimeFormat('en-GB', { weekday: 'short', day: 'numeric', month: 'short' });
const WEEKDAY = new Intl.DateTimeFormat('en-GB', { weekday: 'short' });
const FULL = new Intl.DateTimeFormat('en-GB', { day: 'numeric', month: 'short', year: 'numeric' });
const HOURS_24 = new Intl.DateTimeFormat('en-GB', { hour: '2-digit', minute: '2-digit' });
const HOURS_12 = new Intl.DateTimeFormat('en-GB', { hour: 'numeric', minute: '2-digit', hour12: true });

export const weekdayOf = (instant: string): string => WEEKDAY.format(new Date(instant));
export const timeOf = (instant: string): string =>
  (choice().clock === '12 h' ? HOURS_12 : HOURS_24).format(new Date(instant));

/** '26 Nov 2026', or the same in figures. */
export function dateOf(instant: string): string {
  const { date } = choice();
  if (date === 'named') return FULL.format(new Date(instant));
  const [year, month, day] = figures(instant);
  if (date === 'year first') return `${year}-${month}-${day}`;
  return date === 'month first' ? `${month}/${day}/${year}` : `${day}/${month}/${year}`;
}

/** A sentence of the core, which writes days as 2026-11-26, with those as the person chose; the day stays the one it names. */
export const withOwnDays = (text: string): string =>
  text.replace(/(?<![\d-])\d{4}-\d\d-\d\d(?![\dT-])/g, day => dateOf(`${day}T12:00:00`));

/** 'Thu 26 Nov'; without its year where a date in figures can be read without. */
export function dayOf(instant: string): string {
  const { date } = choice();
  if (date === 'named') return NAMED.format(new Date(instant));
  const [, month, day] = figures(instant);
  const written =
    date === 'year first' ? dateOf(instant) : date === 'month first' ? `${month}/${day}` : `${day}/${month}`;
  return `${weekdayOf(instant)} ${written}`;
}

/** Year, month and day of this place. */
function figures(instant: string): readonly [string, string, string] {
  const at = new Date(instant);
  const two = (n: number): string => String(n).padStart(2, '0');
  return [String(at.getFullYear()), two(at.getMonth() + 1), two(at.getDate())];
}
