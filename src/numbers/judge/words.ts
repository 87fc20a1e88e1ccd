/** What is said of a reading, in the unit it was taken in. */
import { type Dimension, formatQuantity, inchFraction, type Measure } from '../../quantity/index.ts';
import { chance as chanceFigure } from '../figure.ts';
import type { Figure } from '../subject.ts';
import type { Typed } from './readings.ts';

export type State = 'inside' | 'unproven' | 'outside' | 'no limit';

export type Judgement = {
  readonly state: State;
  readonly readings: number;
  readonly mean: Figure;
  readonly spread: Figure | null; // standard deviation; null for a single reading
  readonly uncertainty: Figure; // standard, combined
  readonly freedom: number | null; // degrees of freedom of it; null where none is wanting
  readonly resolution: Figure;
  readonly chance: number | null; // of being inside the limits; null without one
  /** 'inside the limits, chance 99.3 %'. */
  readonly verdict: string;
  /** How far from the target, `by` less than nothing below it; null without a target. */
  readonly target: { readonly by: number; readonly size: string; readonly way: 'over' | 'under' | 'on' } | null;
  readonly say: readonly string[];
  readonly notes: readonly string[];
};

export type Found = {
  readonly n: number;
  readonly mean: number;
  readonly spread?: number;
  readonly u: number;
  readonly freedom: number;
  readonly resolution: number;
  readonly known: boolean; // the instrument
  readonly typed: Typed;
  readonly unit: string;
  readonly dimension: Dimension;
  readonly state: State;
  readonly chance: number | null;
  readonly confidence: number;
  readonly min?: Measure;
  readonly max?: Measure;
  readonly target?: number;
};

export function wordsOf(found: Found): Judgement {
  const { unit, mean, spread, chance, state } = found;
  const at = { si: mean, unit, text: sizeText(mean, found) };
  const target = targetOf(found);
  const verdict = verdictOf(found);
  return {
    state,
    readings: found.n,
    mean: at,
    spread: spread === undefined ? null : fine(spread, found),
    uncertainty: fine(found.u, found),
    freedom: Number.isFinite(found.freedom) ? found.freedom : null,
    resolution: { si: found.resolution, unit, text: differenceText(found.resolution, found) },
    chance,
    verdict,
    target,
    say: [
      ...(spread === undefined
        ? []
        : [`${found.n} readings: mean ${at.text}, standard deviation ${fine(spread, found).text}.`]),
      ...(state === 'no limit' ? [] : [`${capital(verdict)}.`]),
      ...(target === null ? [] : [`${capital(onTarget(target))}.`]),
    ],
    notes: notesOf(found),
  };
}

/** '2.85 mm under the target'; 'on the target, as near as it can be read'. */
export const onTarget = ({ size, way }: NonNullable<Judgement['target']>): string =>
  way === 'on' ? 'on the target, as near as it can be read' : `${size} ${way} the target`;

/** A difference in the unit the person used: marks of the tape where a tape was read, a degree as a difference. */
export function differenceText(
  si: number,
  { typed, unit, dimension }: Pick<Found, 'typed' | 'unit' | 'dimension'>,
): string {
  if (typed.marks !== undefined) return inchFraction(si, typed.marks).text;
  return formatQuantity(si, unit, undefined, differenceOf(dimension));
}

const differenceOf = (dimension: Dimension): Dimension =>
  dimension === 'temperature' ? 'temperature-difference' : dimension;

/** A mean of several marks lies between marks: then as a decimal. */
function sizeText(si: number, { typed, unit, dimension, n }: Found): string {
  return typed.marks !== undefined && n === 1
    ? inchFraction(si, typed.marks).text
    : formatQuantity(si, unit, undefined, dimension);
}

/** Spread and uncertainty: one digit more than the unit carries, where a fraction of an inch says nothing. */
function fine(si: number, { unit, dimension }: Found): Figure {
  const shown = unit === 'in' ? 'mm' : unit;
  const of = differenceOf(dimension);
  const text = formatQuantity(si, shown, undefined, of);
  return { si, unit: shown, text: si > 0 && /^0 ?\D*$/.test(text) ? formatQuantity(si, shown, 5, of) : text };
}

function targetOf(found: Found): Judgement['target'] {
  if (found.target === undefined) return null;
  const by = found.mean - found.target;
  const step = found.typed.marks === undefined ? found.resolution : 0.0254 / found.typed.marks;
  // Half a step is as near as it can be read; the last bits of a double decide nothing.
  const way = Math.abs(by) <= (step / 2) * (1 + 1e-9) ? 'on' : by > 0 ? 'over' : 'under';
  return { by, size: differenceText(Math.abs(by), found), way };
}

function verdictOf(found: Found): string {
  const { state, chance, confidence, min, max, mean } = found;
  const limits = min && max ? 'limits' : 'limit';
  const shown = chanceFigure(chance ?? Number.NaN).text;
  if (state === 'no limit') return 'no limit to hold it against';
  if (state === 'inside') return `inside the ${limits}, chance ${shown}`;
  if (state === 'unproven')
    return `inside the ${limits}, but the reading cannot prove it at ${formatQuantity(confidence, '%')} (chance ${shown})`;
  const edge = max && !(mean <= max.si) ? max : min;
  if (edge === undefined || !Number.isFinite(mean)) return `outside the ${limits}`;
  const over = edge === max;
  // Never said smaller than it is: a difference that rounds to nothing is told in full.
  const by = Math.abs(mean - edge.si);
  const marks = differenceText(by, found);
  const size = /^0\D/.test(marks) ? fine(by, found).text : marks;
  return `outside: ${size} ${over ? 'over the largest' : 'under the least'} allowed, ${edge.text}`;
}

function notesOf({ known, n, freedom, resolution, typed, unit, dimension }: Found): readonly string[] {
  return [
    ...(known
      ? []
      : [
          `Instrument not known: its step is taken as ${differenceText(resolution, { typed, unit, dimension })}, ` +
            `${typed.marks === undefined ? 'the last digit written' : 'the marks of a tape'}, and its scale as exact. Name the instrument to be surer.`,
        ]),
    ...(n === 1
      ? ['One reading shows no spread: read it again, three times in all, to know how well it repeats.']
      : []),
    ...(n > 1 && freedom < 30
      ? [
          `Few readings: the chance allows for a spread that ${n} readings can show by luck (Student's t, ${Math.floor(freedom * (1 + 1e-9))} degrees of freedom). More readings make it surer.`,
        ]
      : []),
  ];
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
