/** A trace on a flat map: where, and how fast which way, at each fix. */
import type { Trace } from '../model.ts';
import { type Plane, planeAt } from './plane.ts';

export type Motion = {
  readonly plane: Plane;
  readonly time: Float64Array; // s
  readonly x: Float64Array; // m east
  readonly y: Float64Array; // m north
  readonly vx: Float64Array; // m/s east
  readonly vy: Float64Array; // m/s north
  readonly step: number; // s, the usual time from fix to fix
  /** More than this between two fixes is a hole, s. */
  readonly hole: number;
};

/** Below it a course is chance, m/s. */
const SLOW = 1;
/** Longer than two fixes lost in a row: common practice. */
const HOLE_STEPS = 3.5;

/** On the plane round the middle of the trace, or the one given. */
export function motionOf(trace: Trace, plane: Plane = planeOf(trace)): Motion {
  const { time } = trace;
  const count = time.length;
  const [x, y] = [new Float64Array(count), new Float64Array(count)];
  for (let n = 0; n < count; n++) {
    const point = plane.forward(trace.lat[n] as number, trace.lon[n] as number);
    x[n] = point.x;
    y[n] = point.y;
  }
  const step = usualStep(time);
  const hole = HOLE_STEPS * step;
  const [vx, vy] = [slopes(time, x, hole), slopes(time, y, hole)];
  for (let n = 0; n < count; n++) {
    const speed = trace.speed?.[n] ?? Number.NaN;
    const course = trace.heading?.[n] ?? Number.NaN;
    const own = Math.hypot(vx[n] as number, vy[n] as number);
    if (speed > SLOW && Number.isFinite(course)) {
      vx[n] = speed * Math.sin(course);
      vy[n] = speed * Math.cos(course);
    } else if (speed >= 0 && own > 0) {
      vx[n] = ((vx[n] as number) * speed) / own;
      vy[n] = ((vy[n] as number) * speed) / own;
    }
  }
  return { plane, time, x, y, vx, vy, step, hole };
}

/** Round the middle of all places, at the middle height. */
export function planeOf({ lat, lon, height }: Trace): Plane {
  const from = lon[0] ?? 0;
  // A trace over the 180th meridian: longitudes are taken on from the first.
  const east = lon.map(each => each - 2 * Math.PI * Math.round((each - from) / (2 * Math.PI)));
  const up = height?.filter(Number.isFinite);
  return planeAt({ lat: mean(lat), lon: mean(east) }, up && up.length > 0 ? mean(up) : 0);
}

const mean = (of: Float64Array): number => of.reduce((sum, each) => sum + each / of.length, 0);

/** The middle one of the steps: holes and doubled fixes do not move it. */
function usualStep(time: Float64Array): number {
  const steps = new Float64Array(Math.max(0, time.length - 1));
  for (let n = 0; n < steps.length; n++) steps[n] = (time[n + 1] as number) - (time[n] as number);
  steps.sort();
  return steps[steps.length >> 1] ?? Number.NaN;
}

/** By the parabola through a point and its neighbours, or the line to the only one that is not across a hole. */
function slopes(time: Float64Array, of: Float64Array, hole: number): Float64Array {
  const slope = new Float64Array(of.length);
  const last = of.length - 1;
  const gap = (n: number): number => (time[n + 1] as number) - (time[n] as number);
  const rise = (n: number): number => ((of[n + 1] as number) - (of[n] as number)) / gap(n);
  for (let n = 0; n <= last; n++) {
    const before = n > 0 && (gap(n - 1) <= hole || n === last);
    const behind = n < last && (gap(n) <= hole || n === 0);
    if (before && behind) {
      const [a, b] = [gap(n - 1), gap(n)];
      slope[n] = (rise(n - 1) * b + rise(n) * a) / (a + b);
    } else if (before) slope[n] = rise(n - 1);
    else if (behind) slope[n] = rise(n);
    else slope[n] = n > 0 && n < last ? ((of[n + 1] as number) - (of[n - 1] as number)) / (gap(n - 1) + gap(n)) : 0;
  }
  return slope;
}
