import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { type DriveOptions, type DriveRow, drive } from '../../../test/drive.ts';
import { csvOf, imported } from '../../../test/drive-files.ts';
import type { Trace } from '../model.ts';
import {
  type Gate,
  gateBetween,
  lapsOf,
  motionOf,
  overLaps,
  planeAt,
  planeError,
  proposeGate,
  receiverFor,
  spreadOf,
  turnedRound,
} from './index.ts';

/** As it is driven, without the digits of a file. */
function traceOf(rows: readonly DriveRow[], columns: readonly ('speed' | 'heading')[] = ['speed', 'heading']): Trace {
  const column = (of: (row: DriveRow) => number): Float64Array => Float64Array.from(rows, of);
  const radians = Math.PI / 180;
  return {
    zero: { kind: 'no date' },
    time: column(({ time }) => time),
    lat: column(({ lat }) => lat * radians),
    lon: column(({ lon }) => lon * radians),
    ...(columns.includes('speed') && { speed: column(({ speed }) => speed) }),
    ...(columns.includes('heading') && { heading: column(({ heading }) => heading * radians) }),
  };
}
const timesOf = (options: DriveOptions): readonly number[] => {
  const { rows, gates } = drive(options);
  return lapsOf(traceOf(rows), gates).laps.map(({ time }) => time);
};
const without = (rows: readonly DriveRow[], from: number, to: number): readonly DriveRow[] =>
  rows.filter(({ time }) => time < from || time > to);

describe('the flat map', () => {
  test('comes back from every place, and says how far it is wrong', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1.5, max: 1.5, noNaN: true }),
        fc.double({ min: -3.14, max: 3.14, noNaN: true }),
        fc.tuple(fc.double({ min: -5000, max: 5000, noNaN: true }), fc.double({ min: -5000, max: 5000, noNaN: true })),
        (lat, lon, [x, y]) => {
          const plane = planeAt({ lat, lon }, 300);
          const { lat: toLat, lon: toLon } = plane.back({ x, y });
          const again = plane.forward(toLat, toLon);
          expect(Math.hypot(again.x - x, again.y - y)).toBeLessThan(1e-6);
        },
      ),
    );
    expect(planeError(1000)).toBeLessThan(5e-6);
    expect(planeError(5000)).toBeCloseTo(0.00052, 5);
  });
  test('of no place throws', () => {
    expect(() => planeAt({ lat: 2, lon: 0 })).toThrow(/planeAt: lat and lon must be/);
  });
});

describe('lap times of a drive without error', () => {
  test('are those of its formula, with and without speed and course in the log', () => {
    for (const [rate, columns, most] of [
      [10, ['speed', 'heading'], 1e-4],
      [10, ['speed'], 1e-3],
      [10, [], 1e-3],
      [1, ['speed', 'heading'], 0.02],
    ] as const) {
      const { rows, gates, laps } = drive({ rate, laps: 6 });
      const found = lapsOf(traceOf(rows, columns), gates).laps;
      expect(found.length).toBe(6);
      found.forEach(({ time, sectors }, n) => {
        expect(Math.abs(time - (laps[n]?.time ?? Number.NaN))).toBeLessThan(most);
        expect(Math.abs((sectors[0] ?? Number.NaN) - (laps[n]?.sectors[0] ?? Number.NaN))).toBeLessThan(most);
      });
    }
  });
  test('do not know what time it is', () => {
    const now = timesOf({});
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), later => {
        timesOf({ later }).forEach((time, n) => {
          expect(time).toBeCloseTo(now[n] ?? Number.NaN, 6);
        });
      }),
      { numRuns: 20 },
    );
  });
  test('do not know where on the earth the loop lies, nor how it is turned', () => {
    const here = timesOf({});
    const lat = fc.double({ min: -1.4, max: 1.4, noNaN: true });
    fc.assert(
      fc.property(
        lat,
        fc.double({ min: -3, max: 3, noNaN: true }),
        fc.double({ min: 0, max: 6.28, noNaN: true }),
        (lat, lon, turned) => {
          const there = timesOf({ at: { lat, lon }, turned });
          expect(there.length).toBe(here.length);
          there.forEach((time, n) => {
            expect(Math.abs(time - (here[n] ?? Number.NaN))).toBeLessThan(1e-5);
          });
        },
      ),
      { numRuns: 40 },
    );
  });
  test('are found over the 180th meridian', () => {
    expect(timesOf({ at: { lat: 0.5, lon: Math.PI } }).length).toBe(5);
  });
});

