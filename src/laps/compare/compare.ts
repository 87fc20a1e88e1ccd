/**
 * Two laps side by side along one line: where the second gained and lost against the first.
 *
 *   delta(s) = t_B(s) - t_A(s),  delta(length) = lap time B - lap time A;  over a piece: delta(to) - delta(from)
 *
 * t time from the start of the lap [s] at s metres along the line, each lap stretched onto it, so that the pieces add up to the
 * difference of the lap times. The spread of a piece is that of both laps' places at its two ends (`spreadOf`).
 * Source: the difference itself; that of the spread in find/spread.ts.
 */
import { type Crossing, type Receiver, spreadOf } from '../find/index.ts';
import type { LapOnLine, Line } from './line.ts';
import type { TrackPiece } from './pieces.ts';

export type PieceCompared = TrackPiece & {
  readonly difference: number; // s, B less A: below 0 B gained
  /** One standard deviation from the receiver, s. */
  readonly spread: number;
  /** Lowest speed of a corner, highest of a straight, m/s. */
  readonly speeds: readonly [a: number, b: number];
};

export type Compared = {
  readonly difference: number; // s, lap B less lap A
  readonly distance: Float64Array; // m
  readonly delta: Float64Array; // s
  readonly speeds: readonly [a: Float64Array, b: Float64Array]; // m/s
  readonly pieces: readonly PieceCompared[];
  /** s, B less A, from gate to gate; undefined where one of them missed a gate. */
  readonly sectors: readonly (number | undefined)[];
};

export function comparedOn(
  line: Line,
  [a, b]: readonly [LapOnLine, LapOnLine],
  { pieces, receiver }: { readonly pieces: readonly TrackPiece[]; readonly receiver: Receiver },
): Compared {
  const points = line.x.length;
  const distance = Float64Array.from({ length: points }, (_, n) => (n === points - 1 ? line.length : n * line.step));
  const delta = Float64Array.from(b.time, (time, n) => time - (a.time[n] as number));
  const at = (metres: number): number => Math.min(points - 1, Math.round(metres / line.step));
  const compared = pieces.map((piece): PieceCompared => {
    const [from, to] = [at(piece.from), at(piece.to)];
    const spread = Math.hypot(...[a, b].map(lap => spreadOf(passing(lap, from), passing(lap, to), receiver)));
    return {
      ...piece,
      difference: (delta[to] as number) - (delta[from] as number),
      spread,
      speeds: [edgeOf(a.speed, from, to, piece), edgeOf(b.speed, from, to, piece)],
    };
  });
  const sectors = a.lap.sectors.map((own, n) => {
    const other = b.lap.sectors[n];
    return own === undefined || other === undefined ? undefined : other - own;
  });
  return {
    difference: b.lap.time - a.lap.time,
    distance,
    delta,
    speeds: [a.speed, b.speed],
    pieces: compared,
    sectors,
  };
}

/** As if there were a gate: the fixes around it lie as close as those of the lap's start. */
const passing = ({ lap, time, speed }: LapOnLine, n: number): Crossing => ({
  time: lap.start.time + (time[n] as number),
  fix: 0,
  speed: speed[n] as number,
  left: 0,
  over: lap.start.over,
});

function edgeOf(speed: Float64Array, from: number, to: number, { turn }: TrackPiece): number {
  const inside = speed.subarray(from, to + 1);
  return inside.reduce((edge, each) => (turn === 0 ? Math.max(edge, each) : Math.min(edge, each)), inside[0] as number);
}

/** In sentences, the largest first, and only what the receiver can tell: 19 of 20. */
export function comparedSay({ pieces, difference }: Compared): readonly string[] {
  const of = (value: number): string => `${Math.abs(value).toFixed(2)} s`;
  const clear = pieces
    .filter(piece => Math.abs(piece.difference) > 1.96 * piece.spread && Math.abs(piece.difference) >= 0.01)
    .toSorted((p, q) => Math.abs(q.difference) - Math.abs(p.difference));
  const whole = `The second lap was ${of(difference)} ${difference < 0 ? 'faster' : 'slower'} than the first.`;
  if (clear.length === 0) return [whole, 'No piece of the track differs by more than the receiver may be off.'];
  return [
    whole,
    ...clear.map(piece => {
      const [a, b] = piece.speeds.map(speed => (speed * 3.6).toFixed(0));
      const what = piece.turn === 0 ? 'fastest' : 'slowest';
      return `${piece.difference < 0 ? 'Gained' : 'Lost'} ${of(piece.difference)} ± ${(1.96 * piece.spread).toFixed(2)} s, ${piece.name}: ${what} ${b} against ${a} km/h.`;
    }),
  ];
}
