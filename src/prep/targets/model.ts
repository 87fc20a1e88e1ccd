/** What an item is aimed at, and what a pass must lie between. */
import type { Item, Kart, NumberName } from '../../kart/index.ts';
import { type Dimension, findUnit, formatQuantity, type Measure } from '../../quantity/index.ts';
import type { Shown, Step } from '../model.ts';

/** An end of what a pass must lie between, and why it is there: 'Hollow Lane Kart Club 2026, rule 3'. */
export type Bound = { readonly at: Measure; readonly why: string };

export type Figures = {
  readonly target: Shown | null;
  readonly min?: Bound;
  readonly max?: Bound;
  /** The target is a least, a mass for example: more is as good. */
  readonly orMore?: boolean;
  /** How the figures came about, and which dimension of the kart is missing for them. */
  readonly say: readonly string[];
};

export type Aim = Pick<Step, 'target' | 'tolerance' | 'unit'> & Figures;

/** Works figures out from the dimensions of the kart, over those that the item has by itself. */
export type Refine = (own: Figures, item: Item, kart: Kart) => Figures;
export type Numbers = Readonly<Record<NumberName, Refine>>;

export const shown = ({ si, unit, text }: Measure): Shown => ({ si, unit, text });

/** A figure that was worked out; `text` where more is to be said than value and unit. */
export function worked(si: number, unit: string, dimension: Dimension, text?: string): Measure {
  const known = findUnit(unit, dimension)?.symbol ?? unit;
  return { si, unit: known, dimension, text: text ?? formatQuantity(si, known, undefined, dimension) };
}

/**
 * The dimensions of the kart that a number needs, in SI, or the names of those that the kart file does not give. One that
 * is of another kind of unit, or not above 0, counts as missing.
 */
export function dimensionsFor<Name extends string>(
  kart: Kart,
  needed: Readonly<Record<Name, Dimension>>,
): { readonly of: Readonly<Record<Name, number>> } | { readonly missing: readonly string[] } {
  const names = Object.keys(needed) as Name[];
  const usable = (name: Name): boolean => {
    const measure = kart.dimensions[name];
    return measure?.dimension === needed[name] && measure.si > 0;
  };
  const missing = names.filter(name => !usable(name));
  if (missing.length > 0) return { missing };
  return { of: Object.fromEntries(names.map(name => [name, kart.dimensions[name]?.si])) as Record<Name, number> };
}

/** Said where a number could not be worked out; the item's own figures stay. */
export function without(own: Figures, missing: readonly string[], why?: string): Figures {
  const names = missing.map(name => `"${name}"`).join(', ');
  const stands =
    own.target || own.min || own.max ? 'Until then the figures of the item stand' : 'Until then there is no target';
  const said = why ? `Not computed: ${why}.` : `Not computed: the kart file does not give ${names}.`;
  return { ...own, say: [...own.say, `${said} ${why ? 'Correct' : 'Add'} ${names} under dimensions. ${stands}.`] };
}

/** A dimension of this side of the kart, else the one for both: `caster left`, else `caster`. */
export function dimensionOfSide(kart: Kart, item: Item, name: string): Measure | undefined {
  const side = kart.parts[item.part]?.corner.split(' ')[1];
  return (side === undefined ? undefined : kart.dimensions[`${name} ${side}`]) ?? kart.dimensions[name];
}
