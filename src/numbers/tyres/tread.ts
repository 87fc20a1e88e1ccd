/**
 * Three temperatures across one tread, read with a probe at once after a hot lap.
 *
 *   crown = middle - (inside + outside) / 2;  lean = inside - outside;  spread = highest - lowest
 *
 * All in kelvin. Crown above 0: the middle works more, pressure high; below 0: the edges do, pressure low. Valid: a trend
 * of one tyre from run to run; a live axle and little camber leave no more. Source: tread-three; limits common practice.
 */
export type Tread = { readonly inside: number; readonly middle: number; readonly outside: number };
export type TreadRead = {
  readonly crown: number;
  readonly lean: number;
  readonly spread: number;
  readonly pressure: 'high' | 'low' | 'as it is' | 'not known';
  readonly wide: boolean; // spread over what is usual; a reading that is no number counts as wide
};
/** Crown that says something, and the largest usual spread (20 °F) [K]. */
export const TREAD = { crown: 3, spread: 11.1 } as const;

export function treadOf({ inside, middle, outside }: Tread): TreadRead {
  const crown = middle - (inside + outside) / 2;
  const spread = Math.max(inside, middle, outside) - Math.min(inside, middle, outside);
  return {
    crown,
    lean: inside - outside,
    spread,
    pressure: !Number.isFinite(crown)
      ? 'not known'
      : crown > TREAD.crown
        ? 'high'
        : crown < -TREAD.crown
          ? 'low'
          : 'as it is',
    wide: !(spread <= TREAD.spread),
  };
}
