/**
 * One line that all laps are laid on: a point a metre or so, from start and finish round to it again.
 *
 * Laps are laid on the one of middle length first; the middle of all their distances to its left, point by point, gives the
 * line. So no lap counts more than another, and one that went wide moves nothing.
 */
import type { Lap } from '../find/index.ts';
import { middleOf } from '../middle.ts';
import type { Smooth } from './smooth.ts';

export type Line = {
  readonly length: number; // m
  readonly step: number; // m from point to point
  readonly x: Float64Array; // m; the first point once more at the end
  readonly y: Float64Array;
};

/** A lap on a line: at each point of it, when and how the kart came by. Times from the start of the lap. */
export type LapOnLine = {
  readonly lap: Lap;
  readonly time: Float64Array; // s
  readonly speed: Float64Array; // m/s
  readonly left: Float64Array; // m left of the line
  readonly curvature: Float64Array; // 1/m, to the left above 0
  readonly curvatureSpread: Float64Array; // 1/m, one standard deviation
  readonly ahead: Float64Array; // m/s², acceleration the way it drives
  readonly aside: Float64Array; // m/s², to the left
};

const STEP = 1; // m

/** Throws where there is no lap. */
export function medianLine(smooth: Smooth, laps: readonly Lap[]): Line {
  const paths = laps.map(lap => pathOf(smooth, lap));
  const [first] = paths
    .map(path => ({ path, length: lengthOf(path) }))
    .toSorted((a, b) => a.length - b.length)
    .slice(paths.length >> 1);
  if (first === undefined) throw new Error('medianLine: laps must be one or more, got none');
  const line = evenly(first.path);
  const lefts = laps.map(lap => layOn(smooth, lap, line).left);
  const [x, y] = [new Float64Array(line.x.length), new Float64Array(line.x.length)];
  for (let n = 0; n < x.length; n++) {
    const { dx, dy } = aheadAt(line, n);
    const left = middleOf(lefts.map(of => of[n] as number));
    x[n] = (line.x[n] as number) - left * dy;
    y[n] = (line.y[n] as number) + left * dx;
  }
  return evenly({ x, y });
}

type Path = { readonly x: Float64Array; readonly y: Float64Array };

/** Fixes inside a lap with its crossings at both ends, on the cubic between the fixes around each. */
function pathOf(smooth: Smooth, lap: Lap): Path & { readonly from: number; readonly to: number } {
  const [from, to] = [lap.start.fix + 1, lap.end.fix];
  const ends = [placeAt(smooth, lap.start.fix, lap.start.time), placeAt(smooth, lap.end.fix, lap.end.time)];
  const with_ = (of: Float64Array, which: 'x' | 'y'): Float64Array =>
    Float64Array.from([ends[0]?.[which] ?? Number.NaN, ...of.subarray(from, to + 1), ends[1]?.[which] ?? Number.NaN]);
  return { x: with_(smooth.x, 'x'), y: with_(smooth.y, 'y'), from, to };
}

function placeAt({ time, x, y, vx, vy }: Smooth, fix: number, at: number): { readonly x: number; readonly y: number } {
  const h = (time[fix + 1] as number) - (time[fix] as number);
  const u = (at - (time[fix] as number)) / h;
  const cubic = (of: Float64Array, rise: Float64Array): number => {
    const [p, q, r, s] = [of[fix], of[fix + 1], rise[fix], rise[fix + 1]] as [number, number, number, number];
    return p + u * (h * r + u * (3 * (q - p) - h * (2 * r + s) + u * (2 * (p - q) + h * (r + s))));
  };
  return { x: cubic(x, vx), y: cubic(y, vy) };
}

function lengthOf({ x, y }: Path): number {
  let sum = 0;
  for (let n = 1; n < x.length; n++)
    sum += Math.hypot((x[n] as number) - (x[n - 1] as number), (y[n] as number) - (y[n - 1] as number));
  return sum;
}

