/** A log of the book read again for what it says of track and kart: the middle line, its curvature, the best lap on it. */
import type { Fact } from '../book/index.ts';
import {
  choiceFrom,
  curvatureOf,
  type FitLog,
  fitLogOf,
  gateFromBook,
  type Lap,
  type LapSession,
  LogImport,
  lapsOf,
  layOn,
  medianLine,
  motionOf,
  piecesOf,
  smooth,
  type Track,
  type TrackPiece,
  type Trail,
  trackAlong,
} from '../laps/index.ts';

export type LogRead = {
  readonly track: Track;
  readonly best: Trail & { readonly number: number };
  readonly pieces: readonly TrackPiece[]; // corners and straights, along the line
  readonly laps: number; // that the line and its curvature are the middle of
  readonly log: FitLog;
};

/** A lap slower than the best by more went elsewhere or waited for somebody. */
const ALIKE = 1.03;
const MOST_LAPS = 10;

/** What is missing in words, where the log does not bear a track. */
export function readTrackLog(bytes: Uint8Array, session: LapSession, facts: readonly Fact[]): LogRead | string {
  const into = new LogImport({ layout: choiceFrom(facts) });
  into.push(bytes);
  const read = into.finish();
  if (read.kind === 'not imported') return 'The log cannot be read any more.';
  const [start, ...sectors] = session.gates.map(gateFromBook);
  if (start === undefined) return 'No gate is known for this session.';
  const { trace } = read;
  const motion = motionOf(trace);
  const { laps, receiver } = lapsOf(trace, [start, ...sectors], { motion });
  const whole = laps.filter(lap => lap.holes.length === 0).toSorted((a, b) => a.time - b.time);
  const [best] = whole;
  if (best === undefined) return 'No lap of this session is whole in the log.';
  const alike: readonly Lap[] = whole.filter(lap => lap.time <= ALIKE * best.time).slice(0, MOST_LAPS);
  const smoothed = smooth(motion, { receiver, doppler: trace.speed !== undefined && trace.heading !== undefined });
  const line = medianLine(smoothed, alike);
  const on = alike.map(lap => layOn(smoothed, lap, line));
  const along = curvatureOf(on, line);
  const { distance, curvature } = along;
  const { time, speed } = on[0] as (typeof on)[number];
  return {
    track: trackAlong({ at: distance.subarray(0, -1), curvature }, { length: line.length }),
    best: { at: distance, speed, time, number: best.number },
    pieces: piecesOf(along),
    laps: alike.length,
    log: fitLogOf(smoothed, trace.rotation),
  };
}
