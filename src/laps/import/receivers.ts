/**
 * Two receivers that wrote into one file by turns. One alone goes on from fix to fix; two, each with an error of its own,
 * make a zigzag: a fix lies further from its two neighbours than from the two beyond them, which are its own again.
 */
import type { Trace } from '../model.ts';
import { type Picked, pickedFrom } from './picked.ts';
import type { Tally } from './tally.ts';

const EARTH = 6_371_000; // m
/** Below this a zigzag is noise, and harmless: m. */
const LEAST = 0.3;
/** Noise alone makes both alike; driving makes the far ones lie further off. */
const RATIO = 2;

/** The trace, or of two receivers that take turns the fixes of the first. */
export function oneReceiver({ trace, lines }: Picked, tally: Tally): Picked {
  const [beside, beyond] = [middleOff(trace, 1), middleOff(trace, 2)];
  if (!(beside > LEAST && beside > RATIO * beyond)) return { trace, lines };
  for (let n = 1; n < lines.length; n += 2) tally.add('second receiver', lines[n] as number);
  return pickedFrom({ trace, lines }, n => n % 2 === 0);
}

/** The middle one of how far fixes lie off the straight line between those `step` before and behind them, m. */
function middleOff({ time, lat, lon }: Trace, step: number): number {
  const stride = Math.max(1, Math.floor(time.length / 5000) | 1);
  const off: number[] = [];
  for (let n = step; n + step < time.length; n += stride) {
    const [before, at, behind] = [time[n - step], time[n], time[n + step]] as [number, number, number];
    const share = (at - before) / (behind - before);
    const apart = (of: Float64Array): number => {
      const [a, b, c] = [of[n - step], of[n], of[n + step]] as [number, number, number];
      return b - a - share * (c - a);
    };
    off.push(EARTH * Math.hypot(apart(lat), apart(lon) * Math.cos(lat[n] as number)));
  }
  off.sort((a, b) => a - b);
  return off.length < 20 ? Number.NaN : (off[off.length >> 1] as number);
}
