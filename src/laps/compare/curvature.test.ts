/** On the logs whose track is known: how near the curvature comes, and what one bad fix does to it. */
import { describe, expect, it } from 'vitest';
import { imported } from '../../../test/drive-files.ts';
import { knownLogs } from '../../../test/lap-logs.ts';
import { knownTrack } from '../../../test/tracks.ts';
import {
  type Curvature,
  curvatureOf,
  type LapOnLine,
  type Line,
  lapsOf,
  layOn,
  medianLine,
  motionOf,
  smooth,
} from '../index.ts';

const { logs, absent } = knownLogs();

function laid(file: string): { readonly line: Line; readonly laps: readonly LapOnLine[] } {
  const log = logs.find(each => each.file === file);
  if (!log) throw new Error(`${file} must be there`);
  const { trace } = imported(log.bytes);
  const motion = motionOf(trace);
  const { laps, receiver } = lapsOf(trace, log.gates, { motion });
  const smoothed = smooth(motion, { receiver, doppler: trace.heading !== undefined });
  const line = medianLine(smoothed, laps);
  return { line, laps: laps.map(lap => layOn(smoothed, lap, line)) };
}

/** Root mean square off the truth, 1/m, where the line lies best: the slow error of the receiver moves it by up to a metre. */
function rmsOf({ curvature }: Curvature, { length, step }: Line, track: ReturnType<typeof knownTrack>): number {
  const shifted = (by: number): number =>
    Math.sqrt(
      curvature.reduce(
        (sum, each, n) => sum + (each - track.curvatureAt(((n * step + by) * track.length) / length)) ** 2,
        0,
      ) / curvature.length,
    );
  return Math.min(...[-1, -0.75, -0.5, -0.25, 0, 0.25, 0.5, 0.75, 1].map(shifted));
}

describe('curvature of the logs with a receiver’s error', () => {
  // laps.md 3.3, K1: one lap 0.0024 to 0.0029 1/m; the middle of six 0.0013 to 0.0014 at 10 and 25 a second, 0.0022 to 0.0025 at 5.
  for (const [file, name, one, six] of [
    ['K1_05hz.csv', 'K1', 0.0029, 0.0025],
    ['K1_10hz.csv', 'K1', 0.0029, 0.0014],
    ['K1_25hz.csv', 'K1', 0.0029, 0.0014],
    ['K3_05hz.csv', 'K3', 0.0029, 0.0025],
    ['K3_10hz.csv', 'K3', 0.0029, 0.0016],
    ['K3_25hz.csv', 'K3', 0.0029, 0.0016],
  ] as const)
    it(`${file}: one lap is off by up to ${one} 1/m, the middle of six by up to ${six}`, () => {
      if (!logs.some(each => each.file === file)) return expect(absent).toContain(file);
      const { line, laps } = laid(file);
      const track = knownTrack(name);
      expect(Math.abs(line.length / track.length - 1)).toBeLessThan(0.002);
      const singles = laps.slice(0, 6).map(lap => rmsOf(curvatureOf([lap], line), line, track));
      expect(singles.reduce((sum, each) => sum + each / 6, 0)).toBeLessThan(one);
      expect(rmsOf(curvatureOf(laps.slice(0, 6), line), line, track)).toBeLessThan(six);
    });

  it('arcs come out within 3 %, and their spread says so', () => {
    const { line, laps } = laid('K1_10hz.csv');
    const { curvature, spread, distance } = curvatureOf(laps, line);
    // The bend of 32 m: arc from 324 m to 413 m.
    const arc = [...distance.keys()].filter(n => (distance[n] ?? 0) > 328 && (distance[n] ?? 0) < 409);
    const mean = (of: Float64Array): number => arc.reduce((sum, n) => sum + (of[n] ?? 0) / arc.length, 0);
    expect(mean(curvature) * 32).toBeGreaterThan(0.97);
    expect(mean(curvature) * 32).toBeLessThan(1.03);
    expect(mean(spread)).toBeGreaterThan(0.0002);
    expect(mean(spread)).toBeLessThan(0.004);
  });
});
