/** What was read of an item before, so that the next reading is a comparison and not a habit. */
import { LAST_READ } from '../../app/index.ts';
import type { State } from '../../book/index.ts';
import type { Item } from '../../kart/index.ts';
import { type Dimension, findUnit, formatQuantity } from '../../quantity/index.ts';
import { aimsWords } from '../words/aims.ts';
import { keypadWords } from '../words/keypad.ts';
import { dateOf } from '../words/reads.ts';

export type Past = {
  readonly fact: string;
  readonly at: string;
  readonly by: string;
  readonly si: number;
  readonly text: string; // in the unit that is asked for
  readonly typed?: string; // as it was taken, where that is another
};

/** The last of them, oldest first, of the very part that is on: what another one read in its place says nothing of this. */
export function pastOf(item: Item, state: State, unit: string, dimension: Dimension | undefined): readonly Past[] {
  const since = state.parts[item.part]?.fresh?.pos ?? -1;
  return (state.items[item.id]?.readings ?? [])
    .filter(one => one.pos > since)
    .slice(-LAST_READ)
    .map(({ fact, at, by, reading }) => ({
      fact,
      at,
      by,
      si: reading.si,
      text: formatQuantity(reading.si, unit, undefined, dimension),
      ...(findUnit(unit, dimension)?.symbol === reading.unit ? {} : { typed: reading.text }),
    }));
}

/** With what was typed, where it was read in another unit. */
export const wholeOf = ({ text, typed }: Past): string => (typed === undefined ? text : aimsWords.typedAs(text, typed));

/** 'Last read 142.6 mm on 12 Oct 2026. In 3 readings +0.4 mm.' */
export function pastSaid(past: readonly Past[], unit: string, dimension: Dimension | undefined): string {
  const [first, last] = [past[0], past.at(-1)];
  if (first === undefined || last === undefined) return keypadWords.notReadBefore;
  const said = [wholeOf(last), dateOf(last.at)] as const;
  if (past.length === 1) return keypadWords.lastRead(...said);
  return keypadWords.lastReadOf(...said, past.length, moved(last.si - first.si, unit, dimension));
}

/** A step of temperature is a difference, and so is written without the zero of its scale. */
function moved(by: number, unit: string, dimension: Dimension | undefined): string {
  const size = formatQuantity(Math.abs(by), unit, undefined, differenceOf(dimension));
  if (Number.parseFloat(size) === 0) return keypadWords.noChange;
  return `${by > 0 ? '+' : '−'}${size}`;
}

const differenceOf = (dimension: Dimension | undefined): Dimension | undefined =>
  dimension === 'temperature' ? 'temperature-difference' : dimension;
