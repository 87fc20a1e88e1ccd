import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drive } from '../../../test/drive.ts';
import { bytesOf, csvOf, gpxOf, imported, nmeaOf, readLog, skipped } from '../../../test/drive-files.ts';
import { importLog, LogImport } from './index.ts';

const { rows } = drive({ laps: 2, rate: 4 });
const FILES = { csv: csvOf(rows), gpx: gpxOf(rows), nmea: nmeaOf(rows) };
const formats = Object.entries(FILES) as [keyof typeof FILES, string][];

describe('every format', () => {
  for (const [format, text] of formats)
    test(`${format} gives the places, times and speeds that were written`, () => {
      const { trace, ...read } = imported(text);
      expect(read).toMatchObject({ format, skipped: [], notes: [] });
      expect(trace.time.length).toBe(rows.length);
      rows.forEach((row, n) => {
        expect(trace.time[n]).toBeCloseTo(row.time, format === 'csv' ? 5 : 2);
        expect(((trace.lat[n] ?? 0) * 180) / Math.PI).toBeCloseTo(row.lat, 8);
        expect(((trace.lon[n] ?? 0) * 180) / Math.PI).toBeCloseTo(row.lon, 8);
        if (format !== 'gpx') expect(trace.speed?.[n]).toBeCloseTo(row.speed, 3);
      });
    });

  for (const [format, text] of formats)
    test(`${format} is the same however its bytes are cut into pieces`, () => {
      // With letters of several bytes and both kinds of line end where the format allows them.
      const bytes = bytesOf(
        format === 'gpx'
          ? text.replace('<trk>', '<trk><name>Ö 🏁 &amp;</name>')
          : text.replaceAll('\n', '\r\n').replace('rpm', 'Drehzahl Ömür 🏁'),
      );
      const whole = imported(bytes);
      fc.assert(
        fc.property(fc.array(fc.nat(bytes.length), { maxLength: 40 }), cuts => {
          expect(imported(bytes, { cuts: cuts.toSorted((a, b) => a - b) })).toEqual(whole);
        }),
        { numRuns: 15 },
      );
      const every = Array.from({ length: Math.min(bytes.length, 20_000) }, (_, n) => n);
      expect(imported(bytes, { cuts: every })).toEqual(whole);
    });

  for (const [format, text] of formats.filter(([each]) => each !== 'gpx'))
    test(`${format}: lines of rubbish between the others change counts and nothing else`, () => {
      const whole = imported(text);
      const lines = text.split('\n');
      const rubbish = fc.constantFrom('', '???', 'pit stop', '$GPTXT,1', '1,2', '###', '\u0000\u0000\u0000', '-;-;-');
      fc.assert(
        fc.property(
          fc.array(fc.tuple(fc.integer({ min: 3, max: lines.length - 2 }), rubbish), { maxLength: 20 }),
          junk => {
            const mixed = lines.slice();
            for (const [at, line] of junk.toSorted((a, b) => b[0] - a[0])) mixed.splice(at, 0, line);
            const read = imported(mixed.join('\n'));
            expect(read.trace).toEqual(whole.trace);
            expect(read.skipped.reduce((sum, { count }) => sum + count, 0)).toBe(junk.length);
          },
        ),
        { numRuns: 30 },
      );
    });

  for (const [format, text] of formats)
    test(`${format} cut off anywhere gives the fixes before the cut, or says what is missing`, () => {
      const bytes = bytesOf(text);
      const whole = imported(bytes);
      fc.assert(
        fc.property(fc.integer({ min: 0, max: bytes.length - 1 }), length => {
          const read = readLog(bytes.subarray(0, length));
          if (read.kind === 'not imported') {
            expect(read.problem.remedy).not.toBe('');
            return;
          }
          const { lat, time } = read.trace;
          expect(lat).toEqual(whole.trace.lat.subarray(0, lat.length));
          expect(time).toEqual(whole.trace.time.subarray(0, time.length));
          if (format === 'gpx' && length <= text.lastIndexOf('>'))
            expect(read.stopped?.got).toMatch(/the end of the file/);
        }),
        { numRuns: 40 },
      );
    });
});

