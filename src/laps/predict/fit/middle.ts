/** The middle of what stretches say, with the spread of that middle; those far below what others reach were not driven hard. */
import { middleOf } from '../../middle.ts';

/** Below this share of the upper quarter somebody was not trying: common practice. */
const TRYING = 0.85;

export type Middle = { readonly value: number; readonly spread: number; readonly count: number };

/** spread = 1.2533 · 1.4826 · median |x - middle| / √n, of a median of normal values. */
export function middle(values: readonly number[]): Middle {
  const value = middleOf(values);
  const apart = middleOf(values.map(each => Math.abs(each - value)));
  return { value, spread: (1.2533 * 1.4826 * apart) / Math.sqrt(values.length), count: values.length };
}

export function middleOfTrying(values: readonly number[]): Middle {
  const sorted = values.toSorted((a, b) => a - b);
  const upper = sorted[Math.floor(sorted.length * 0.75)] ?? Number.NaN;
  return middle(sorted.filter(each => each >= TRYING * upper));
}
