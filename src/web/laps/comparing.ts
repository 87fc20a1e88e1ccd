/** Two laps compared beside the page: their logs, as the book keeps them, read, and both laid on one line. */
import type { BookGate } from '../../book/index.ts';
import {
  type ChosenColumns,
  type Compared,
  comparedOn,
  comparedSay,
  curvatureOf,
  type Driven,
  drivenOf,
  type Gate,
  type GripUsed,
  gateBetween,
  gateFromBook,
  gripOf,
  jumpsOf,
  type Lap,
  lapsOf,
  layOn,
  medianLine,
  motionOf,
  type Plane,
  piecesOf,
  type Smooth,
  smooth,
} from '../../laps/index.ts';
import { compareWords } from '../words/laps/compare.ts';
import type { Path } from './outline.ts';
import { wholeLog } from './whole-log.ts';

/** A lap of a session in the book. */
export type Side = {
  readonly file: string; // hash of its log, which the book keeps
  readonly gates: readonly BookGate[];
  readonly columns?: ChosenColumns;
  readonly lap: number; // from 1
};
export type CompareAsk = {
  readonly a: Side;
  readonly b: Side;
  /** Of each, undefined where the book of this device does not have it. */
  readonly logs: readonly [Blob | undefined, Blob | undefined];
};
export type CompareTell =
  | { readonly kind: 'reading'; readonly bytes: number }
  | { readonly kind: 'not compared'; readonly say: string }
  | ({ readonly kind: 'compared' } & ComparedLaps);

export type ComparedLaps = {
  readonly compared: Compared;
  readonly say: readonly string[];
  readonly line: Path;
  /** Of the session of the first lap. */
  readonly driven: Driven;
  readonly grip: GripUsed;
  readonly jumps: number; // fixes that jumped away and came back, both logs; left out
};

type Log = {
  readonly laps: readonly Lap[];
  readonly smooth: Smooth;
  readonly jumps: number;
  readonly plane: Plane;
  readonly receiver: ReturnType<typeof lapsOf>['receiver'];
};

export async function compareLaps(
  { a, b, logs: [logA, logB] }: CompareAsk,
  say: (bytes: number) => void,
): Promise<Exclude<CompareTell, { kind: 'reading' }>> {
  if (logA === undefined || logB === undefined) return { kind: 'not compared', say: NOT_HERE };
  const first = await readLog(a, logA, say);
  if (typeof first === 'string') return { kind: 'not compared', say: first };
  const second = a.file === b.file ? first : await readLog({ ...b, gates: a.gates }, logB, say, first.plane);
  if (typeof second === 'string') return { kind: 'not compared', say: second };
  const [lapA, lapB] = [first.laps[a.lap - 1], second.laps[b.lap - 1]];
  if (lapA === undefined || lapB === undefined) return { kind: 'not compared', say: compareWords.logHoldsNoSuchLap };
  const sound = first.laps.filter(({ doubts }) => doubts.length === 0);
  const usable = sound.length > 0 ? sound : [lapA];
  const line = medianLine(first.smooth, usable);
  const laid = usable.map(lap => layOn(first.smooth, lap, line));
  const pieces = piecesOf(curvatureOf(laid, line));
  const compared = comparedOn(line, [layOn(first.smooth, lapA, line), layOn(second.smooth, lapB, line)], {
    pieces,
    receiver: first.receiver,
  });
  return {
    kind: 'compared',
    compared,
    say: comparedSay(compared),
    line: { x: line.x, y: line.y },
    driven: drivenOf(laid, line, pieces),
    grip: gripOf(first.smooth, usable),
    jumps: first.jumps + (second === first ? 0 : second.jumps),
  };
}

const NOT_HERE = compareWords.logOfThisSession;

async function readLog(
  { gates, columns }: Side,
  log: Blob,
  say: (bytes: number) => void,
  plane?: Plane,
): Promise<Log | string> {
  const read = await wholeLog(log, proposed => ({ ...proposed, columns: { ...proposed.columns, ...columns } }), {
    say: ({ bytes }) => say(bytes),
  });
  if (read.kind === 'not imported') return compareWords.logCouldNotBeRead(read.problem.expected, read.problem.got);
  const { trace } = read;
  const motion = plane ? motionOf(trace, plane) : motionOf(trace);
  const turned = ({ left, right }: Gate): Gate => gateBetween(motion, left, right);
  const [start, ...sectors] = gates.map(gateFromBook).map(turned);
  if (start === undefined) return compareWords.sessionNamesNoGateSo;
  const { laps, receiver } = lapsOf(trace, [start, ...sectors], { motion });
  return {
    laps,
    receiver,
    jumps: jumpsOf(read),
    plane: motion.plane,
    smooth: smooth(motion, { receiver, doppler: trace.speed !== undefined }),
  };
}
