/** A number that was typed behind an option. */
import { fail } from './exit.ts';

export function numberIn(name: string, text: string): number {
  const value = text.trim() === '' ? Number.NaN : Number(text);
  if (value >= 0 && Number.isFinite(value)) return value;
  return fail(
    'wrong shape',
    `--${name}`,
    `Expected ${name} of 0 or more, got "${text}".`,
    'Give a number, such as 30.',
  );
}
