/**
 * A dimensioned drawing as plain data, in millimetres on the kart: x right, y down. Lines are those of ISO 128-2:2020,
 * dimensions as ISO 129-1:2018 asks (both from memory, not verified): extension lines that leave a gap, the value above
 * its line, read from below or from the right, what follows from the others in brackets.
 */
import type { Box, Point, Shape } from '../drawing/geometry.ts';
import type { Figure } from './figures.ts';
import type { DrawingName } from './which.ts';

/**
 * Types of line: continuous wide (01.2) for what is seen, continuous narrow (01.1) for what only measures, dashed narrow
 * (02.1) for what is hidden, long-dashed dotted narrow (04.1) for axes, long-dashed double-dotted narrow (05.1) for what
 * stands beside, and for whatever the kart file gives no size of.
 */
export type LineType = 'wide' | 'narrow' | 'hidden' | 'axis' | 'beside';
export type Stroke = { readonly line: LineType; readonly shape: Shape };

/** A length between two places on the work, drawn on a line of its own at `at`: y where it runs across, x where along. */
export type Length = {
  readonly figure: string;
  readonly way: 'across' | 'along';
  readonly from: Point;
  readonly to: Point;
  readonly at: number;
  /** Where its words stand when there is no room between: beyond the start or beyond the end. */
  readonly words: 'between' | 'before' | 'after';
};
/** What is said of one place, at the end of a leader. */
export type Leader = {
  readonly figure?: string; // none: only its words
  readonly words?: string;
  readonly at: Point;
  readonly knee: Point;
  readonly side: 'left' | 'right'; // of the knee the words stand
};
/** An angle at a place, between two directions in degrees: 0 right, 90 down. */
export type Angle = {
  readonly figure: string;
  readonly apex: Point;
  readonly radius: number;
  readonly from: number;
  readonly to: number;
  readonly label: Point;
  readonly anchor: 'start' | 'end';
};
export type Caption = { readonly at: Point; readonly words: string };

export type Sheet = {
  readonly name: DrawingName;
  readonly title: string;
  readonly view: Box; // without the title block
  /** Every figure by its key, in the order of the table; its letter is that of its place. */
  readonly figures: Readonly<Record<string, Figure>>;
  readonly strokes: readonly Stroke[];
  readonly lengths: readonly Length[];
  readonly leaders: readonly Leader[];
  readonly angles: readonly Angle[];
  readonly captions: readonly Caption[];
};

/** Height of the lettering: 3.6 mm on paper at 1:10, of which 2.5 mm are the capitals. */
export const LETTERING = 36;
/** The sheet is this wide, so that at 1:10 it fits A4 and Letter upright. */
export const WIDTH = 1800;
/** Beyond the work there is room for a tyre's diameter or a gap's words. */
export const sheetWidth = (half: number): number => Math.max(WIDTH, 2 * (half + 200));
/** From one dimension line to the next: a line of words above and one below. */
export const ROW = 96;

/** Letters that cannot be taken for figures. */
const LETTERS = 'abcdefghjkmnpqrstuvwxyz';
export const letterOf = (sheet: Pick<Sheet, 'figures'>, key: string): string =>
  LETTERS[Object.keys(sheet.figures).indexOf(key)] ?? '';

export const box = (x: number, y: number, width: number, height: number, round = 0): Shape => ({
  as: 'box',
  box: { x, y, width, height },
  round,
});
export const circle = (at: Point, radius: number): Shape => ({ as: 'circle', at, radius });
export const line = (...points: readonly Point[]): Shape => ({ as: 'line', points, closed: false });
export const closed = (...points: readonly Point[]): Shape => ({ as: 'line', points, closed: true });
export const point = (x: number, y: number): Point => ({ x, y });
