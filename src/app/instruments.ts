import type { Item, Kart } from '../kart/index.ts';
import { canRead, dimensionOf } from './reading.ts';

/** The names that can read this item, those its tools name first. */
export function instrumentsFor(kart: Kart, item: Item): readonly string[] {
  const dimension = dimensionOf(item, kart);
  if (dimension === undefined) return [];
  return Object.values(kart.instruments ?? {})
    .filter(one => canRead(one, dimension))
    .map(one => one.name)
    .toSorted((a, b) => Number(item.tools.includes(b)) - Number(item.tools.includes(a)));
}
