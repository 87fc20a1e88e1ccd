/**
 * Which sprockets of the box bring a wanted engine speed at a wanted road speed, nearest first.
 *
 * Smallest |n - n wanted| over all pairs, n by ratio.ts. Pairs of the same ratio (16/24, 18/27) are a tie and share a rank.
 * Source: arithmetic (checks/rows/gearing.json).
 */
import { rotationAt, type Sprockets } from './ratio.ts';

export type Wanted = {
  readonly rotation: number; // wanted engine speed [rad/s]
  readonly speed: number; // at this road speed [m/s]
  readonly inside: number; // primary × gear used there [1]; 1 in direct drive
  readonly circumference: number; // [m]
};
export type Pair = Sprockets & {
  readonly ratio: number; // rear over front [1]
  readonly rotation: number; // engine speed at the wanted road speed [rad/s]
  readonly off: number; // over the wanted one; below 0 under it [rad/s]
  readonly rank: number; // 1 is nearest; ties share it
};

/** Rear over front that would bring exactly what is wanted [1]. */
export const wantedRatio = ({ rotation, speed, inside, circumference }: Wanted): number =>
  rotation / rotationAt({ speed, ratio: inside, circumference });

/** Every pair, nearest first; of a tie the one with more teeth first, since it runs smoother. Nothing owned: nothing. */
export function pairsFor(
  wanted: Wanted,
  owned: { readonly front: readonly number[]; readonly rear: readonly number[] },
): readonly Pair[] {
  const each = (teeth: readonly number[]): readonly number[] => [...new Set(teeth)];
  const pairs = each(owned.front).flatMap(front =>
    each(owned.rear).map(rear => {
      const ratio = rear / front;
      const rotation = rotationAt({ ...wanted, ratio: wanted.inside * ratio });
      return { front, rear, ratio, rotation, off: rotation - wanted.rotation };
    }),
  );
  const even = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * wanted.rotation;
  const far = ({ off }: { readonly off: number }): number => Math.abs(off);
  const sorted = pairs.toSorted((a, b) => (even(far(a), far(b)) ? b.front - a.front : far(a) - far(b)));
  return sorted.map(pair => ({
    ...pair,
    rank: 1 + sorted.filter(o => far(o) < far(pair) && !even(far(o), far(pair))).length,
  }));
}

/** What one tooth does to the overall ratio [1, a share]: one less in front, one more behind. */
export const oneTooth = ({ front, rear }: Sprockets) => ({
  lessFront: front / (front - 1) - 1,
  moreRear: (rear + 1) / rear - 1,
});
