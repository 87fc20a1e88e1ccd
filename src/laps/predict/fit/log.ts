/** What the fits read of a drive, and what they say. */
import type { Smooth } from '../../compare/index.ts';

/** One row a fix; SI. */
export type FitLog = {
  readonly time: Float64Array; // s
  readonly speed: Float64Array; // m/s
  readonly ahead: Float64Array; // m/s², the way it drives
  readonly curvature: Float64Array; // 1/m
  readonly rotation?: Float64Array | undefined; // rad/s of the engine; NaN where a row lacks it
};

/** A figure of the kart with its spread, one standard deviation, and what it rests on; or why the log does not bear it. */
export type Fitted =
  | { readonly kind: 'fitted'; readonly value: number; readonly spread: number; readonly rests: string }
  | { readonly kind: 'unknown'; readonly why: string };

export const unknown = (why: string): Fitted => ({ kind: 'unknown', why });

export function fitLogOf({ time, vx, vy, ax, ay }: Smooth, rotation?: Float64Array): FitLog {
  const count = time.length;
  const [speed, ahead, curvature] = [new Float64Array(count), new Float64Array(count), new Float64Array(count)];
  for (let n = 0; n < count; n++) {
    const [u, v, a, b] = [vx[n] as number, vy[n] as number, ax[n] as number, ay[n] as number];
    const v1 = Math.hypot(u, v);
    speed[n] = v1;
    ahead[n] = v1 > 1 ? (u * a + v * b) / v1 : 0;
    curvature[n] = v1 > 3 ? (u * b - v * a) / v1 ** 3 : 0;
  }
  return { time, speed, ahead, curvature, rotation };
}

/** From one fix to another, the second not included. */
export type Stretch = { readonly from: number; readonly to: number };

/** A gap longer than this ends a stretch, s; with fewer fixes a second a bend or a shift is not seen. */
const GAP = 0.3;

/** Where something holds from fix to fix, for so many seconds at least. */
export function stretches(
  log: FitLog,
  least: number,
  holds: (fix: number, first: number) => boolean,
): readonly Stretch[] {
  const found: Stretch[] = [];
  const { time } = log;
  for (let from = 0; from < time.length; ) {
    let to = from;
    while (
      to < time.length &&
      holds(to, from) &&
      (to === from || (time[to] as number) - (time[to - 1] as number) <= GAP)
    )
      to++;
    if (to > from && (time[to - 1] as number) - (time[from] as number) >= least) found.push({ from, to });
    from = Math.max(to, from + 1);
  }
  return found;
}

export const meanOver = ({ from, to }: Stretch, of: (fix: number) => number): number => {
  let sum = 0;
  for (let fix = from; fix < to; fix++) sum += of(fix);
  return sum / (to - from);
};