describe('what is no log', () => {
  const got = (log: string | Uint8Array): string => {
    const read = readLog(log);
    return read.kind === 'imported' ? 'a log' : `${read.problem.got} / ${read.problem.remedy}`;
  };
  test('is named, with what to do', () => {
    expect(got('')).toMatch(/^an empty file/);
    expect(got(' \r\n\n')).toMatch(/^nothing but white space/);
    expect(got('<!DOCTYPE html><html><body>Please sign in</body></html>')).toMatch(
      /^a web page .* save the file itself/,
    );
    expect(got(Uint8Array.of(0x50, 0x4b, 3, 4, 0, 0))).toMatch(/^a zip archive or a spreadsheet .* unpack/);
    expect(got(Uint8Array.from({ length: 5000 }, (_, n) => (n * 31) % 256))).toMatch(/^a binary file/);
    expect(got('dear diary\nthe kart was fast today\n')).toMatch(/^none in the first 100 lines/);
    expect(got('<kml><Document/></kml>')).toMatch(/^<kml>/);
    expect(got('time,lat,lon\n1,2,x\n')).toMatch(/^fewer/);
  });

  test('bytes of any kind never throw, and give a log or a problem', () => {
    const start = fc.constantFrom('', 'time,lat,lon\n', '<gpx>', '$GPRMC,', '<?xml version="1.0"?>');
    fc.assert(
      fc.property(start, fc.uint8Array({ maxLength: 300 }), (text, bytes) => {
        const read = readLog(Uint8Array.of(...bytesOf(text), ...bytes));
        expect(['imported', 'not imported']).toContain(read.kind);
      }),
    );
  });
});

describe('letters', () => {
  const text = csvOf(rows).replace('speed_kmh', 'Geschwindigkeit über Grund [km/h]').replace('rpm', 'Längs');
  test('in Latin-1 are read and said', () => {
    const read = imported(Uint8Array.from(text, letter => letter.charCodeAt(0)));
    expect(read.notes).toEqual(['Some letters are no UTF-8; they are read as Latin-1.']);
    expect(read.layout?.unread).toEqual(['Geschwindigkeit über Grund [km/h]', 'Längs']);
  });
  test('in UTF-16 of either order, with and without a mark, are read', () => {
    const plain = imported(csvOf(rows));
    for (const little of [true, false])
      for (const mark of ['\ufeff', '']) {
        const view = new DataView(new ArrayBuffer(2 * (csvOf(rows).length + mark.length)));
        [...(mark + csvOf(rows))].forEach((letter, n) => void view.setUint16(2 * n, letter.charCodeAt(0), little));
        expect(imported(new Uint8Array(view.buffer), { cuts: [1, 3, 20_001] }).trace).toEqual(plain.trace);
      }
  });
});

describe('a clock', () => {
  const lines = csvOf(rows).trimEnd().split('\n');
  const log = (body: readonly string[]): string => `${[lines[0], ...body].join('\n')}\n`;
  const body = lines.slice(1);
  const whole = imported(log(body));

  test('that slips back for some rows loses those rows', () => {
    const slipped = body.toSpliced(60, 0, ...body.slice(10, 15));
    const read = imported(log(slipped));
    expect(skipped(read)).toEqual({ backwards: 5 });
    expect(read.skipped[0]?.lines).toEqual([62, 63, 64, 65, 66]);
    expect(read.trace).toEqual(whole.trace);
  });
  test('that leaps ahead for a row loses that row', () => {
    const leapt = body.toSpliced(60, 0, (body[60] ?? '').replace(/^[^,]+/, '99999'));
    const read = imported(log(leapt));
    expect(skipped(read)).toEqual({ ahead: 1 });
    expect(read.trace).toEqual(whole.trace);
  });
  test('that runs backwards all the way is no log', () => {
    const read = readLog(log(body.toReversed()));
    expect(read).toMatchObject({ kind: 'not imported', skipped: [{ reason: 'backwards', count: body.length - 1 }] });
  });
  test('that puts the second half before the first is put right', () => {
    const half = body.length >> 1;
    const read = imported(log([...body.slice(half), ...body.slice(0, half)]));
    expect(read.trace).toEqual(whole.trace);
    expect(read.skipped).toEqual([]);
  });
  test('that begins anew counts the shorter recording out', () => {
    const read = imported(log([...body, ...body.slice(0, 50)]));
    expect(skipped(read)).toEqual({ overlap: 50 });
    expect(read.trace).toEqual(whole.trace);
  });
});

