/**
 * When a gate was crossed: between two fixes the way is the cubic that has place and speed of both.
 *
 *   D(u) = (2u³ - 3u² + 1) D₀ + (u³ - 2u² + u) h V₀ + (3u² - 2u³) D₁ + (u³ - u²) h V₁,  D(u) = 0,  t = t₀ + u h
 *
 * D distance before (-) or past (+) the gate [m], V speed towards it [m/s], h time between the fixes [s], u share of it [1].
 * Source: cubic Hermite interpolation (memory); a bracketed root, found by halving.
 */
import type { GateLine } from './gate.ts';
import type { Motion } from './motion.ts';
import { betweenFixes } from './spread.ts';

export type Crossing = {
  readonly time: number; // s
  readonly fix: number; // index of the last fix before it
  readonly speed: number; // m/s, straight through the gate
  readonly left: number; // m to the left of the gate's middle
  readonly over: number; // s between the fixes before and behind
};

/** Further off than this from straight ahead is another piece of track: cos 60°. */
const AHEAD = 0.5;
/** The kart must have been so far away, m, before a crossing counts again: standing on the line is none. */
const AWAY = 25;
/** A kart goes round a corner and back in so many seconds; what it did in a longer hole nobody knows. */
const LONGEST = 10;
const WIDEST = 12; // m

/** @param margin m that a place may be wrong by, added to the gate on either side */
export function crossingsOf(motion: Motion, gate: GateLine, margin: number): readonly Crossing[] {
  const { time, x, y } = motion;
  const found: Crossing[] = [];
  let away = true;
  let before = distance(gate, x[0] as number, y[0] as number);
  for (let fix = 0; fix + 1 < time.length; fix++) {
    const behind = distance(gate, x[fix + 1] as number, y[fix + 1] as number);
    const crossing = before < 0 && behind >= 0 && away ? crossingAt(motion, gate, fix) : undefined;
    if (crossing && Math.abs(crossing.left) <= gate.half + margin + astray(crossing.over)) {
      found.push(crossing);
      away = false;
    }
    const [dx, dy] = [(x[fix + 1] as number) - gate.middle.x, (y[fix + 1] as number) - gate.middle.y];
    away ||= dx * dx + dy * dy > (AWAY + gate.half) ** 2;
    before = behind;
  }
  return found;
}

/** How far the cubic may have gone astray sideways, m: twice its spread, and in a long hole the width of a track more. */
const astray = (over: number): number => Math.min(2 * betweenFixes(over), WIDEST);

const distance = ({ middle, ahead }: GateLine, x: number, y: number): number =>
  (x - middle.x) * ahead.x + (y - middle.y) * ahead.y;

/** Nothing when the gate was not driven through ahead, or nobody knows. */
function crossingAt({ time, x, y, vx, vy }: Motion, gate: GateLine, fix: number): Crossing | undefined {
  const [from, to] = [time[fix] as number, time[fix + 1] as number];
  const h = to - from;
  if (h > LONGEST) return undefined;
  const { ahead, middle } = gate;
  const side = { x: -ahead.y, y: ahead.x };
  const along = (way: typeof side): Cubic => {
    const at = (n: number): number => ((x[n] as number) - middle.x) * way.x + ((y[n] as number) - middle.y) * way.y;
    const speed = (n: number): number => (vx[n] as number) * way.x + (vy[n] as number) * way.y;
    return { at0: at(fix), at1: at(fix + 1), rise0: h * speed(fix), rise1: h * speed(fix + 1) };
  };
  const [through, sideways] = [along(ahead), along(side)];
  const u = rootOf(through);
  const [speed, drift] = [riseAt(through, u) / h, riseAt(sideways, u) / h];
  if (!(speed > 0 && speed >= AHEAD * Math.hypot(speed, drift))) return undefined;
  return { time: from + u * h, fix, speed, left: valueAt(sideways, u), over: h };
}

type Cubic = { readonly at0: number; readonly at1: number; readonly rise0: number; readonly rise1: number };

const valueAt = ({ at0, at1, rise0, rise1 }: Cubic, u: number): number =>
  at0 + u * (rise0 + u * (3 * (at1 - at0) - 2 * rise0 - rise1 + u * (2 * (at0 - at1) + rise0 + rise1)));
const riseAt = ({ at0, at1, rise0, rise1 }: Cubic, u: number): number =>
  rise0 + u * (2 * (3 * (at1 - at0) - 2 * rise0 - rise1) + 3 * u * (2 * (at0 - at1) + rise0 + rise1));

/** at0 < 0 <= at1: there is one, and halving 60 times leaves nothing of a second. */
function rootOf(cubic: Cubic): number {
  let [low, high] = [0, 1];
  for (let turn = 0; turn < 60; turn++) {
    const middle = (low + high) / 2;
    if (valueAt(cubic, middle) < 0) low = middle;
    else high = middle;
  }
  return high;
}
