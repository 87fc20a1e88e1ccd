/**
 * Fixes that lie where no kart could be and are back at once: the receiver took an echo for the sky. A fix is foretold from
 * the one before it, by its speed and course, or by the way that led to it:
 *
 *   off = |p - (p₀ + v₀ h)| / (3 m + reach),  reach A h²/2 by speed and course,  A h (h/2 + h₀) by the way
 *
 * p place [m], v₀ speed [m/s], h time since the fix before [s], h₀ time since the middle of the way that led to it [s], A what a kart can do in any
 * direction [m/s²]. Above 1, and above four times the middle one of all, which grows with the noise of the receiver, the fix is on
 * another way; one of five fixes and fewer is a jump. A longer one stays: the receiver had been wrong before.
 * Source: constant acceleration (memory); A, the 3 m and the five are common practice.
 */
import type { Trace } from '../model.ts';
import { type Picked, pickedFrom } from './picked.ts';
import type { Tally } from './tally.ts';

const EARTH = 6_371_000; // m
/** 2.5 times gravity: no kart brakes or turns harder. */
const HARDEST = 25; // m/s²
/** From a fix that nothing led to, in any direction. */
const FASTEST = 70; // m/s
const LEAST = 3; // m
const NOISE = 4;
const LONGEST = 5; // fixes

/** The trace without its jumps, which are counted. */
export function withoutJumps({ trace, lines }: Picked, tally: Tally): Picked {
  const off = offBy(trace);
  const count = trace.time.length;
  const middle = middleOf(count, n => (n === 0 ? 0 : off(n - 1, n, n < 2 ? undefined : [n - 2, n - 1])));
  const jumps = jumpsIn(count, { off, most: Math.max(1, NOISE * middle) });
  if (jumps.size === 0) return { trace, lines };
  for (const n of jumps) tally.add('jumped', lines[n] as number);
  return pickedFrom({ trace, lines }, n => !jumps.has(n));
}

/** Two fixes that tell how fast and which way. */
type Way = readonly [number, number] | undefined;
type Off = (from: number, to: number, way: Way) => number;

/** The way that is believed goes on to each fix, or another does that began with a jump: the one that lies nearer. */
function jumpsIn(count: number, { off, most }: { readonly off: Off; readonly most: number }): ReadonlySet<number> {
  const jumps = new Set<number>();
  let last = 0;
  let way: Way;
  let sound = 1; // fixes of the way that is believed
  let other: number[] = [];
  for (let n = 1; n < count; n++) {
    const [own, end] = [off(last, n, way), other.at(-1)];
    const before = other.at(-2);
    const theirs = end === undefined ? own : off(end, n, before === undefined ? way : [before, end]);
    if (own <= most && own <= theirs) {
      for (const each of other) jumps.add(each);
      [other, way, last, sound] = [[], [last, n], n, sound + 1];
      continue;
    }
    if (theirs > most) {
      for (const each of other) jumps.add(each);
      other = [];
    }
    other.push(n);
    if (other.length <= LONGEST) continue;
    // What lay before the first long way was the jump.
    if (sound <= LONGEST) for (let each = 0; each < (other[0] as number); each++) jumps.add(each);
    [way, last, sound, other] = [[other.at(-2) as number, n], n, sound + other.length, []];
  }
  for (const each of other) jumps.add(each);
  return jumps;
}

/** How far a fix lies from where another foretells it, in what a kart may do. */
function offBy({ time, lat, lon, speed, heading }: Trace): Off {
  const east = (a: number, b: number): number => {
    const turn = (lon[b] as number) - (lon[a] as number);
    return EARTH * Math.cos(lat[a] as number) * (turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI)));
  };
  const north = (a: number, b: number): number => EARTH * ((lat[b] as number) - (lat[a] as number));
  const at = (n: number): number => time[n] as number;
  return (from, to, way) => {
    const h = at(to) - at(from);
    const off = (vx: number, vy: number, reach: number): number =>
      Math.hypot(east(from, to) - h * vx, north(from, to) - h * vy) / (LEAST + reach);
    const [v, course] = [speed?.[from] ?? Number.NaN, heading?.[from] ?? Number.NaN];
    if (Number.isFinite(v) && Number.isFinite(course))
      return off(v * Math.sin(course), v * Math.cos(course), (HARDEST * h * h) / 2);
    if (way === undefined) return off(0, 0, FASTEST * h);
    const [a, b] = way;
    const [took, since] = [at(b) - at(a), at(from) - (at(a) + at(b)) / 2];
    return off(east(a, b) / took, north(a, b) / took, HARDEST * h * (h / 2 + since));
  };
}

function middleOf(count: number, of: (n: number) => number): number {
  const sorted = Float64Array.from({ length: count }, (_, n) => of(n)).sort();
  return sorted[sorted.length >> 1] as number;
}
