/**
 * How sharply the track turns along its line, from one lap or as the middle one of several, with how sure it is.
 *
 *   κ = (x' y'' - y' x'') / (x'² + y'²)^(3/2);  spread of one lap: √((s_a / v²)² + (2 κ s_v / v)²);
 *   of n laps: 1.4826 median |κ_i - middle| · √(π/2) / √n, and never less than a single lap's over n
 *
 * x', y' speed, x'', y'' acceleration from `smooth`; s_a, s_v their spread. Seen on invented logs: one lap 0.003 1/m rms at 10 and
 * 25 fixes a second, the middle of six laps half of that, arcs low by about 1 %. Peaks come out high: judge a corner by its arc,
 * not by its highest point. Every smoother has a curvature of its own; the spread is that of chance only.
 * Source: plane curves (memory); figures in curvature.test.ts.
 */

import { middleOf } from '../middle.ts';
import type { LapOnLine, Line } from './line.ts';

export type Curvature = {
  readonly distance: Float64Array; // m along the line
  readonly curvature: Float64Array; // 1/m, to the left above 0
  readonly spread: Float64Array; // 1/m, one standard deviation
  readonly laps: number;
};

export function curvatureOf(laps: readonly LapOnLine[], line: Line): Curvature {
  if (laps.length === 0) throw new Error('curvatureOf: laps must be one or more, got none');
  const points = line.x.length;
  const [distance, curvature, spread] = [points, points, points].map(size => new Float64Array(size)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  for (let n = 0; n < points; n++) {
    const all = laps.map(lap => lap.curvature[n] as number);
    const own = middleOf(laps.map(lap => lap.curvatureSpread[n] as number));
    const middle = middleOf(all);
    const apart = 1.4826 * middleOf(all.map(each => Math.abs(each - middle)));
    distance[n] = n === points - 1 ? line.length : n * line.step;
    curvature[n] = middle;
    spread[n] =
      laps.length < 3
        ? own / Math.sqrt(laps.length)
        : Math.max((apart * Math.sqrt(Math.PI / 2)) / Math.sqrt(laps.length), own / laps.length);
  }
  return { distance, curvature, spread, laps: laps.length };
}
