/**
 * What a lap time is made of, a column each.
 *
 *   time = base + Σ effect · on + drift · (order - middle) + run + slow start · e^(1 - place) + track gain · e^(-order / 8) + chance
 *
 * Free: base, effects [s], drift [s a lap]. Held near nothing by a spread given beforehand: the offset of each run; how much
 * slower the first lap after the way out is, falling to a third with each lap (0.15 s); what the track gains besides the
 * straight drift, most of it in the first laps of the day (0.1 s). Both spreads are common practice: enough that a lap or two
 * out of the pits, or a green track, is not taken for the change. Source: laps at a track share warm-up, pressure and traffic
 * within a run, so the run is what was changed, not the lap (mixed model; Luke 2017, abstract read).
 */
import type { Columns } from './mixed.ts';
import type { Counted } from './series.ts';

export type Placed = Pick<Counted, 'run' | 'place' | 'order' | 'on'>;
/** s, one standard deviation. */
const SLOW_START = 0.15;
const TRACK_GAIN = 0.1;
const GAIN_LAPS = 8;

/** Free: base, one each of `changes`, drift. Held: slow start, track gain, then each run. */
export function columnsOf(laps: readonly Placed[], changes: readonly string[]): Columns {
  const middle = laps.reduce((sum, { order }) => sum + order / laps.length, 0);
  const column = (of: (lap: Placed) => number): readonly number[] => laps.map(of);
  const flag = (is: boolean): number => (is ? 1 : 0);
  return {
    free: [
      column(() => 1),
      ...changes.map(change => column(({ on }) => flag(on.includes(change)))),
      column(({ order }) => order - middle),
    ],
    held: [
      column(({ place }) => Math.exp(1 - Math.max(place, 1))),
      column(({ order }) => Math.exp(-order / GAIN_LAPS)),
      ...[...new Set(laps.map(({ run }) => run))].map(run => column(lap => flag(lap.run === run))),
    ],
  };
}

/** Standard deviations, s. */
export type Spreads = {
  readonly lap: number;
  readonly run: number;
  readonly slowStart?: number;
  readonly trackGain?: number;
};

/** The spread of each held column over that of a lap. */
export const ratiosOf = (
  { held }: Columns,
  { lap, run, slowStart = SLOW_START, trackGain = TRACK_GAIN }: Spreads,
): readonly number[] => held.map((_, n) => (n === 0 ? slowStart : n === 1 ? trackGain : run) / lap);
