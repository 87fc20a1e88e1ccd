/** Pieces of the track in words: corners with their number and side, and the straights between, from the curvature. */
import type { Curvature } from './curvature.ts';

export type TrackPiece = {
  readonly name: string; // 'corner 3, left', 'straight to corner 4'
  readonly from: number; // m along the line
  readonly to: number;
  readonly turn: number; // rad over the piece, to the left above 0
};

/** Sharper than this is a corner, 1/m: a radius of 80 m, common practice for a kart track. */
const CORNER = 1 / 80;
/** Turned less over its whole length it is a kink of the straight, rad. */
const LEAST_TURN = (15 * Math.PI) / 180;
/** Shorter, between two corners, it belongs to the one behind it, m. */
const LEAST_STRAIGHT = 15;
/** What is a corner is told by the mean over so many metres to either side: one metre of a log is chance. */
const EVEN = 4;

type Corner = { from: number; to: number; turn: number };

export function piecesOf({ curvature, distance }: Pick<Curvature, 'curvature' | 'distance'>): readonly TrackPiece[] {
  const length = distance[distance.length - 1] as number;
  const corners = cornersOf(curvature, distance);
  const pieces: TrackPiece[] = [];
  let from = 0;
  corners.forEach(({ from: begin, to, turn }, n) => {
    const name = `corner ${n + 1}, ${turn > 0 ? 'left' : 'right'}`;
    const straight = begin - from >= LEAST_STRAIGHT;
    if (straight) pieces.push({ name: `straight to corner ${n + 1}`, from, to: begin, turn: 0 });
    pieces.push({ name, from: straight ? begin : from, to, turn });
    from = to;
  });
  const last = pieces.at(-1);
  if (last === undefined) return [{ name: 'the whole lap', from: 0, to: length, turn: 0 }];
  if (length - from >= LEAST_STRAIGHT)
    pieces.push({ name: `straight after corner ${corners.length}`, from, to: length, turn: 0 });
  else pieces[pieces.length - 1] = { ...last, to: length };
  return pieces;
}

function cornersOf(curvature: Float64Array, distance: Float64Array): readonly Corner[] {
  const found: Corner[] = [];
  let open: Corner | undefined;
  for (let n = 0; n + 1 < curvature.length; n++) {
    const even = meanAround(curvature, n);
    const [from, to] = [distance[n] as number, distance[n + 1] as number];
    const turn = (curvature[n] as number) * (to - from);
    if (Math.abs(even) < CORNER) open = undefined;
    else if (open && Math.sign(open.turn) === Math.sign(even)) {
      open.to = to;
      open.turn += turn;
    } else {
      // The other way round at once is another corner; the same way after a few metres is the same one.
      const before = found.at(-1);
      const same = before && Math.sign(before.turn) === Math.sign(even) && from - before.to < LEAST_STRAIGHT;
      open = same ? before : { from, to, turn: Math.sign(even) * Math.abs(turn) };
      if (same) open.to = to;
      else found.push(open);
    }
  }
  return found.filter(({ turn }) => Math.abs(turn) >= LEAST_TURN);
}

function meanAround(of: Float64Array, n: number): number {
  let [sum, count] = [0, 0];
  for (let k = Math.max(0, n - EVEN); k <= Math.min(of.length - 1, n + EVEN); k++) {
    sum += of[k] as number;
    count++;
  }
  return sum / count;
}
