/** Which gate a log is cut at: the one a person gave, the track's own, or one found in the log; and what it gives. */
import type { BookGate } from '../book/index.ts';
import {
  type Gate,
  gateBetween,
  gateFromBook,
  type Laps,
  lapsOf,
  type Motion,
  proposeGate,
  type Trace,
} from '../laps/index.ts';

export type GateFrom = 'given' | 'remembered' | 'proposed';
export type Cut = {
  readonly laps: Laps | undefined; // undefined: no gate was found
  readonly gates: readonly Gate[];
  readonly from: GateFrom | undefined;
  /** Whose gates they are, where they were remembered. */
  readonly track: string | undefined;
  readonly say: readonly string[];
};

type Wanted = {
  readonly given: readonly BookGate[];
  readonly track: string | undefined;
  readonly known: ReadonlyMap<string, readonly BookGate[]>;
};

export function cutLaps(trace: Trace, motion: Motion, { given, track, known }: Wanted): Cut {
  const cutAt = (gates: readonly Gate[]): Laps | undefined => {
    const [start, ...sectors] = gates;
    return start && lapsOf(trace, [start, ...sectors], { motion });
  };
  if (given.length > 0) {
    const gates = given.map(gate => turned(motion, gate));
    return { laps: cutAt(gates), gates, from: 'given', track, say: [] };
  }
  const tracks = track === undefined ? [...known.keys()] : known.has(track) ? [track] : [];
  for (const one of tracks) {
    const book = known.get(one) ?? [];
    if (!book[0] || !isNear(trace, book[0])) continue;
    const gates = book.map(gate => turned(motion, gate));
    const laps = cutAt(gates);
    if (laps && laps.laps.length > 0) return { laps, gates, from: 'remembered', track: one, say: [] };
  }
  const say =
    track !== undefined && tracks.length > 0
      ? [`No lap crosses the gate of ${track} as it was set last; one was looked for in the log.`]
      : [];
  const proposed = proposeGate(motion);
  if (proposed.kind === 'no gate')
    return { laps: undefined, gates: [], from: undefined, track, say: [...say, proposed.say] };
  const gates = [proposed.gate];
  return { laps: cutAt(gates), gates, from: 'proposed', track, say };
}

const turned = (motion: Motion, gate: BookGate): Gate => {
  const { left, right } = gateFromBook(gate);
  return gateBetween(motion, left, right);
};

/** Is the gate within a kilometre of where the kart went? */
function isNear({ lat, lon }: Trace, gate: BookGate): boolean {
  const { left } = gateFromBook(gate);
  const near = 1 / 6371; // rad
  return within(lat, left.lat, near) && within(lon, left.lon, near / Math.max(0.01, Math.cos(left.lat)));
}

function within(values: Float64Array, value: number, more: number): boolean {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const each of values) {
    low = Math.min(low, each);
    high = Math.max(high, each);
  }
  return value >= low - more && value <= high + more;
}
