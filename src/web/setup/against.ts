/** What the sheet is held against, as it is kept on the device: the baseline, a session by its fact, or the end of a day. */
import type { Moment, Outing } from '../../prep/index.ts';
import { dateOf } from '../words/reads.ts';
import { setupWords } from '../words/setup.tsx';

export const DAY = 'day ';

/** Undefined: the baseline, which it also is when the session was struck or the day is none. */
export function momentOf(chosen: string, sessions: readonly Outing[]): Moment | undefined {
  if (!chosen.startsWith(DAY)) {
    const ran = sessions.find(({ fact }) => fact === chosen);
    return ran && { label: ran.label, at: ran.at };
  }
  const [, year, month, day] = /^(\d{4})-(\d\d)-(\d\d)$/.exec(chosen.slice(DAY.length)) ?? [];
  const end = new Date(Number(year), Number(month) - 1, Number(day) + 1).getTime() - 1; // that day's last moment here
  if (Number.isNaN(end)) return undefined;
  const at = new Date(end).toISOString();
  return { label: setupWords.evening(dateOf(at)), at };
}

/** The day of a moment where this device is, as a date field wants it: 2026-06-20. */
export function dayField(moment: Date): string {
  const two = (n: number): string => String(n).padStart(2, '0');
  return `${moment.getFullYear()}-${two(moment.getMonth() + 1)}-${two(moment.getDate())}`;
}
