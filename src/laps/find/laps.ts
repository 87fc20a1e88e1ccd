/** Laps of a trace: from crossing to crossing of the first gate, with sectors, how sure each is and what stands against it. */
import type { Trace } from '../model.ts';
import { type Crossing, crossingsOf } from './crossing.ts';
import { type Gate, lineOf } from './gate.ts';
import { type Motion, motionOf } from './motion.ts';
import { type Receiver, receiverFor, spreadOf } from './spread.ts';

/** Why a lap had better not be compared as it stands. */
export type Doubt = 'hole at the gate' | 'hole inside' | 'may be more than one lap' | 'stood still';

export type Span = { readonly from: number; readonly to: number }; // s

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
/** Slower than walking for so long is standing still. */
const STILL = 1.5; // m/s
const STILL_FOR = 5; // s
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
  const { time } = motion;
  const holes = holesOf(motion);
  const still = stillIn(motion);
  const pauses = holes.filter(({ from, to }) => to - from > PAUSE);
  const bounds = [time[0] as number, ...pauses.flatMap(({ from, to }) => [from, to]), time.at(-1) as number];
  let number = 0;
  const outings = Array.from({ length: bounds.length / 2 }, (_, n): Outing => {
    const [from, to] = [bounds[2 * n] as number, bounds[2 * n + 1] as number];
    const own = starts.filter(each => each.time >= from && each.time <= to);
    const laps = own.slice(1).map((end, k): Lap => {
      const start = own[k] as Crossing;
      const inside = holes.filter(hole => hole.from < end.time && hole.to > start.time);
      const stood = still.some(span => span.from < end.time && span.to > start.time);
      return {
        ...{ number: ++number, outing: n + 1, time: end.time - start.time, spread: spreadOf(start, end, receiver) },
        ...{ start, end, sectors: sectorsOf(start, end, splits), holes: inside },
        doubts: doubtsOf(start, end, inside, stood, motion.hole),
      };
    });
    const [first, last] = [own[0], own.at(-1)];
    return { from, to, ...(first && last && { out: { from, to: first.time }, in: { from: last.time, to } }), laps };
  });
  const marked = outings.map(outing => ({
    ...outing,
    laps: longOnes(
      outing.laps,
      outings.flatMap(each => each.laps),
    ),
  }));
  const laps = marked.flatMap(outing => outing.laps);
  return { outings: marked, laps, receiver, say: sayOf(laps, starts.length) };
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

function doubtsOf(start: Crossing, end: Crossing, holes: readonly Span[], stood: boolean, hole: number): Doubt[] {
  const atGate = start.over > hole || end.over > hole;
  const within = holes.some(({ from, to }) => from > start.time && to < end.time);
  return [
    ...(atGate ? (['hole at the gate'] as const) : []),
    ...(within ? (['hole inside'] as const) : []),
    ...(stood ? (['stood still'] as const) : []),
  ];
}

/** A lap with a hole in it that is half as long again as the middle one may hide a crossing. */
function longOnes(laps: readonly Lap[], all: readonly Lap[]): readonly Lap[] {
  const usual = middleOf(all.map(({ time }) => time)) ?? Number.NaN;
  return laps.map(lap =>
    lap.holes.length > 0 && lap.time > 1.5 * usual
      ? { ...lap, doubts: [...lap.doubts, 'may be more than one lap'] }
      : lap,
  );
}

function holesOf({ time, hole }: Motion): readonly Span[] {
  const holes: Span[] = [];
  for (let n = 0; n + 1 < time.length; n++) {
    const [from, to] = [time[n] as number, time[n + 1] as number];
    if (to - from > hole) holes.push({ from, to });
  }
  return holes;
}

function stillIn({ time, vx, vy }: Motion): readonly Span[] {
  const spans: Span[] = [];
  let from: number | undefined;
  for (let n = 0; n < time.length; n++) {
    const still = Math.hypot(vx[n] as number, vy[n] as number) < STILL;
    if (still) from ??= time[n] as number;
    const to = time[n] as number;
    if (from !== undefined && (!still || n === time.length - 1)) {
      if (to - from >= STILL_FOR) spans.push({ from, to });
      from = undefined;
    }
  }
  return spans;
}

function sayOf(laps: readonly Lap[], crossings: number): readonly string[] {
  if (crossings === 0) return ['No lap crosses this gate: set it across the track, or take the one that is proposed.'];
  if (laps.length === 0) return ['The gate was crossed once and never again: there is no full lap.'];
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