describe('a gate', () => {
  const { rows, gates } = drive({ laps: 4 });
  const trace = traceOf(rows);
  test('driven through the other way counts nothing, and two points are turned the way the kart goes', () => {
    expect(lapsOf(trace, [turnedRound(gates[0])]).laps).toEqual([]);
    for (const { left, right } of [gates[0], turnedRound(gates[0])])
      expect(gateBetween(motionOf(trace), left, right)).toEqual(gates[0]);
  });
  test('that no lap crosses gives no lap and says what to do', () => {
    const far: Gate = { left: { lat: 0.71, lon: 0.2 }, right: { lat: 0.71, lon: 0.200001 } };
    const { laps, say, outings } = lapsOf(trace, [far]);
    expect(laps).toEqual([]);
    expect(outings).toEqual([{ from: trace.time[0], to: trace.time.at(-1), laps: [] }]);
    expect(say).toEqual([expect.stringMatching(/^No lap crosses this gate: set it/)]);
  });
  test('narrower than a kart is a slip and throws', () => {
    expect(() => lapsOf(trace, [{ left: gates[0].left, right: gates[0].left }])).toThrow(/gate must be 1 m to 200 m/);
  });
  test('is not proposed where the way never comes back', () => {
    const straight = rows.map((row, n) => ({ ...row, lat: 45 + n * 1e-5, lon: 9, heading: 0 }));
    expect(proposeGate(motionOf(traceOf(straight)))).toMatchObject({ kind: 'no gate' });
  });
  test('crossed while the kart stands and wanders on it counts once', () => {
    const on = drive({ laps: 4 }).laps[2]?.start ?? 0;
    const n = rows.findIndex(({ time }) => time > on);
    const place = rows[n];
    if (place === undefined) throw new Error('the lap must be in the drive');
    const wait = Array.from({ length: 200 }, (_, k) => ({
      ...place,
      time: place.time + (k + 1) * 0.1,
      lat: place.lat + 3e-5 * Math.sin(k * 2.1),
      lon: place.lon + 3e-5 * Math.cos(k * 1.3),
      speed: 0.3,
    }));
    const waited = [
      ...rows.slice(0, n + 1),
      ...wait,
      ...rows.slice(n + 1).map(row => ({ ...row, time: row.time + 20 })),
    ];
    const { laps } = lapsOf(traceOf(waited), gates);
    expect(laps).toHaveLength(4);
    expect(laps.map(({ doubts }) => doubts)).toEqual([[], [], ['stood still'], []]);
  });
});

describe('a hole', () => {
  const { rows, gates, laps: truth } = drive({ laps: 6 });
  const start = (lap: number): number => truth[lap - 1]?.start ?? Number.NaN;
  const doubts = (of: readonly DriveRow[]) => lapsOf(traceOf(of), gates).laps.map(lap => lap.doubts);
  test('over the gate marks the laps on both sides', () => {
    expect(doubts(without(rows, start(3) - 0.4, start(3) + 0.5))).toEqual([
      [],
      ['hole at the gate'],
      ['hole at the gate'],
      [],
      [],
      [],
    ]);
  });
  test('of some seconds over the gate loses no lap and invents none, and the spread holds the truth', () => {
    for (const long of [0.6, 1, 2, 3, 4])
      for (let lap = 2; lap <= 6; lap++)
        for (const share of [0.2, 0.5, 0.8]) {
          const from = start(lap) - share * long;
          const found = lapsOf(traceOf(without(rows, from, from + long)), gates).laps;
          expect(found.length).toBe(6);
          const { time, spread } = found[lap - 2] ?? { time: Number.NaN, spread: Number.NaN };
          expect(Math.abs(time - (truth[lap - 2]?.time ?? Number.NaN))).toBeLessThan(3 * spread);
        }
  });
  test('inside a lap marks that lap, and its time stays', () => {
    const holed = lapsOf(traceOf(without(rows, start(3) + 10, start(3) + 12)), gates).laps;
    expect(holed.map(lap => lap.doubts)).toEqual([[], [], ['hole inside'], [], [], []]);
    expect(holed[2]?.time).toBeCloseTo(truth[2]?.time ?? Number.NaN, 4);
    expect(holed[2]?.holes).toHaveLength(1);
  });
  test('that hides a crossing marks the long lap as more than one', () => {
    const found = doubts(without(rows, start(3) - 15, start(3) + 15));
    expect(found).toEqual([[], ['hole inside', 'may be more than one lap'], [], [], []]);
  });
  test('of more than a minute parts the log into outings, and no lap goes over it', () => {
    const parted = rows.map(row => (row.time > start(3) + 10 ? { ...row, time: row.time + 600 } : row));
    const { laps, outings } = lapsOf(traceOf(parted), gates);
    expect(outings.map(outing => outing.laps.length)).toEqual([2, 3]);
    expect(laps.map(({ number, outing }) => [number, outing])).toEqual([
      [1, 1],
      [2, 1],
      [3, 2],
      [4, 2],
      [5, 2],
    ]);
  });
});

