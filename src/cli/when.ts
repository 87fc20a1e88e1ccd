import { moment } from '../app/index.ts';

const LOCAL = /^(\d{4})-(\d{2})-(\d{2})(?:[ T](\d{2}):(\d{2})(?::(\d{2}))?)?$/;

/**
 * A time as a person types it: with a zone, or without one in the zone of this machine; a day alone is its start.
 * What is no time is handed on as it is, for the app to refuse.
 */
export function typedTime(text: string): string {
  const match = LOCAL.exec(text.trim());
  if (!match) return moment(text.trim()) ?? text;
  const [year, month, day, hour, minute, second] = match.slice(1).map(part => Number(part ?? 0)) as [
    number,
    number,
    number,
    number,
    number,
    number,
  ];
  const date = new Date(year, month - 1, day, hour, minute, second);
  const real =
    date.getMonth() === month - 1 && date.getDate() === day && date.getHours() === hour && minute < 60 && second < 60;
  return real ? date.toISOString() : text;
}
