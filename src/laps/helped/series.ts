/** Laps of a test: runs in the order they were driven, each with the changes that were on the kart. */

export type TestLap = {
  readonly time: number; // s; not a number where nobody knows it
  /** The way out of the pits: it ages the track, and is not compared. */
  readonly out?: boolean;
  /** Marked by the driver or the log: traffic, a mistake, a hole. Driven, and not compared. */
  readonly marked?: boolean;
};
export type TestRun = {
  readonly on: readonly string[]; // changes against the base; none: the base itself
  readonly laps: readonly TestLap[];
};

/** A lap that is compared. */
export type Counted = {
  readonly time: number; // s
  readonly run: number; // from 0, in the order driven
  readonly place: number; // laps of the run driven before it
  readonly order: number; // laps of the day driven before it
  readonly on: readonly string[];
};

export type CountedLaps = { readonly laps: readonly Counted[]; readonly out: number; readonly marked: number };

export function countedLaps(runs: readonly TestRun[]): CountedLaps {
  const laps: Counted[] = [];
  let [order, out, marked] = [0, 0, 0];
  runs.forEach(({ on, laps: driven }, run) => {
    driven.forEach((lap, place) => {
      if (lap.out) out++;
      else if (lap.marked || !Number.isFinite(lap.time)) marked++;
      else laps.push({ time: lap.time, run, place, order: order + place, on });
    });
    order += driven.length;
  });
  return { laps, out, marked };
}

/** Every change that some run has, in the order they first came. */
export const changesOf = (runs: readonly { readonly on: readonly string[] }[]): readonly string[] => [
  ...new Set(runs.flatMap(({ on }) => on)),
];