describe('the spread of a lap time', () => {
  const crossing = (time: number, speed = 30) => ({ time, speed, fix: 0, left: 0, over: 0.04 });
  test('falls with the speed at the gate and grows with the error of the receiver', () => {
    const receiver = receiverFor(0.1);
    const at = (speed: number) => spreadOf(crossing(0, speed), crossing(40, speed), receiver);
    expect(at(15)).toBeCloseTo(2 * at(30), 10);
    expect(spreadOf(crossing(0), crossing(40), { ...receiver, slow: 2 })).toBeGreaterThan(at(30));
  });
  test("follows the receiver's own word on its accuracy before what is assumed of its rate", () => {
    expect(receiverFor(0.1)).toEqual({ slow: 0.8, memory: 60, quick: 0.15 });
    expect(receiverFor(0.1, 0.03).slow).toBeCloseTo(0.02, 2);
    expect(receiverFor(1).slow).toBeGreaterThan(receiverFor(0.2).slow);
    expect(() => receiverFor(0)).toThrow(/step must be above 0 s/);
  });
  test('of a mean over laps on end is that of its ends over their number', () => {
    const crossings = [0, 40, 80, 120].map(time => crossing(time));
    const { mean, spread } = overLaps(crossings, receiverFor(0.1));
    expect(mean).toBe(40);
    expect(spread).toBeLessThan(spreadOf(crossing(0), crossing(40), receiverFor(0.1)) / Math.sqrt(3));
    expect(() => overLaps([crossing(0)], receiverFor(0.1))).toThrow(/two or more/);
  });

  for (const [rate, error] of [
    [1, { slow: 1.5, memory: 60, quick: 0.5, speed: 0.15 }],
    [5, { slow: 1.0, memory: 60, quick: 0.3, speed: 0.1 }],
    [10, { slow: 0.8, memory: 60, quick: 0.15, speed: 0.06 }],
    [25, { slow: 0.5, memory: 60, quick: 0.08, speed: 0.05 }],
  ] as const)
    test(`at ${rate} a second holds the truth 95 times of 100, when the receiver is as assumed; no lap is missed or invented`, () => {
      let [inside, all] = [0, 0];
      for (let seed = 1; seed <= 60; seed++) {
        const { rows, gates, laps: truth } = drive({ rate, error, seed, laps: 8 });
        const { laps } = lapsOf(traceOf(rows), gates);
        expect(laps.length).toBe(8);
        laps.forEach(({ time, spread }, n) => {
          all++;
          if (Math.abs(time - (truth[n]?.time ?? Number.NaN)) <= 1.96 * spread) inside++;
        });
      }
      expect(inside / all).toBeGreaterThan(0.92);
      expect(inside / all).toBeLessThan(0.98);
    });
});

test('a log that was written and read again has the same laps', () => {
  const { rows, gates } = drive({ laps: 3 });
  const read = lapsOf(imported(csvOf(rows)).trace, gates).laps;
  lapsOf(traceOf(rows), gates).laps.forEach(({ time }, n) => {
    expect(read[n]?.time).toBeCloseTo(time, 4);
  });
});
