/** Jumps put into drives and into every known log: they are counted and left out, and the laps are those of the log without. */
import { describe, expect, test } from 'vitest';
import { type DriveRow, drive } from '../../../test/drive.ts';
import { csvOf, imported, skipped } from '../../../test/drive-files.ts';
import { knownLogs } from '../../../test/lap-logs.ts';
import { lapsOf, type Trace } from '../index.ts';

const METRE = 180 / Math.PI / 6_371_000; // degrees of latitude
const away = (rows: readonly DriveRow[], these: readonly number[], metres: number): readonly DriveRow[] =>
  rows.map((row, n) => (these.includes(n) ? { ...row, lat: row.lat + metres * METRE } : row));
/** Time and place alone, without speed and course. */
const bare = (csv: string): string =>
  csv
    .split('\n')
    .map(line => line.split(',').slice(0, 3).join(','))
    .join('\n');
const run = (from: number, count: number): readonly number[] => Array.from({ length: count }, (_, n) => from + n);

describe('a fix that jumps away and comes back', () => {
  const error = { slow: 1, memory: 60, quick: 0.1, speed: 0.05 };
  for (const rate of [1, 5, 10, 25])
    for (const how of ['with speed and course', 'with time and place alone'])
      test(`at ${rate} a second ${how} is counted with its line and left out`, () => {
        const { rows } = drive({ laps: 4, rate, error });
        const write = (of: readonly DriveRow[]): string => (how.endsWith('alone') ? bare(csvOf(of)) : csvOf(of));
        const these = [40, ...run(60, 2), ...run(90, rate === 1 ? 1 : 5)];
        const read = imported(write(away(rows, these, 60)));
        expect(skipped(read)).toEqual({ jumped: these.length });
        expect(read.skipped[0]?.lines).toEqual(these.slice(0, 5).map(n => n + 2));
        expect(read.trace).toEqual(imported(write(rows.filter((_, n) => !these.includes(n)))).trace);
      });

  test('at the very beginning and end of a log is one too', () => {
    const { rows } = drive({ rate: 10 });
    const last = rows.length - 1;
    expect(skipped(imported(csvOf(away(rows, [0, 1, last], 500))))).toEqual({ jumped: 3 });
  });
  test('for more than five fixes is where the receiver believes to be, and nothing is left out', () => {
    const { rows } = drive({ rate: 10 });
    expect(imported(csvOf(away(rows, run(100, 12), 40))).skipped).toEqual([]);
    expect(imported(csvOf(away(rows, run(100, rows.length), 40))).skipped).toEqual([]);
  });
  test('and after a minute without fixes the kart may be anywhere', () => {
    const { rows } = drive({ rate: 10 });
    const text = csvOf(rows.filter(({ time }) => time < 60 || time > 120));
    expect(imported(text).skipped).toEqual([]);
  });
  test('none is seen in driving, however bad the receiver', () => {
    for (const rate of [1, 5, 10, 25])
      for (const quick of [0, 0.5, 1])
        for (const seed of [1, 2, 3]) {
          const { rows } = drive({ laps: 3, rate, seed, error: { ...error, quick } });
          expect(imported(csvOf(rows)).skipped).toEqual([]);
          expect(imported(bare(csvOf(rows))).skipped).toEqual([]);
        }
  });
});

describe('in every known log', () => {
  const rowsOf = ({ time, lat, lon, speed, heading }: Trace): readonly DriveRow[] =>
    Array.from(time, (at, n) => ({
      time: at,
      lat: ((lat[n] as number) * 180) / Math.PI,
      lon: ((lon[n] as number) * 180) / Math.PI,
      speed: speed?.[n] ?? Number.NaN,
      heading: ((heading?.[n] ?? Number.NaN) * 180) / Math.PI,
      rpm: 0,
    }));
  for (const { file, bytes, gates, laps } of knownLogs().logs)
    test(`${file}: with a jump at each crossing no lap is missed and none invented`, () => {
      const { trace } = imported(bytes);
      const whole = lapsOf(trace, gates).laps;
      const hit = whole.filter((_, n) => n % 2 === 1).flatMap(({ start: { fix } }) => [fix, fix + 1]);
      for (const metres of [90, -90]) {
        const read = imported(csvOf(away(rowsOf(trace), hit, metres)));
        const found = lapsOf(read.trace, gates).laps;
        expect(found).toHaveLength(laps.length);
        found.forEach(({ time, spread }, n) => {
          expect(Math.abs(time - (laps[n]?.time ?? Number.NaN))).toBeLessThan(4 * spread);
        });
        expect(skipped(read).jumped).toBe(hit.length);
      }
    });
});
