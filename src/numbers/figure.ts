/** Figures and words for an answer: rounded here and nowhere before. */
import { formatQuantity, inchFraction } from '../quantity/index.ts';
import type { Figure } from './subject.ts';

/** How a person reads lengths: on which tape, in which unit first. */
export type Tape = { readonly inches: boolean; readonly divisions: number };

/** `146.05 mm (5 3/4 in)`, or the other way round. `under`: the nearest mark below, where one above would pass a limit. */
export function lengthText(si: number, tape: Tape, under = false): string {
  const metric = formatQuantity(under ? floorTo(si, 1e-5) : si, 'mm');
  const { text } = inchFraction(onTape(si, tape, under), tape.divisions);
  return tape.inches ? `${text} (${metric})` : `${metric} (${text})`;
}

/** Where the length comes to lie when it is set on the tape [m]. */
export function onTape(si: number, tape: Tape, under = false): number {
  const nearest = inchFraction(si, tape.divisions).errorMetres;
  return si + (under && nearest > 1e-9 ? nearest - 0.0254 / tape.divisions : nearest);
}

export const length = (si: number, tape: Tape, under = false): Figure => ({
  si,
  unit: tape.inches ? 'in' : 'mm',
  text: lengthText(si, tape, under),
});

/** An uncertainty or a small difference: always in mm, where fractions of an inch say nothing. */
export const small = (si: number): Figure => ({ si, unit: 'mm', text: formatQuantity(si, 'mm', 2) });

/** A chance in per cent; never rounded to certainty. */
export function chance(p: number): Figure {
  const text = Number.isNaN(p)
    ? 'not known'
    : p > 0.9995
      ? 'over 99.9 %'
      : p < 0.0005
        ? 'under 0.1 %'
        : `${(p * 100).toFixed(1)} %`;
  return { si: p, unit: '%', text };
}

export const pure = (si: number, unit = ''): Figure => ({ si, unit, text: formatQuantity(si, unit) });

/** Rounds down to a step, so that a limit is never shown wider than it is. */
export const floorTo = (si: number, step: number): number => Math.floor(si / step + 1e-9) * step;
