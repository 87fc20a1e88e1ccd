/**
 * The unit of a speed whose heading names none: the one with which it fits the speed from place to place.
 * The units lie 15 % and more apart, so the median of many ratios tells them; within 6 % of one it is taken.
 */
import type { Trace } from '../../model.ts';
import { factorOf } from './words.ts';

const CANDIDATES = ['m/s', 'km/h', 'mph', 'kn'] as const;
const NEAR = 0.06;
const EARTH = 6_371_000; // m, mean radius
const SLOWEST = 3; // m/s; below it the places wander more than they go

/** The trace with its speed in m/s, or without a speed that no unit explains; and what to say of it. */
export function tellSpeedUnit(trace: Trace): { readonly trace: Trace; readonly note: string } {
  const { speed, ...rest } = trace;
  const ratio = speed === undefined ? Number.NaN : ratioToPlaces(trace, speed);
  const unit = CANDIDATES.find(each => Math.abs(ratio * (factorOf('speed', each) as number) - 1) < NEAR);
  if (speed === undefined || unit === undefined)
    return {
      trace: rest,
      note: 'The speed names no unit and fits the places in none; it is worked out from the places.',
    };
  const factor = factorOf('speed', unit) as number;
  return {
    trace: { ...trace, speed: speed.map(value => value * factor) },
    note: `The speed names no unit; by the places it is in ${unit}.`,
  };
}

/** Middle one of what is written over what the places say, over at least half a second. */
function ratioToPlaces({ time, lat, lon }: Trace, speed: Float64Array): number {
  const ratios: number[] = [];
  for (let from = 0, to = 1; to < time.length; to++) {
    const took = (time[to] as number) - (time[from] as number);
    if (took < 0.5) continue;
    const [lat0, lat1] = [lat[from] as number, lat[to] as number];
    const north = (lat1 - lat0) * EARTH;
    const east = ((lon[to] as number) - (lon[from] as number)) * Math.cos(lat0) * EARTH;
    const gone = Math.hypot(north, east) / took;
    let sum = 0;
    for (let row = from; row <= to; row++) sum += speed[row] as number;
    const written = sum / (to - from + 1);
    if (took < 2 && gone > SLOWEST && Number.isFinite(written)) ratios.push(written / gone);
    from = to;
  }
  ratios.sort((a, b) => a - b);
  return ratios.length < 10 ? Number.NaN : (ratios[ratios.length >> 1] as number);
}
