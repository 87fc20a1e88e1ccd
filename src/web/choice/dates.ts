/** A day and a time of day, here and as the person chose. */
import { choiceWords } from '../words/choice.ts';
import { choice } from './choice.ts';

// Written by hand: the first formatter of a browser takes as long as drawing a page.
export const weekdayOf = (instant: string): string => choiceWords.weekdays[new Date(instant).getDay()] ?? '';

export function timeOf(instant: string): string {
  const at = new Date(instant);
  const [hours, minutes] = [at.getHours(), two(at.getMinutes())];
  return choice().clock === '12 h'
    ? `${hours % 12 || 12}:${minutes}\u00a0${hours < 12 ? choiceWords.am : choiceWords.pm}`
    : `${two(hours)}:${minutes}`;
}

/** '26 Nov 2026', or the same in figures. */
export function dateOf(instant: string): string {
  const { date } = choice();
  const [year, month, day] = figures(instant);
  if (date === 'named') return `${Number(day)} ${monthNamed(month)} ${year}`;
  if (date === 'year first') return `${year}-${month}-${day}`;
  return date === 'month first' ? `${month}/${day}/${year}` : `${day}/${month}/${year}`;
}

/** A sentence of the core, which writes days as 2026-11-26, with those as the person chose; the day stays the one it names. */
export const withOwnDays = (text: string): string =>
  text.replace(/(?<![\d-])\d{4}-\d\d-\d\d(?![\dT-])/g, day => dateOf(`${day}T12:00:00`));

/** 'Thu 26 Nov'; without its year where a date in figures can be read without. */
export function dayOf(instant: string): string {
  const { date } = choice();
  const [, month, day] = figures(instant);
  if (date === 'named') return `${weekdayOf(instant)} ${Number(day)} ${monthNamed(month)}`;
  const written =
    date === 'year first' ? dateOf(instant) : date === 'month first' ? `${month}/${day}` : `${day}/${month}`;
  return `${weekdayOf(instant)} ${written}`;
}

/** Year, month and day of this place. */
function figures(instant: string): readonly [string, string, string] {
  const at = new Date(instant);
  return [String(at.getFullYear()), two(at.getMonth() + 1), two(at.getDate())];
}

const two = (n: number): string => String(n).padStart(2, '0');
const monthNamed = (month: string): string => choiceWords.months[Number(month) - 1] ?? month;
