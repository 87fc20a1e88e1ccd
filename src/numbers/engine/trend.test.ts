import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { LEAST_SQUISH, squishVerdict } from './squish.ts';
import { type Compression, compressionTrend } from './trend.ts';

const hot = (hours: number, bar: number, more: Partial<Compression> = {}): Compression => ({
  ran: hours * 3600,
  pressure: bar * 1e5,
  half: 1e4,
  gauge: 'A',
  hot: true,
  open: true,
  ...more,
});
/** A trend that is known, or a failed test. */
function known(readings: readonly Compression[]) {
  const trend = compressionTrend(readings);
  if (trend.kind === 'not known') throw new Error(trend.why);
  return trend;
}
const size = (min: number, max: number) => fc.double({ min, max, noNaN: true });

describe('squish', () => {
  it('is judged at the tighter side, and the tilt says which one is wider', () => {
    expect(squishVerdict({ sides: [0.0007, 0.001] })).toMatchObject({ kind: 'not to run', tightest: 0.0007 });
    expect(squishVerdict({ sides: [0.00085, 0.001] }).tilt).toBeCloseTo(-0.00015, 12);
    expect(squishVerdict({ sides: [0.00085, 0.001] }).kind).toBe('above the least');
  });
  it('cannot be told within the limits of the reading, exactly at the least too', () => {
    expect(squishVerdict({ sides: [LEAST_SQUISH, 0.001] }).kind).toBe('cannot tell');
    expect(squishVerdict({ sides: [LEAST_SQUISH + 0.00001, 0.001] }).kind).toBe('cannot tell');
    expect(squishVerdict({ sides: [LEAST_SQUISH, 0.001], half: 0 }).kind).toBe('above the least');
  });
  it('of one side alone is not known, and too tight on one side is enough not to run', () => {
    expect(squishVerdict({ sides: [0.001, Number.NaN] }).kind).toBe('not known');
    expect(squishVerdict({ sides: [Number.NaN, Number.NaN] }).kind).toBe('not known');
    expect(squishVerdict({ sides: [0.0005, Number.NaN] }).kind).toBe('not to run');
    expect(squishVerdict({ sides: [0.001, 0.001], half: Number.NaN }).kind).toBe('not known');
  });
  it("goes by the maker's figure when it is given, and never gets better with less of it", () => {
    const worse = ['above the least', 'cannot tell', 'not to run'];
    fc.assert(
      fc.property(
        size(0.0003, 0.002),
        size(0.0003, 0.002),
        size(0.0004, 0.0015),
        size(0, 0.0005),
        (a, b, least, less) => {
          const rank = (cut: number): number => worse.indexOf(squishVerdict({ sides: [a - cut, b - cut], least }).kind);
          expect(rank(less)).toBeGreaterThanOrEqual(rank(0));
        },
      ),
    );
  });
});

describe('compression over the hours', () => {
  it('down from 10 to 8.9 bar is a tenth and more (by hand: 11 %): the top end is due', () => {
    const trend = known([hot(1, 10), hot(8, 8.9)]);
    expect(trend).toMatchObject({ kind: 'due', used: 2, leftOut: 0 });
    expect(trend.fall).toBeCloseTo(0.11, 12);
    expect(trend.line).toBeUndefined();
  });
  it('exactly a tenth is due, a little less cannot be told, little is not due', () => {
    expect(known([hot(1, 10), hot(8, 9)]).kind).toBe('due');
    expect(known([hot(1, 10), hot(8, 9.1)]).kind).toBe('cannot tell');
    expect(known([hot(1, 10), hot(8, 9.6)]).kind).toBe('not due');
  });
  it('holds the last against the best, wherever the best stands, in any order of writing', () => {
    const readings = [hot(0.5, 9.5), hot(2, 10.5), hot(6, 10), hot(4, 10.2)];
    expect(known(readings).fall).toBeCloseTo(1 - 10 / 10.5, 12);
    expect(known(readings.toReversed())).toEqual(known(readings));
    expect(known([hot(1, 9.8), hot(3, 10)])).toMatchObject({ kind: 'not due', fall: 0, half: 0 });
  });
  it('never mixes gauges, cold readings or a shut throttle, and counts what it left out', () => {
    const trend = known([
      hot(1, 10),
      hot(2, 13, { gauge: 'B' }),
      hot(3, 12, { hot: false }),
      hot(4, 12, { open: false }),
      { ran: 5 * 3600, pressure: 12e5, gauge: 'A' },
      hot(6, 9.8, { gauge: ' a ' }),
    ]);
    expect(trend).toMatchObject({ used: 2, leftOut: 4, kind: 'not due' });
  });
  it('is not known without two readings that can be compared, or when one is no reading', () => {
    expect(compressionTrend([])).toMatchObject({ why: 'no reading' });
    expect(compressionTrend([hot(1, 10)])).toMatchObject({ why: 'one reading' });
    expect(compressionTrend([hot(1, 10), hot(2, 9, { hot: false })])).toMatchObject({ why: 'last not hot and open' });
    expect(compressionTrend([hot(1, 10), hot(2, Number.NaN)])).toMatchObject({ why: 'not a reading' });
    expect(compressionTrend([hot(1, 10), hot(2, 0)])).toMatchObject({ why: 'not a reading' });
    expect(compressionTrend([hot(-1, 10), hot(2, 9)])).toMatchObject({ why: 'not a reading' });
  });
  it('on a straight line gives the slope back, no scatter, and the hour a tenth is gone', () => {
    fc.assert(
      fc.property(size(8, 14), size(0.01, 0.2), fc.integer({ min: 3, max: 12 }), (start, rate, n) => {
        const trend = known(Array.from({ length: n }, (_, hour) => hot(hour, start - rate * hour)));
        expect((trend.line?.rate ?? 0) * 3600).toBeCloseTo(-rate * 1e5, 4);
        expect((trend.line?.half ?? 1) * 3600).toBeLessThan(1);
        expect((trend.until ?? 0) / 3600 / ((0.1 * start) / rate)).toBeCloseTo(1, 6);
      }),
    );
  });
  it('has the line and its 95 % limits of a table worked by hand', () => {
    // Readings 10, 9.8, 9.9 at 0, 1, 2 h: slope -0.05, residuals 0.05, -0.1, 0.05, s = √0.015, limits 12.706 s/√2.
    const { line } = known([hot(0, 10), hot(1, 9.8), hot(2, 9.9)]);
    expect((line?.rate ?? 0) * 3600).toBeCloseTo(-5000, 4);
    expect(((line?.half ?? 0) * 3600) / 1e5).toBeCloseTo((12.706 * Math.sqrt(0.015)) / Math.sqrt(2), 3);
  });
  it('falls never, on a line that rises', () => {
    expect(known([hot(0, 9.5), hot(1, 9.6), hot(2, 9.8)]).until).toBe(Number.POSITIVE_INFINITY);
  });
});
