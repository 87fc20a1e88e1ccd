import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { imported } from '../../../test/drive-files.ts';
import { knownLogs } from '../../../test/lap-logs.ts';
import {
  comparedOn,
  comparedSay,
  curvatureOf,
  drivenOf,
  gripOf,
  type LapOnLine,
  lapsOf,
  layOn,
  medianLine,
  motionOf,
  piecesOf,
  smooth,
} from '../index.ts';

const { logs } = knownLogs();
function read(file: string) {
  const log = logs.find(each => each.file === file);
  if (!log) throw new Error(`${file} must be there`);
  const { trace } = imported(log.bytes);
  const motion = motionOf(trace);
  const { laps: found, receiver } = lapsOf(trace, log.gates, { motion });
  const smoothed = smooth(motion, { receiver, doppler: trace.heading !== undefined });
  const line = medianLine(smoothed, found);
  const laps = found.map(lap => layOn(smoothed, lap, line));
  const pieces = piecesOf(curvatureOf(laps, line));
  return { log, found, receiver, smoothed, line, laps, pieces };
}
const K1 = read('K1_10hz.csv');
const of = (n: number): LapOnLine => {
  const lap = K1.laps[n];
  if (!lap) throw new Error(`lap ${n} must be there`);
  return lap;
};
const compared = (a: number, b: number) => comparedOn(K1.line, [of(a), of(b)], K1);
const anyLap = fc.integer({ min: 0, max: 7 });

describe('two laps compared by distance', () => {
  it('close exactly at the difference of their times, and so do the pieces', () => {
    fc.assert(
      fc.property(anyLap, anyLap, (a, b) => {
        const { delta, difference, pieces } = compared(a, b);
        expect(delta[0]).toBe(0);
        expect(delta.at(-1)).toBe(difference);
        expect(difference).toBe(of(b).lap.time - of(a).lap.time);
        expect(pieces.reduce((sum, piece) => sum + piece.difference, 0)).toBeCloseTo(difference, 9);
      }),
    );
  });
  it('exchanged give the opposite, and a lap against itself nothing', () => {
    fc.assert(
      fc.property(anyLap, anyLap, (a, b) => {
        const [there, back] = [compared(a, b).delta, compared(b, a).delta];
        for (const n of [0, 100, 400, 700]) expect(back[n]).toBeCloseTo(-(there[n] ?? Number.NaN), 12);
      }),
    );
    expect(Math.max(...compared(3, 3).delta)).toBe(0);
  });
  it('on noise-free fixes agree with the sectors of the known laps wherever these end', () => {
    const clean = read('clean_25hz.csv');
    for (const n of [1, 4, 7]) {
      const [a, b] = [clean.laps[0], clean.laps[n]];
      if (!a || !b) throw new Error('eight laps');
      const { delta } = comparedOn(clean.line, [a, b], clean);
      const truth = [a, b].map(({ lap }) => clean.log.laps[lap.number - 1]?.sectors ?? []);
      const split = (truth[1]?.[0] ?? 0) - (truth[0]?.[0] ?? 0);
      // The gate stands at 0.35 of the length; the two lines to it may differ by a few centimetres.
      expect(delta[Math.round(0.35 * (delta.length - 1))]).toBeCloseTo(split, 1.3);
    }
  });
  it('say where time was gained and lost, never more than the receiver can tell', () => {
    const said = comparedSay(compared(0, 5));
    expect(said[0]).toMatch(/^The second lap was \d\.\d\d s (faster|slower) than the first\.$/);
    for (const line of said.slice(1)) expect(line).toMatch(/^(Gained|Lost) 0\.\d\d s ± |^No piece/);
  });
});

describe('pieces of the track', () => {
  it('are the seven corners of the invented track with their sides, and follow each other without a gap', () => {
    const corners = K1.pieces.filter(({ turn }) => turn !== 0);
    expect(corners.map(({ name }) => name.replace(/corner \d, /, ''))).toEqual([
      'left',
      'left',
      'right',
      'right',
      'left',
      'left',
      'left',
    ]);
    const degrees = corners.map(({ turn }) => (turn * 180) / Math.PI);
    [135, 165, -180, -75, 60, 135, 120].forEach((angle, n) => {
      expect(Math.abs((degrees[n] ?? 0) - angle)).toBeLessThan(15);
    });
    expect(K1.pieces[0]).toMatchObject({ name: 'straight to corner 1', from: 0 });
    K1.pieces.forEach(({ from }, n) => {
      if (n > 0) expect(from).toBe(K1.pieces[n - 1]?.to);
    });
    expect(K1.pieces.at(-1)?.to).toBe(K1.line.length);
  });
  it('of a track without a corner are the whole lap', () => {
    const distance = Float64Array.from({ length: 101 }, (_, n) => n);
    expect(piecesOf({ distance, curvature: distance.map(() => 0) })).toMatchObject([
      { name: 'the whole lap', to: 100 },
    ]);
  });
});

describe('how evenly it was driven', () => {
  it('the ideal lap is no slower than the best, the best no slower than the middle', () => {
    const { best, ideal, middle, spread, pieces } = drivenOf(K1.laps, K1.line, K1.pieces);
    expect(ideal).toBeLessThanOrEqual(best.time);
    expect(best.time).toBeLessThanOrEqual(middle);
    expect(best.time).toBe(Math.min(...K1.found.map(({ time }) => time)));
    expect(spread).toBeGreaterThan(0);
    for (const piece of pieces) expect(piece.best).toBeLessThanOrEqual(piece.middle);
  });
  it('of one lap all are the same', () => {
    const { best, ideal, middle, spread } = drivenOf([of(2)], K1.line, K1.pieces);
    expect(ideal).toBeCloseTo(best.time, 9);
    expect([middle, spread]).toEqual([best.time, 0]);
  });
});

describe('the grip that was used', () => {
  it('comes within a tenth of what the invented kart was driven to', () => {
    // Friction 2.0 aside; driven at 0.975 of the speed, spread 0.006: 95 of 100 below 2.0 · 9.80665 · (0.975 + 1.645 · 0.006)².
    const driven = 2 * 9.80665 * (0.975 + 1.645 * 0.006) ** 2;
    const { aside, braking, drive, directions } = gripOf(K1.smoothed, K1.found);
    expect(Math.abs((aside ?? Number.NaN) / driven - 1)).toBeLessThan(0.1);
    for (const { angle, reach } of directions)
      if (Math.abs(angle) < 0.2) expect(Math.abs((reach ?? Number.NaN) / driven - 1)).toBeLessThan(0.05);
    expect(braking).toBeGreaterThan(drive ?? Number.NaN);
    expect(directions).toHaveLength(12);
  });
  it('is unknown where there are too few fixes', () => {
    const { start, end } = of(0).lap;
    const grip = gripOf(K1.smoothed, [{ start, end: { ...end, fix: start.fix + 30 } }]);
    expect(grip.aside).toBeUndefined();
    for (const { fixes, reach } of grip.directions) expect(reach === undefined).toBe(fixes < 20);
  });
});
