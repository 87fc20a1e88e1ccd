/**
 * How evenly laps were driven, the best of them, and the lap of all best pieces together.
 *
 *   spread = 1.4826 median |t - middle|;  ideal = Σ over pieces of the least time that any lap took for it
 *
 * A lap that nobody drove: it takes every piece's luck and every error of place to its favour, so it comes out too fast, the
 * more so the more laps and pieces. Read the spread of the pieces: where it is large there is time to find.
 * Source: definitions; median absolute deviation (memory).
 */
import { middleOf } from '../middle.ts';
import type { LapOnLine, Line } from './line.ts';
import type { TrackPiece } from './pieces.ts';

export type PieceDriven = TrackPiece & {
  readonly best: number; // s
  readonly bestLap: number; // its number
  readonly middle: number; // s
  readonly spread: number; // s
};
export type Driven = {
  readonly best: { readonly lap: number; readonly time: number }; // s
  readonly ideal: number; // s
  readonly middle: number; // s
  readonly spread: number; // s
  readonly laps: number;
  readonly pieces: readonly PieceDriven[];
};

/** Of laps without a doubt, one or more. */
export function drivenOf(laps: readonly LapOnLine[], line: Line, pieces: readonly TrackPiece[]): Driven {
  const [first] = laps;
  if (first === undefined) throw new Error('drivenOf: laps must be one or more, got none');
  const at = (metres: number): number => Math.min(line.x.length - 1, Math.round(metres / line.step));
  const each = pieces.map((piece): PieceDriven => {
    const times = laps.map(({ time }) => (time[at(piece.to)] as number) - (time[at(piece.from)] as number));
    const best = Math.min(...times);
    return { ...piece, best, bestLap: laps[times.indexOf(best)]?.lap.number ?? 0, ...spreadAbout(times) };
  });
  const best = laps.reduce((top, lap) => (lap.lap.time < top.lap.time ? lap : top), first);
  return {
    best: { lap: best.lap.number, time: best.lap.time },
    ideal: each.reduce((sum, piece) => sum + piece.best, 0),
    ...spreadAbout(laps.map(({ lap }) => lap.time)),
    laps: laps.length,
    pieces: each,
  };
}

function spreadAbout(times: readonly number[]): { readonly middle: number; readonly spread: number } {
  const middle = middleOf(times);
  return { middle, spread: 1.4826 * middleOf(times.map(time => Math.abs(time - middle))) };
}
