/** Moments as the book writes them: UTC to the millisecond, so that the order of text is the order of time. */
import { type Problem, refuse } from './problem.ts';

/** How far a clock may run ahead of another before its facts are refused. Five minutes: two phones set by hand. */
export const CLOCK_SLACK_MS = 5 * 60_000;

/**
 * How far ahead of a device's clock the book may be for what it writes to come after it all the same. Two days: a phone whose
 * date is wrong by one, and its zone besides. What is done after something was seen counts after it, whoever's clock is wrong.
 */
export const FOLLOWS_MS = 2 * 86_400_000;

const ISO = /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}(:\d{2}(\.\d{1,9})?)?(Z|[+-]\d{2}:?\d{2})$/;

/** The moment meant by a date and time with its zone, as the book writes it; undefined when it is none. */
export function moment(text: string): string | undefined {
  if (!ISO.test(text)) return undefined;
  const ms = Date.parse(text);
  return Number.isNaN(ms) ? undefined : new Date(ms).toISOString();
}

/** A moment that is not in the future: `now` when left out. */
export function pastMoment(
  text: string | undefined,
  now: Date,
  where = 'at',
): { readonly at: string } | { readonly problem: Problem } {
  if (text === undefined) return { at: now.toISOString() };
  const at = moment(text);
  if (at === undefined) {
    return {
      problem: refuse(
        'not a time',
        where,
        `Expected a date and time with its zone, got "${text}".`,
        'Write it like 2026-11-25T15:45:00Z.',
      ),
    };
  }
  if (Date.parse(at) > now.getTime() + CLOCK_SLACK_MS) {
    return {
      problem: refuse(
        'in the future',
        where,
        `Expected a moment not after ${now.toISOString()}, got ${at}.`,
        'Correct the date, or the clock of this device; what is still to come is an event.',
      ),
    };
  }
  return { at };
}
