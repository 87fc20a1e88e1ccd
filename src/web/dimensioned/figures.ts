/** What a dimension shall be by the kart file, what it may be, and what the book last had for it; what is not known stays so. */
import type { State } from '../../book/index.ts';
import type { Item, Kart, Limit } from '../../kart/index.ts';
import { aimOf } from '../../prep/index.ts';
import { type Dimension, formatQuantity, limitsInOwnUnit, type Measure } from '../../quantity/index.ts';
import { choice, own, ownUnitOf } from '../choice/choice.ts';
import { dimensionedWords } from '../words/dimensioned.ts';

export type LastKnown = {
  readonly text: string;
  readonly how: 'read' | 'set';
  readonly at: string;
  readonly by: string;
};
export type Figure = {
  readonly name: string; // 'gap from bearing to hub, left'
  /** In mm or degrees, as it stands on the drawing; null where the kart file does not say it. */
  readonly nominal: string | null;
  readonly from: 'kart file' | 'worked out' | 'target' | null;
  readonly round: boolean; // a diameter
  /** It follows from the others: in brackets, without a tolerance on the drawing. */
  readonly reference: boolean;
  readonly tolerance: string; // '±1', 'at most 1400', ''
  /** Both in the unit the person chose, with it, for the table; null where that is none other than the drawing's. */
  readonly chosen: { readonly nominal: string; readonly tolerance: string } | null;
  readonly last: LastKnown | null;
  readonly item: string | null; // the reading it is checked by
  readonly size: number; // mm or degrees it is drawn with: nominal, else what is usual
};

export type Wanted = {
  readonly name: string;
  readonly unit?: 'mm' | '°';
  /** Names in the kart file, the first that it gives counts: `caster left`, `caster`. */
  readonly dimensions?: readonly string[];
  /** Worked out from the file [m]; not a number where it cannot be. */
  readonly worked?: number;
  readonly reference?: boolean;
  readonly round?: boolean;
  readonly limit?: string; // of the rule set
  readonly item?: Item | undefined;
  readonly settings?: readonly string[]; // names under which a set-up may have written it
  readonly usual: number; // mm or degrees, to have something to draw: common practice
};

export type Of = { readonly kart: Kart; readonly state: State };

export function figureOf({ kart, state }: Of, wanted: Wanted): Figure {
  const { name, unit = 'mm', item, worked, reference = false, round = false } = wanted;
  const dimension: Dimension = unit === 'mm' ? 'length' : 'angle';
  const filed = wanted.dimensions
    ?.map(key => kart.dimensions[key])
    .find(measure => measure?.dimension === dimension && Number.isFinite(measure.si));
  const aim = item && aimOf(kart, item);
  const known =
    worked !== undefined
      ? ({ si: worked, from: 'worked out' } as const)
      : filed
        ? ({ si: filed.si, from: 'kart file' } as const)
        : aim?.target
          ? ({ si: aim.target.si, from: 'target' } as const)
          : undefined;
  const nominal = known && Number.isFinite(known.si) ? known : undefined;
  const limit = wanted.limit === undefined ? undefined : kart.rules?.limits[wanted.limit];
  const plain: Said = si => valueText(si, unit);
  const [min, max] = aim?.min || aim?.max ? [aim.min?.at, aim.max?.at] : ends(limit);
  return {
    name,
    nominal: nominal ? plain(nominal.si) : null,
    from: nominal?.from ?? null,
    round,
    reference,
    tolerance: toleranceText(nominal?.si, min, max, plain),
    chosen: unit === 'mm' && ownUnitOf('mm') !== 'mm' ? chosenFor(nominal?.si, min, max) : null,
    last: lastOf(state, item, wanted.settings ?? []),
    item: item?.id ?? null,
    size: nominal ? sizeOf(nominal.si, unit) : wanted.usual,
  };
}

/** Ends of a tolerance to their strict side. */
function chosenFor(nominal: number | undefined, min: Measure | undefined, max: Measure | undefined) {
  const limits = limitsInOwnUnit({ min: min ?? null, max: max ?? null }, choice().units);
  const apart = (si: number): string => own(`± ${formatQuantity(si, 'mm')}`).replace(/^± /, '');
  const said: Said = (si, which) => (which === 'min' ? limits.min : which === 'max' ? limits.max : null) ?? apart(si);
  return {
    nominal: nominal === undefined ? '' : own(formatQuantity(nominal, 'mm')),
    tolerance: toleranceText(nominal, min, max, said),
  };
}

const ends = (limit: Limit | undefined): readonly [Measure | undefined, Measure | undefined] => [
  limit?.min,
  limit?.max,
];

/** The newest of what was read at the item and what a set-up calls it. */
function lastOf(state: State, item: Item | undefined, settings: readonly string[]): LastKnown | null {
  const read = item && state.items[item.id]?.readings.at(-1);
  const found = [
    ...(read ? [{ ...read, text: read.reading.text, how: 'read' as const }] : []),
    ...Object.entries(state.settings).flatMap(([name, mark]) =>
      settings.includes(name.toLowerCase()) ? [{ ...mark, text: mark.value, how: 'set' as const }] : [],
    ),
  ].toSorted((a, b) => b.pos - a.pos)[0];
  return found ? { text: found.text, how: found.how, at: found.at, by: found.by } : null;
}

const sizeOf = (si: number, unit: 'mm' | '°'): number => (unit === 'mm' ? si * 1000 : (si * 180) / Math.PI);

/** `142.55`, `18°`: millimetres stand without their unit, which the title block gives. */
const valueText = (si: number, unit: 'mm' | '°'): string => formatQuantity(si, unit).replace(/ mm$/, '');

type Said = (si: number, which?: 'min' | 'max' | 'apart') => string;

function toleranceText(
  nominal: number | undefined,
  min: Measure | undefined,
  max: Measure | undefined,
  of: Said,
): string {
  if (min && max) {
    const [down, up] = nominal === undefined ? [Number.NaN, Number.NaN] : [nominal - min.si, max.si - nominal];
    if (Math.abs(up - down) < 1e-6 && up > 0) return `±${of(up, 'apart')}`;
    return dimensionedWords.range(of(min.si, 'min'), of(max.si, 'max'));
  }
  return min ? dimensionedWords.atLeast(of(min.si, 'min')) : max ? dimensionedWords.atMost(of(max.si, 'max')) : '';
}

/** As it stands on the drawing and in the table: `⌀274`, `(49.95)`; a dash and a word where it is not known. */
export const nominalOf = (figure: Figure): string => marked(figure, figure.nominal);

/** The same for the table, in the unit the person chose. */
export const chosenOf = (figure: Figure): string =>
  marked(figure, figure.nominal === null ? null : (figure.chosen?.nominal ?? figure.nominal));

function marked({ reference, round }: Figure, nominal: string | null): string {
  if (nominal === null) return dimensionedWords.notGiven;
  const value = `${round ? '⌀' : ''}${nominal}`;
  return reference ? `(${value})` : value;
}

/** With what it may be: `142.55 ±1`, `1045, 1010 to 1070`. */
export const shownOn = (figure: Figure): string => {
  const { nominal, reference, tolerance } = figure;
  if (nominal === null || reference || tolerance === '') return nominalOf(figure);
  return `${nominalOf(figure)}${tolerance.startsWith('±') ? ' ' : ', '}${tolerance}`;
};

/** `read 142.5`; empty where the book has nothing. The drawing says by itself in which unit and on which side. */
export const lastOn = ({ last }: Figure): string =>
  last ? dimensionedWords.last[last.how](last.text.replace(/ each side$/, '').replace(/ mm$/, '')) : '';
