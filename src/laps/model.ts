/** What a log says of a drive, whatever its format was. One row a fix, columns as arrays of numbers in SI. */

/** What second 0 of a trace is. */
export type Zero =
  | { readonly kind: 'day'; readonly day: string } // UTC midnight that begins this day, '2025-06-14'
  | { readonly kind: 'no date' }; // where the file itself counts from; of a time of day, midnight

/** What a log may say besides time and place. */
export const COLUMNS = ['speed', 'heading', 'rotation', 'height', 'accuracy'] as const;
export type Column = (typeof COLUMNS)[number];

export type Trace = {
  readonly zero: Zero;
  readonly time: Float64Array; // s after zero, each later than the one before
  readonly lat: Float64Array; // rad, WGS 84, north above 0
  readonly lon: Float64Array; // rad, WGS 84, east above 0
  /**
   * speed over ground [m/s] · heading clockwise from true north [rad] · rotation of the engine [rad/s] ·
   * height above the sea [m] · accuracy, the radius that the receiver says it is right within, 68 of 100 times [m].
   * A column that no row has is not there; a row that lacks it holds NaN.
   */
} & { readonly [column in Column]?: Float64Array };

/** What was expected, what came, where, and what to do. */
export type LogProblem = {
  readonly expected: string;
  readonly got: string;
  readonly remedy: string;
  readonly line?: number; // from 1
};