describe('a receiver', () => {
  test('that knows no place, or one off the earth, is not believed', () => {
    const text = csvOf(rows).trimEnd().split('\n');
    text.splice(5, 0, '0.1,0,0,0,0,0', '0.2,0.000001,-0.000001,0,0,0', '0.3,91,0,0,0,0', '0.4,5,181,0,0,0');
    const read = imported(`${text.join('\n')}\n`);
    expect(skipped(read)).toEqual({ 'no place': 2, 'off the earth': 2 });
    expect(read.trace).toEqual(imported(csvOf(rows)).trace);
  });

  const pair = (late: number) => {
    const one = drive({ laps: 2, rate: 5, error: { slow: 0.3, memory: 60, quick: 0.03, speed: 0 } });
    const other = {
      ...drive({ laps: 2, rate: 5 }),
      rows: one.rows.map(row => ({ ...row, time: row.time + late, lat: row.lat + 3e-5 })),
    };
    return { one, mixed: one.rows.flatMap((row, n) => [row, other.rows[n] ?? row]) };
  };
  test('that writes between the fixes of another is told by the zigzag and left out', () => {
    const { one, mixed } = pair(0.1);
    for (const text of [csvOf(mixed), nmeaOf(mixed)]) {
      const read = imported(text);
      expect(skipped(read)).toEqual({ 'second receiver': one.rows.length });
      expect(read.skipped[0]?.lines.slice(0, 2)).toEqual(text.startsWith('time') ? [3, 5] : [3, 7]);
      expect(read.trace.time.length).toBe(one.rows.length);
    }
  });
  test('that says another place at the same time is left out', () => {
    const { one, mixed } = pair(0);
    for (const text of [csvOf(mixed), nmeaOf(mixed)]) {
      const read = imported(text);
      expect(skipped(read)).toEqual({ 'two places': one.rows.length });
    }
  });
  test('alone is never taken for two, however it errs', () => {
    for (const rate of [1, 5, 10, 25])
      for (let seed = 0; seed < 5; seed++) {
        const error = { slow: 1.5, memory: 60, quick: 0.5, speed: 0.1 };
        expect(imported(csvOf(drive({ laps: 2, rate, seed, error }).rows)).skipped).toEqual([]);
      }
  });
});

describe('a long import', () => {
  async function* pieces(count: number) {
    for (let n = 0; n < count; n++) yield bytesOf(n === 0 ? FILES.csv : '');
  }
  test('tells how far it is, and is cancelled without leaving anything', async () => {
    const seen: number[] = [];
    const done = await importLog(pieces(3), { progress: ({ fixes }) => void seen.push(fixes) });
    expect(done.kind).toBe('imported');
    expect(seen).toEqual([rows.length, rows.length, rows.length]);
    expect(await importLog(pieces(3), { cancelled: () => true })).toEqual({ kind: 'cancelled' });
  });

  test('of what can be no log is given up at once', async () => {
    for (const first of ['<html><body>Sign in</body></html>'.padEnd(20_000), 'a,b\n1,2\n'.repeat(3000)]) {
      let given = 0;
      async function* endless() {
        for (; given < 100; given++) yield bytesOf(given === 0 ? first : 'a,b\n');
      }
      expect((await importLog(endless())).kind).toBe('not imported');
      expect(given).toBe(0);
    }
  });

  test('of lines without an end keeps none of them', () => {
    const into = new LogImport();
    into.push(bytesOf(FILES.csv));
    const noise = new Uint8Array(1 << 20).fill(0x31);
    for (let n = 0; n < 20; n++) into.push(noise);
    into.push(bytesOf('\n'));
    const read = into.finish();
    expect(skipped(read)).toEqual({ 'too long': 1 });
    expect(read.kind === 'imported' && read.trace).toEqual(imported(FILES.csv).trace);
  });
});
