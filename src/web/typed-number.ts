/** A number as it is typed, with a point or a comma; half a number is none yet. */
import { pageWords } from './words/page.ts';
export const typedNumber = (text: string): number | undefined =>
  /^\d{1,6}([.,]\d{0,3})?$/.test(text.trim()) ? Number(text.trim().replace(',', '.')) : undefined;

/** What to say of a field in which something else than a number stands; undefined where nothing is wrong, or nothing typed. */
export const notANumber = (text: string, what: string, example: string): string | undefined =>
  text.trim() === '' || typedNumber(text) !== undefined
    ? undefined
    : pageWords.expectedAsNumber(what, text.trim(), example);
