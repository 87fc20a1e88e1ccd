/** A track cut into cells no longer than a step, no cell over a joint of two pieces: a jump of curvature stays a jump. */
import type { Track } from './track.ts';

export type Cells = {
  readonly count: number;
  readonly closed: boolean;
  readonly length: number; // m, of the whole
  readonly at: Float64Array; // m, where each starts, and where the last ends
  readonly long: Float64Array; // m
  /** 1/m, never below 0: at its start and at its end. */
  readonly first: Float64Array;
  readonly last: Float64Array;
  readonly corner: Int32Array; // -1 outside
};

/** The start from rest is cut finer, cells growing with the cube: there the speed is no power series of the way. */
const FROM_REST = 24;

export function cellsOf({ pieces, closed }: Track, step: number, fromRest = false): Cells {
  const cut = pieces.map(({ length }) => Math.max(1, Math.ceil(length / step - 1e-9)));
  const count = cut.reduce((sum, n) => sum + n, fromRest ? FROM_REST - 1 : 0);
  const [at, long] = [new Float64Array(count + 1), new Float64Array(count)];
  const [first, last] = [new Float64Array(count), new Float64Array(count)];
  const corner = new Int32Array(count).fill(-1);
  let cell = 0;
  let start = 0;
  const add = (piece: Track['pieces'][number], low: number, high: number): void => {
    const bend = (share: number): number => Math.abs(piece.from + (piece.to - piece.from) * share);
    at[cell] = start + piece.length * low;
    long[cell] = piece.length * (high - low);
    first[cell] = bend(low);
    last[cell] = bend(high);
    corner[cell] = piece.corner ?? -1;
    cell++;
  };
  pieces.forEach((piece, n) => {
    const parts = cut[n] as number;
    const fine = fromRest && n === 0 ? FROM_REST : 1;
    for (let part = 0; part < fine; part++) add(piece, (part / fine) ** 3 / parts, ((part + 1) / fine) ** 3 / parts);
    for (let part = 1; part < parts; part++) add(piece, part / parts, (part + 1) / parts);
    start += piece.length;
  });
  at[count] = start;
  return { count, closed, length: start, at, long, first, last, corner };
}