/** Points at even distances along a path that is closed: a lap that ends beside its start ends on it. */
function evenly(path: Path): Line {
  const count = path.x.length;
  const last = count - 1;
  const along = new Float64Array(count);
  for (let n = 1; n < count; n++) {
    const [dx, dy] = [
      (path.x[n] as number) - (path.x[n - 1] as number),
      (path.y[n] as number) - (path.y[n - 1] as number),
    ];
    along[n] = (along[n - 1] as number) + Math.hypot(dx, dy);
  }
  const length = along[last] as number;
  const points = Math.max(8, Math.round(length / STEP));
  const step = length / points;
  const [x, y] = [new Float64Array(points + 1), new Float64Array(points + 1)];
  const gap = {
    x: (path.x[0] as number) - (path.x[last] as number),
    y: (path.y[0] as number) - (path.y[last] as number),
  };
  let k = 0;
  for (let n = 0; n <= points; n++) {
    const at = Math.min(n * step, length);
    while (k < last - 1 && (along[k + 1] as number) < at) k++;
    const u = Math.min(1, (at - (along[k] as number)) / ((along[k + 1] as number) - (along[k] as number) || 1));
    const share = at / length; // the gap is spread over the whole way
    x[n] = (path.x[k] as number) * (1 - u) + (path.x[k + 1] as number) * u + share * gap.x;
    y[n] = (path.y[k] as number) * (1 - u) + (path.y[k + 1] as number) * u + share * gap.y;
  }
  return { length, step, x, y };
}

/** The way ahead at point n, length 1, by its neighbours round the closed line. */
function aheadAt({ x, y }: Line, n: number): { readonly dx: number; readonly dy: number } {
  const points = x.length - 1;
  const [before, behind] = [(n - 1 + points) % points, (n + 1) % points];
  const [dx, dy] = [(x[behind] as number) - (x[before] as number), (y[behind] as number) - (y[before] as number)];
  const long = Math.hypot(dx, dy) || 1;
  return { dx: dx / long, dy: dy / long };
}

/** How far ahead of the last place, m, the line is searched for the next. */
const SEARCH = 60;

/** A lap laid on a line: each fix where it is nearest, stretched so that its start and end are those of the line. */
export function layOn(smooth: Smooth, lap: Lap, line: Line): LapOnLine {
  const { x, y, from, to } = pathOf(smooth, lap);
  const count = x.length;
  const [place, left] = [new Float64Array(count), new Float64Array(count)];
  let near = 0;
  for (let n = 0; n < count; n++) {
    const found = nearest(line, x[n] as number, y[n] as number, near, n === 0 ? 15 : 0);
    [place[n], left[n], near] = [found.at, found.left, Math.max(near, found.at)];
  }
  const [first, whole] = [place[0] as number, (place[count - 1] as number) - (place[0] as number)];
  for (let n = 0; n < count; n++) place[n] = (((place[n] as number) - first) / whole) * line.length;
  const at = (of: Float64Array): Float64Array => {
    const inner = of.subarray(from, to + 1);
    return Float64Array.from([mixed(of, smooth.time, lap.start), ...inner, mixed(of, smooth.time, lap.end)]);
  };
  const fixes = {
    time: Float64Array.from(
      [lap.start.time, ...smooth.time.subarray(from, to + 1), lap.end.time],
      t => t - lap.start.time,
    ),
    ...{ vx: at(smooth.vx), vy: at(smooth.vy), ax: at(smooth.ax), ay: at(smooth.ay) },
    ...{ dv: at(smooth.speedSpread), da: at(smooth.accelerationSpread) },
  };
  return resampled(lap, { place, left, ...fixes }, line);
}

const mixed = (of: Float64Array, time: Float64Array, { fix, time: at }: Lap['start']): number => {
  const u = (at - (time[fix] as number)) / ((time[fix + 1] as number) - (time[fix] as number));
  return (of[fix] as number) * (1 - u) + (of[fix + 1] as number) * u;
};

