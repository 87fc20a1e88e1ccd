/**
 * A lap as it was driven beside the lap predicted, by the way from the line. Both are laid on one length; between fixes
 * time is the cubic that has time and pace at both, so the gap at the end is the difference of the lap times.
 */
import type { Trail } from './lap.ts';

/** By fixes of one lap, the first on the line and the last on it again: m, m/s, s. */
export type DrivenLap = Trail;
export type Beside = {
  readonly at: Float64Array; // m of the predicted lap
  readonly predicted: Float64Array; // m/s
  readonly driven: Float64Array; // m/s
  readonly gap: Float64Array; // s, driven less predicted, since the line
};

export function besidePredicted(predicted: Trail, driven: DrivenLap): Beside {
  const count = predicted.at.length;
  const [speed, gap] = [new Float64Array(count), new Float64Array(count)];
  const of = (list: Float64Array, n: number): number => list[n] as number;
  const last = driven.at.length - 1;
  const scale = (of(driven.at, last) - of(driven.at, 0)) / of(predicted.at, count - 1);
  let fix = 0;
  for (let n = 0; n < count; n++) {
    const at = of(driven.at, 0) + of(predicted.at, n) * scale;
    while (fix < last - 1 && of(driven.at, fix + 1) <= at) fix++;
    const long = of(driven.at, fix + 1) - of(driven.at, fix);
    const u = Math.min(1, Math.max(0, (at - of(driven.at, fix)) / long));
    const [t0, t1] = [of(driven.time, fix), of(driven.time, fix + 1)];
    const [p0, p1] = [long / of(driven.speed, fix), long / of(driven.speed, fix + 1)]; // s over the whole of it at each pace
    const time = t0 + u * (p0 + u * (3 * (t1 - t0) - 2 * p0 - p1 + u * (2 * (t0 - t1) + p0 + p1)));
    gap[n] = time - of(driven.time, 0) - of(predicted.time, n);
    speed[n] = of(driven.speed, fix) * (1 - u) + of(driven.speed, fix + 1) * u;
  }
  return { at: predicted.at, predicted: predicted.speed, driven: speed, gap };
}
