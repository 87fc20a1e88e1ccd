/** The units a person wants to read here: `--units`, else KARTWRIGHT_UNITS. One run is for one person, so the choice stands here once. */
import { figureInOwnUnits, type Measure, type OwnUnits, readOwnUnits, textInOwnUnits } from '../quantity/index.ts';
import { fail } from './exit.ts';

let chosen: OwnUnits = {};

/** Throws `Refusal` for a unit that cannot be chosen. */
export function chooseUnits(option: string | undefined, kept: string | undefined): void {
  const read = readOwnUnits(option ?? kept ?? '');
  if (!read.ok)
    fail(
      'wrong shape',
      option === undefined ? 'KARTWRIGHT_UNITS' : '--units',
      `Expected units out of ${read.expected}; got ${read.got}.`,
      'Name one of a kind, commas between: --units "in, psi, °F".',
    );
  else chosen = read.units;
}

/** A text with its sizes in the units that were chosen; ends of a tolerance to their strict side. */
export const own = (text: string): string => textInOwnUnits(text, chosen);
export const ownFigure = (figure: Pick<Measure, 'si' | 'unit' | 'text'>): string => figureInOwnUnits(figure, chosen);