/** The nearest place on the line from `back` m before to 60 m behind the last one; may lie past either end, straight on. */
function nearest(
  { x, y, step }: Line,
  px: number,
  py: number,
  last: number,
  back: number,
): { readonly at: number; readonly left: number } {
  const points = x.length - 1;
  const begin = Math.floor((last - back) / step);
  let best = { far: Number.POSITIVE_INFINITY, at: last, left: 0 };
  for (let k = Math.max(begin, -points); k <= begin + Math.ceil((SEARCH + back) / step); k++) {
    const n = ((k % points) + points) % points;
    const [ax, ay] = [x[n] as number, y[n] as number];
    const [dx, dy] = [(x[n + 1] as number) - ax, (y[n + 1] as number) - ay];
    const long = dx * dx + dy * dy || 1;
    const u = Math.min(1, Math.max(0, ((px - ax) * dx + (py - ay) * dy) / long));
    const [ox, oy] = [px - ax - u * dx, py - ay - u * dy];
    const far = ox * ox + oy * oy;
    if (far < best.far) best = { far, at: (k + u) * step, left: (dx * (py - ay) - dy * (px - ax)) / Math.sqrt(long) };
  }
  return best;
}

type Fixes = { readonly [name in 'place' | 'left' | 'time' | 'vx' | 'vy' | 'ax' | 'ay' | 'dv' | 'da']: Float64Array };

function resampled(lap: Lap, fixes: Fixes, line: Line): LapOnLine {
  const points = line.x.length;
  const made = (): Float64Array => new Float64Array(points);
  const out = {
    time: made(),
    speed: made(),
    left: made(),
    curvature: made(),
    curvatureSpread: made(),
    ahead: made(),
    aside: made(),
  };
  const { place } = fixes;
  const last = place.length - 1;
  let k = 0;
  for (let n = 0; n < points; n++) {
    const at = n === points - 1 ? line.length : n * line.step;
    while (k < last - 1 && (place[k + 1] as number) < at) k++;
    // A kart that went backward on the line is held still there.
    const gap = (place[k + 1] as number) - (place[k] as number);
    const u = gap > 0 ? Math.min(1, Math.max(0, (at - (place[k] as number)) / gap)) : 1;
    const between = (of: Float64Array): number => (of[k] as number) * (1 - u) + (of[k + 1] as number) * u;
    const [vx, vy, ax, ay] = [between(fixes.vx), between(fixes.vy), between(fixes.ax), between(fixes.ay)];
    const speed = Math.max(Math.hypot(vx, vy), 0.1);
    out.speed[n] = speed;
    out.left[n] = between(fixes.left);
    out.ahead[n] = (ax * vx + ay * vy) / speed;
    out.aside[n] = (vx * ay - vy * ax) / speed;
    const curvature = (out.aside[n] as number) / speed ** 2;
    out.curvature[n] = curvature;
    out.curvatureSpread[n] = Math.hypot(between(fixes.da) / speed ** 2, (2 * curvature * between(fixes.dv)) / speed);
    out.time[n] = timeAt(fixes, k, u);
  }
  out.time[0] = 0;
  out.time[points - 1] = lap.time;
  return { lap, ...out };
}

/** Between two fixes the speed changes evenly with time, as the way does: t from the share u of the way. */
function timeAt({ time, vx, vy }: Fixes, k: number, u: number): number {
  const [from, h] = [time[k] as number, (time[k + 1] as number) - (time[k] as number)];
  const [v0, v1] = [k, k + 1].map(n => Math.hypot(vx[n] as number, vy[n] as number)) as [number, number];
  const mean = (v0 + v1) / 2;
  if (!(mean > 0.5)) return from + u * h;
  // u = (v0 w + (v1 - v0) w² / 2) / mean, for w in 0..1
  const [p, r] = [v0 / mean, (v1 - v0) / mean];
  const w = (2 * u) / (p + Math.sqrt(Math.max(p * p + 2 * r * u, 0)));
  return from + Math.min(1, Math.max(0, w)) * h;
}
