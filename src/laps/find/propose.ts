/** A gate found in the trace itself: where the kart comes by on most laps, the same way round, and fast. */
import { type Crossing, crossingsOf } from './crossing.ts';
import { type Gate, type GateLine, gateAcross, lineOf, turnedRound } from './gate.ts';
import type { Motion } from './motion.ts';
import type { Place } from './plane.ts';

export type ProposedGate =
  | { readonly kind: 'gate'; readonly gate: Gate; readonly passes: number; readonly speed: number } // m/s
  | { readonly kind: 'no gate'; readonly say: string };

/** So many places along the way are tried. */
const TRIES = 200;
/** m to either side: a kart track is 8 m to 12 m wide (common practice). */
const WIDE = 8;
/** Slower is no place to time at, m/s. */
const SLOWEST = 4;
/** Of the most passes that any place has: a lap or two may have gone another way. */
const MOST = 0.9;
/** As many fixes a second as finding the way needs. */
const COARSE = 0.2; // s

/** Each time comes surer where the kart is fast, for the same error of place is then less time. */
export function proposeGate(motion: Motion): ProposedGate {
  const coarse = thinned(motion);
  const every = Math.max(1, Math.floor(coarse.time.length / TRIES));
  const tried: { readonly line: GateLine; readonly passes: readonly Crossing[] }[] = [];
  for (let fix = 0; fix < coarse.time.length; fix += every) {
    const line = lineAt(coarse, fix);
    if (line) tried.push({ line, passes: crossingsOf(coarse, line, 0) });
  }
  const most = Math.max(0, ...tried.map(({ passes }) => passes.length));
  if (most < 2) return { kind: 'no gate', say: 'The way never comes by the same place twice, so it holds no lap.' };
  const often = tried.filter(({ passes }) => passes.length >= Math.max(2, MOST * most));
  const speedOf = (each: (typeof tried)[number]): number => middleOf(each.passes.map(({ speed }) => speed));
  const best = often.reduce((top, each) => (speedOf(each) > speedOf(top) ? each : top));
  const line = straightened(coarse, best.line, best.passes);
  return { kind: 'gate', gate: gateAcross(line, motion.plane), passes: best.passes.length, speed: speedOf(best) };
}

/** Two points that a person set, turned the way the track is driven. */
export function gateBetween(motion: Motion, a: Place, b: Place): Gate {
  const gate = { left: a, right: b };
  const passes = (of: Gate): number => crossingsOf(motion, lineOf(of, motion.plane), 0).length;
  return passes(turnedRound(gate)) > passes(gate) ? turnedRound(gate) : gate;
}

function lineAt({ x, y, vx, vy }: Motion, fix: number): GateLine | undefined {
  const [dx, dy] = [vx[fix] as number, vy[fix] as number];
  const speed = Math.hypot(dx, dy);
  if (!(speed >= SLOWEST)) return undefined;
  return { middle: { x: x[fix] as number, y: y[fix] as number }, ahead: { x: dx / speed, y: dy / speed }, half: WIDE };
}

/** Across the mean way of all passes, its middle where the middle one of them went. */
function straightened({ vx, vy }: Motion, line: GateLine, passes: readonly Crossing[]): GateLine {
  const sum = (of: Float64Array): number => passes.reduce((all, { fix }) => all + (of[fix] as number), 0);
  const [dx, dy] = [sum(vx), sum(vy)];
  const long = Math.hypot(dx, dy);
  const left = middleOf(passes.map(pass => pass.left));
  const { middle, ahead } = line;
  return {
    middle: { x: middle.x - left * ahead.y, y: middle.y + left * ahead.x },
    ahead: { x: dx / long, y: dy / long },
    half: WIDE,
  };
}

function thinned(motion: Motion): Motion {
  const kept: number[] = [];
  for (let n = 0; n < motion.time.length; n++)
    if (
      kept.length === 0 ||
      (motion.time[n] as number) - (motion.time[kept.at(-1) as number] as number) >= 0.9 * COARSE
    )
      kept.push(n);
  const pick = (of: Float64Array): Float64Array => Float64Array.from(kept, n => of[n] as number);
  const { time, x, y, vx, vy } = motion;
  return { ...motion, time: pick(time), x: pick(x), y: pick(y), vx: pick(vx), vy: pick(vy) };
}

const middleOf = (values: readonly number[]): number =>
  values.toSorted((a, b) => a - b)[values.length >> 1] ?? Number.NaN;
