/** The way of one lap, closed, and gates moved along it. */
import type { GateLine, Motion, Point } from '../../laps/index.ts';
import type { Path } from './outline.ts';

export type Way = Path & {
  readonly along: Float64Array; // m from the first point, driven
  readonly length: number; // m, all round
};

/** Between two fixes as finely as a gate is set, m. */
const FINE = 2;

/**
 * From one moment of a drive to another; between fixes the cubic with place and speed of both, as crossings are found
 * by it, so that a log of one fix a second has corners too.
 */
export function pathBetween({ time, x, y, vx, vy }: Motion, from: number, to: number): Path {
  const [toX, toY]: [number[], number[]] = [[], []];
  const first = Math.max(0, lastBefore(time, from));
  for (let n = first; n + 1 < time.length && (time[n] as number) < to; n++) {
    const h = (time[n + 1] as number) - (time[n] as number);
    const [dx, dy] = [(x[n + 1] as number) - (x[n] as number), (y[n + 1] as number) - (y[n] as number)];
    const pieces = Math.min(64, Math.max(1, Math.ceil(Math.hypot(dx, dy) / FINE)));
    for (let k = 0; k < pieces; k++) {
      const u = k / pieces;
      const moment = (time[n] as number) + u * h;
      if (moment < from || moment > to) continue;
      toX.push(between(x, vx, n, u, h));
      toY.push(between(y, vy, n, u, h));
    }
  }
  return { x: Float64Array.from(toX), y: Float64Array.from(toY) };
}

function between(at: Float64Array, speed: Float64Array, n: number, u: number, h: number): number {
  const [p, q] = [at[n] as number, at[n + 1] as number];
  const [a, b] = [h * (speed[n] as number), h * (speed[n + 1] as number)];
  return p + u * (a + u * (3 * (q - p) - 2 * a - b + u * (2 * (p - q) + a + b)));
}

/** The last fix not after a moment, -1 where there is none. */
function lastBefore(time: Float64Array, moment: number): number {
  let [low, high] = [-1, time.length];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if ((time[middle] as number) <= moment) low = middle;
    else high = middle;
  }
  return low;
}

/** Undefined where there is no way: fewer than three points. */
export function wayOf({ x, y }: Path): Way | undefined {
  if (x.length < 3) return undefined;
  const along = new Float64Array(x.length);
  const step = (n: number, to: number): number =>
    Math.hypot((x[to] as number) - (x[n] as number), (y[to] as number) - (y[n] as number));
  for (let n = 1; n < x.length; n++) along[n] = (along[n - 1] as number) + step(n - 1, n);
  return { x, y, along, length: (along.at(-1) as number) + step(x.length - 1, 0) };
}

/** How far along the way its point nearest to a place lies, m. */
export function alongOf(way: Way, place: Point): number {
  let [best, found] = [Number.POSITIVE_INFINITY, 0];
  for (let n = 0; n < way.x.length; n++) {
    const { x, y, dx, dy, size } = leg(way, n);
    const u = size > 0 ? clamp(((place.x - x) * dx + (place.y - y) * dy) / size ** 2) : 0;
    const off = Math.hypot(place.x - x - u * dx, place.y - y - u * dy);
    if (off < best) [best, found] = [off, (way.along[n] as number) + u * size];
  }
  return found % way.length;
}

/** A gate across the way so far along it; before the start is before the end. */
export function gateAt(way: Way, along: number, half: number): GateLine {
  const to = ((along % way.length) + way.length) % way.length;
  const n = Math.max(0, lastBefore(way.along, to));
  const { x, y, dx, dy, size } = leg(way, n);
  const u = size > 0 ? (to - (way.along[n] as number)) / size : 0;
  const ahead = headingOver(way, to);
  return { middle: { x: x + u * dx, y: y + u * dy }, ahead, half };
}

/** The gate moved along the way, `by` m on (+) or back (-). What it stood beside the way it stands beside no more. */
export const slid = (way: Way, gate: GateLine, by: number): GateLine =>
  gateAt(way, alongOf(way, gate.middle) + by, gate.half);

/** Over some metres to either side: one leg of a noisy log points anywhere. */
const STEADY = 4;

function headingOver(way: Way, along: number): Point {
  const [a, b] = [placeOn(way, along - STEADY), placeOn(way, along + STEADY)];
  const size = Math.hypot(b.x - a.x, b.y - a.y);
  return size > 0 ? { x: (b.x - a.x) / size, y: (b.y - a.y) / size } : { x: 0, y: 1 };
}

export function placeOn(way: Way, along: number): Point {
  const to = ((along % way.length) + way.length) % way.length;
  const n = Math.max(0, lastBefore(way.along, to));
  const { x, y, dx, dy, size } = leg(way, n);
  const u = size > 0 ? (to - (way.along[n] as number)) / size : 0;
  return { x: x + u * dx, y: y + u * dy };
}

/** From a point to the next, from the last to the first. */
function leg({ x, y }: Path, n: number): Point & { readonly dx: number; readonly dy: number; readonly size: number } {
  const to = (n + 1) % x.length;
  const [px, py] = [x[n] as number, y[n] as number];
  const [dx, dy] = [(x[to] as number) - px, (y[to] as number) - py];
  return { x: px, y: py, dx, dy, size: Math.hypot(dx, dy) };
}

const clamp = (u: number): number => Math.min(1, Math.max(0, u));
