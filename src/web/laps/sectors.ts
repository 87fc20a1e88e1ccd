/** Best and ideal of the laps that count: the quickest driven, and the best of each sector put together. */
import type { Lap } from '../../laps/index.ts';

/** A hole at the gate makes a time a guess, and a missed crossing makes it two laps. */
export const isSound = ({ doubts }: Lap): boolean =>
  !doubts.includes('hole at the gate') && !doubts.includes('may be more than one lap');

export type Bests = {
  readonly lap?: Lap;
  /** The lap that drove each sector quickest. */
  readonly sectors: readonly (Lap | undefined)[];
  /** s; undefined where a sector was never driven whole, or there is but one. */
  readonly ideal?: number;
};

/** @param counts laps that nobody marked as not counting */
export function bestsOf(counts: readonly Lap[]): Bests {
  const sound = counts.filter(isSound);
  const first = sound[0];
  if (first === undefined) return { sectors: [] };
  const lap = least(sound, ({ time }) => time);
  const sectors = first.sectors.map((_, n) => least(sound, ({ sectors: own }) => own[n]));
  const times = sectors.map((best, n) => best?.sectors[n]);
  const whole = times.length > 1 && times.every(time => time !== undefined);
  return {
    ...(lap && { lap }),
    sectors,
    ...(whole && { ideal: times.reduce<number>((sum, time) => sum + (time ?? 0), 0) }),
  };
}

function least(laps: readonly Lap[], of: (lap: Lap) => number | undefined): Lap | undefined {
  let best: Lap | undefined;
  for (const lap of laps) {
    const [time, so] = [of(lap), best && of(best)];
    if (time !== undefined && (so === undefined || time < so)) best = lap;
  }
  return best;
}
