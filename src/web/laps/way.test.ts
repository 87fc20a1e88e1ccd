import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drive } from '../../../test/drive.ts';
import { bytesOf, csvOf, imported } from '../../../test/drive-files.ts';
import { lapsOf, motionOf } from '../../laps/index.ts';
import { frameOf, outlineOf } from './outline.ts';
import { alongOf, gateAt, pathBetween, placeOn, slid, type Way, wayOf } from './way.ts';

/** A circle of 100 m round, driven anticlockwise from the east. */
const POINTS = 500;
const RADIUS = 100 / (2 * Math.PI);
const turn = (n: number): number => (2 * Math.PI * n) / POINTS;
const circle = wayOf({
  x: Float64Array.from({ length: POINTS }, (_, n) => RADIUS * Math.cos(turn(n))),
  y: Float64Array.from({ length: POINTS }, (_, n) => RADIUS * Math.sin(turn(n))),
}) as Way;

describe('the way of a lap', () => {
  test('is as long as it is driven, and closed', () => {
    expect(circle.length).toBeCloseTo(100, 1);
    expect(wayOf({ x: new Float64Array(2), y: new Float64Array(2) })).toBeUndefined();
  });

  test('a gate slid on by so many metres lies so many metres on, also over the start, and back again', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 0, max: 99, noNaN: true }),
        fc.double({ min: -30, max: 30, noNaN: true }),
        (at, by) => {
          const from = gateAt(circle, at, 8);
          const to = slid(circle, from, by);
          expect((alongOf(circle, to.middle) - at - by + 250) % 100).toBeCloseTo(50, 1);
          const back = slid(circle, to, -by);
          expect(Math.hypot(back.middle.x - from.middle.x, back.middle.y - from.middle.y)).toBeLessThan(0.02);
        },
      ),
      { numRuns: 50 },
    );
  });

  test('a gate lies across it: square to the way, the way it is driven', () => {
    const { middle, ahead, half } = gateAt(circle, 25, 6);
    expect([middle.x, middle.y]).toEqual([expect.closeTo(0, 1), expect.closeTo(RADIUS, 1)]);
    expect([ahead.x, ahead.y]).toEqual([expect.closeTo(-1, 2), expect.closeTo(0, 1)]);
    expect(half).toBe(6);
    expect(placeOn(circle, circle.length + 25).x).toBeCloseTo(placeOn(circle, 25).x, 9);
  });

  test('of a log of one fix a second follows the corners that a straight line between fixes would cut', () => {
    const of = (rate: number) => {
      const { rows, gates } = drive({ laps: 2, rate });
      const trace = imported(bytesOf(csvOf(rows))).trace;
      const motion = motionOf(trace);
      const [lap] = lapsOf(trace, gates, { motion }).laps;
      return wayOf(pathBetween(motion, lap?.start.time ?? 0, lap?.end.time ?? 0)) as Way;
    };
    const [fine, coarse] = [of(10), of(1)];
    expect(Math.abs(coarse.length - fine.length)).toBeLessThan(0.005 * fine.length);
  });
});

describe('the outline of a long log', () => {
  const { rows } = drive({ laps: 60, rate: 10 });
  const motion = motionOf(imported(bytesOf(csvOf(rows))).trace);
  const outline = outlineOf(motion);

  test('shows every place of it with a few thousand points at most', () => {
    expect(motion.x.length).toBeGreaterThan(20_000);
    expect(outline.x.length).toBeLessThan(6000);
    const [all, drawn] = [frameOf(motion), frameOf(outline)];
    expect(Math.abs(all.size - drawn.size)).toBeLessThan(0.02 * all.size);
  });

  test('lifts the pen over a hole', () => {
    const hole = rows.filter((_, n) => n < 50 || n > 120);
    const { x } = outlineOf(motionOf(imported(bytesOf(csvOf(hole.slice(0, 200)))).trace));
    expect([...x].filter(Number.isNaN)).toHaveLength(1);
  });
});
