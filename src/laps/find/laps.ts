/** Laps of a trace: from crossing to crossing of the first gate, with sectors, how sure each is and what stands against it. */
import type { Trace } from '../model.ts';
import { type Crossing, crossingsOf } from './crossing.ts';
import { type Doubt, doubtsOf, during, holesOf, type Span, stillsOf } from './doubts.ts';
import { type Gate, lineOf } from './gate.ts';
import { type Motion, motionOf } from './motion.ts';
import { type Receiver, receiverFor, spreadOf } from './spread.ts';

export type Lap = {
  readonly number: number; // from 1, over the whole trace
  readonly outing: number; // from 1
  readonly time: number; // s
  /** One standard deviation of the time, s; 95 of 100 lie within 1.96 of it. */
  readonly spread: number;
  readonly start: Crossing;
  readonly end: Crossing;
  /** Between gate and gate, s; undefined on both sides of a gate that was not crossed. */
  readonly sectors: readonly (number | undefined)[];
  readonly holes: readonly Span[];
  readonly doubts: readonly Doubt[];
};

/** From where the engine of the log came on to where it went off, or a pause of more than a minute. */
export type Outing = Span & {
  readonly out?: Span; // up to the first crossing
  readonly in?: Span; // from the last crossing on
  readonly laps: readonly Lap[];
};

export type Laps = {
  readonly outings: readonly Outing[];
  readonly laps: readonly Lap[];
  readonly receiver: Receiver;
  readonly say: readonly string[]; // in sentences, what a person should know
};

/** A longer hole is a pause, and no lap goes over it, s. */
const PAUSE = 60;
/** Of the slow error of the receiver: so far off may a place lie and still have been between the points. */
const MARGIN = 3;

/**
 * @param gates start and finish first, then where sectors end, in the order they are driven
 * @param options.receiver how good the places are; by rate or the log's own word when left out
 * @param options.motion of the same trace, when it is there already
 */
export function lapsOf(
  trace: Trace,
  gates: readonly [Gate, ...Gate[]],
  { receiver: given, motion = motionOf(trace) }: { readonly receiver?: Receiver; readonly motion?: Motion } = {},
): Laps {
  const receiver = given ?? receiverFor(motion.step, middleOf(trace.accuracy));
  const passes = (gate: Gate) => crossingsOf(motion, lineOf(gate, motion.plane), MARGIN * receiver.slow);
  const [starts = [], ...splits] = gates.map(passes);
  const seen = { holes: holesOf(motion), stills: stillsOf(motion), hole: motion.hole };
  const spans = betweenPauses(motion.time, seen.holes).map(span => ({
    span,
    own: starts.filter(at => isIn(at, span)),
  }));
  const pairs = spans.flatMap(({ own }, n) =>
    own.slice(1).map((end, k) => ({ outing: n + 1, start: own[k] as Crossing, end })),
  );
  const usual = middleOf(pairs.map(({ start, end }) => end.time - start.time)) ?? Number.NaN;
  const laps = pairs.map(
    ({ outing, start, end }, n): Lap => ({
      ...{ number: n + 1, outing, time: end.time - start.time, spread: spreadOf(start, end, receiver), start, end },
      sectors: sectorsOf(start, end, splits),
      holes: during(start, end, seen.holes),
      doubts: doubtsOf({ start, end, usual }, seen),
    }),
  );
  const outings = spans.map(({ span, own }, n): Outing => {
    const [first, last] = [own[0], own.at(-1)];
    const ways = first && last && { out: { from: span.from, to: first.time }, in: { from: last.time, to: span.to } };
    return { ...span, ...ways, laps: laps.filter(({ outing }) => outing === n + 1) };
  });
  return { outings, laps, receiver, say: sayOf(laps, starts.length) };
}

const isIn = ({ time }: Crossing, { from, to }: Span): boolean => time >= from && time <= to;

function betweenPauses(time: Float64Array, holes: readonly Span[]): readonly Span[] {
  const pauses = holes.filter(({ from, to }) => to - from > PAUSE);
  const froms = [time[0] as number, ...pauses.map(({ to }) => to)];
  const tos = [...pauses.map(({ from }) => from), time.at(-1) as number];
  return froms.map((from, n) => ({ from, to: tos[n] as number }));
}

/** The first crossing of each gate after the one before it. */
function sectorsOf(start: Crossing, end: Crossing, splits: readonly (readonly Crossing[])[]): Lap['sectors'] {
  let after = start.time;
  const at: (number | undefined)[] = [start.time];
  for (const split of splits) {
    const found = split.find(({ time }) => time > after && time < end.time)?.time;
    at.push(found);
    after = found ?? after;
  }
  at.push(end.time);
  return at.slice(1).map((to, n) => {
    const from = at[n];
    return from === undefined || to === undefined ? undefined : to - from;
  });
}

function sayOf(laps: readonly Lap[], crossings: number): readonly string[] {
  if (crossings === 0) return ['No lap crosses this gate: set it across the track, or take the one that is proposed.'];
  if (laps.length === 0) return ['The gate was never crossed twice in one outing: there is no full lap.'];
  const holed = laps.filter(({ doubts }) => doubts.includes('hole at the gate')).map(({ number }) => number);
  if (holed.length === 0) return [];
  return [
    `The log has a hole over the gate: the times of ${holed.length === 1 ? 'lap' : 'laps'} ${holed.join(', ')} rest on a guess of what lay between.`,
  ];
}

function middleOf(values: readonly number[] | Float64Array | undefined): number | undefined {
  const sorted = Float64Array.from(values ?? [])
    .filter(Number.isFinite)
    .sort();
  return sorted[sorted.length >> 1];
}
