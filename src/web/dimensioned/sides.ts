/** Left and right of a drawing: which way is outward, and a figure for each side. */
import type { Item, Kart } from '../../kart/index.ts';
import type { Figure } from './figures.ts';

export const SIDES = ['left', 'right'] as const;
export type Side = (typeof SIDES)[number];
export const outward = (side: Side): number => (side === 'left' ? -1 : 1);

export const eachSide = <Name extends string>(name: Name, make: (side: Side) => Figure) =>
  Object.fromEntries(SIDES.map(side => [`${name} ${side}`, make(side)])) as Record<`${Name} ${Side}`, Figure>;

/** What finds a reading of the kart, anywhere or at one corner. */
export function itemsOf({ items, parts }: Kart) {
  const item = (fits: (item: Item) => boolean): Item | undefined => Object.values(items).find(fits);
  const atCorner = (corner: `${'front' | 'rear'} ${Side}`, fits: (item: Item) => boolean): Item | undefined =>
    item(one => parts[one.part]?.corner === corner && fits(one));
  return { item, atCorner };
}

/** A dimension of the kart file less another [m]; not a number where one is not given. */
export const lessOf =
  ({ dimensions }: Kart) =>
  (a: string, b: string): number =>
    (dimensions[a]?.si ?? Number.NaN) - (dimensions[b]?.si ?? Number.NaN);
