/**
 * Days and times of day as logs write them.
 * Source: ISO 8601-1:2019 and W3C XML Schema 1.1 part 2, dateTime (memory); the zone of a time without one is not known.
 */
import type { Zero } from '../model.ts';

export const DAY = 86_400; // s

/**
 * Days since 1970-01-01 of a calendar day; undefined when there is no such day. Years are counted from March, so that the
 * leap day is the last of its year; 153 days are five months from then on (memory).
 */
export function dayOf(year: number, month: number, day: number): number | undefined {
  if (!(month >= 1 && month <= 12 && day >= 1 && day <= daysIn(year, month))) return undefined;
  const y = month > 2 ? year : year - 1;
  const ofYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + day - 1;
  return 365 * y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + ofYear - 719_468;
}

function daysIn(year: number, month: number): number {
  if (month !== 2) return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
  return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
}

/** '2025-06-14' of days since 1970-01-01. */
export const dayText = (day: number): string => new Date(day * DAY * 1000).toISOString().slice(0, 10);

export const zeroOf = (day: number | undefined): Zero =>
  day === undefined ? { kind: 'no date' } : { kind: 'day', day: dayText(day) };

export type Moment = { readonly day: number; readonly seconds: number; readonly zoned: boolean };

const DATE_TIME = /^\s*(\d{4})-(\d\d)-(\d\d)[T ](\d\d):(\d\d):(\d\d(?:[.,]\d+)?)\s*(Z|z|([+-])(\d\d):?(\d\d))?\s*$/;

/** `2025-06-14T10:00:00.812+02:00` as UTC day and seconds of it; a leap second is the first of the next day. */
export function momentOf(text: string): Moment | undefined {
  const found = DATE_TIME.exec(text);
  if (!found) return undefined;
  const [, year, month, date, hour, minute, second = '', zone, sign, zoneHours, zoneMinutes] = found;
  const day = dayOf(Number(year), Number(month), Number(date));
  const [h, m, s] = [Number(hour), Number(minute), Number(second.replace(',', '.'))];
  if (day === undefined || h > 24 || m > 59 || s >= 61) return undefined;
  const offset = sign ? (sign === '-' ? -1 : 1) * (Number(zoneHours) * 3600 + Number(zoneMinutes) * 60) : 0;
  // Whole seconds by themselves, so that a zone does not touch the last digits.
  const whole = h * 3600 + m * 60 - offset;
  const over = Math.floor((whole + s) / DAY);
  return { day: day + over, seconds: whole - over * DAY + s, zoned: zone !== undefined };
}

const CLOCK = /^\s*(?:(\d{1,2}):)?(\d{1,2}):(\d\d(?:[.,]\d+)?)\s*$/;

/** Seconds of `10:00:00.812`, or of `1:02.5`, minutes and seconds; NaN when it is neither. */
export function clockOf(text: string): number {
  const found = CLOCK.exec(text);
  if (!found) return Number.NaN;
  const [, hour = '0', minute, second = ''] = found;
  return Number(hour) * 3600 + Number(minute) * 60 + Number(second.replace(',', '.'));
}

/** Days of `2025-06-14`, `2025/06/14`, `14.06.2025`. What could be month or day first is not guessed at. */
export function dateOf(text: string): number | undefined {
  const first = /^\s*(\d{4})[-/.](\d\d?)[-/.](\d\d?)\s*$/.exec(text);
  if (first) return dayOf(Number(first[1]), Number(first[2]), Number(first[3]));
  const last = /^\s*(\d\d?)\.(\d\d?)\.(\d{4})\s*$/.exec(text);
  return last ? dayOf(Number(last[3]), Number(last[2]), Number(last[1])) : undefined;
}

/** Times of day put one after the other over midnight: of the days a time can be on, the one next to the last. */
export class DayClock {
  #last: number | undefined;
  on(seconds: number): number {
    const days = this.#last === undefined ? 0 : Math.round((this.#last - seconds) / DAY);
    const at = seconds + days * DAY;
    if (Number.isFinite(at)) this.#last = at;
    return at;
  }
  /** The last is known better, by a date. */
  set(at: number): void {
    this.#last = at;
  }
}
