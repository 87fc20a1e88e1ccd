import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { drive } from '../../../../test/drive.ts';
import { csvOf, imported, readLog, skipped } from '../../../../test/drive-files.ts';
import { type CsvLayout, proposeLayout, unitsFor } from '../index.ts';
import { cellsOf, numberOf, SEPARATORS } from './cells.ts';
import { meaningOf } from './words.ts';

const { rows } = drive({ laps: 1, rate: 5 });
/** The same rows under another header, each cell as it is written there. */
const written = (header: string, cells: (row: (typeof rows)[number]) => string): string =>
  [header, ...rows.map(cells), ''].join('\n');
const layoutOf = (text: string): CsvLayout | undefined => imported(text).layout;
const degrees = (radians: number | undefined): number => ((radians ?? Number.NaN) * 180) / Math.PI;

describe('a heading', () => {
  for (const [heading, role, unit] of [
    ['time_s', 'time', 's'],
    ['Time (ms)', 'time', 'ms'],
    ['UTC', 'time', undefined],
    ['GPS Time', 'time', undefined],
    ['"Latitude [deg]"', 'lat', 'deg'],
    ['Länge [°]', 'lon', '°'],
    ['Laengengrad', 'lon', undefined],
    ['GPS speed (m/s)', 'speed', 'm/s'],
    ['Speed in mph', 'speed', 'mph'],
    ['Speed over ground [kn]', 'speed', 'kn'],
    ['speed_kmh', 'speed', 'kmh'],
    ['Vitesse (km/h)', 'speed', 'km/h'],
    ['Drehzahl [U/min]', 'rotation', 'u/min'],
    ['RPM', 'rotation', undefined],
    ['Altitude (m)', 'height', 'm'],
  ] as const)
    test(`${heading} says ${role}${unit ? ` in ${unit}` : ''}`, () => {
      expect(meaningOf(heading)).toEqual(unit ? { role, unit } : { role });
    });
  test('of something else says nothing', () => {
    for (const heading of ['water temp', 'lap', 'sats', 'throttle_pct', 'g lat', '', 'brake [bar]'])
      expect(meaningOf(heading)).toBeUndefined();
  });
});

describe('cells', () => {
  test('come back as they were written, quotes, separators and all', () => {
    const cell = fc.string({ maxLength: 8 }).map(text => text.replace(/[\r\n]/g, ' '));
    fc.assert(
      fc.property(
        fc.array(cell, { minLength: 1, maxLength: 6 }),
        fc.constantFrom(...SEPARATORS),
        (cells, separator) => {
          const line = cells.map(each => `"${each.replaceAll('"', '""')}"`).join(separator);
          expect(cellsOf(line, separator)).toEqual(cells);
        },
      ),
    );
  });
  test('are numbers with the one decimal mark and never with the other', () => {
    expect(numberOf(' -12.5 ', '.')).toBe(-12.5);
    expect(numberOf('45,00094728', ',')).toBe(45.00094728);
    for (const cell of ['', ' ', '1,5', '0x10', '1.2.3', 'Infinity', '1 000']) expect(numberOf(cell, '.')).toBeNaN();
    for (const cell of ['1.5', '1.234,5']) expect(numberOf(cell, ',')).toBeNaN();
  });
});

describe('separated values', () => {
  test('are read with every separator and decimal mark that can be told apart', () => {
    const plain = imported(csvOf(rows)).trace;
    for (const [separator, mark] of [
      [';', ','],
      [';', '.'],
      ['\t', ','],
      ['\t', '.'],
      ['|', '.'],
    ] as const) {
      const text = csvOf(rows)
        .replaceAll(',', separator)
        .replaceAll(/(?<=\d)\.(?=\d)/g, mark);
      expect(imported(text).trace).toEqual(plain);
    }
  });
  test('with decimal commas in quotes between commas are read', () => {
    const text = written('time_s,lat,lon', ({ time, lat, lon }) => `"${time}","${lat}","${lon}"`.replaceAll('.', ','));
    expect(imported(text).trace.lat).toEqual(
      imported(written('time_s,lat,lon', r => `${r.time},${r.lat},${r.lon}`)).trace.lat,
    );
  });
  test('with a comma for thousands in one column lose that number and no other', () => {
    const text = written('time_s;lat;lon;rpm', ({ time, lat, lon }) => `${time};${lat};${lon};12,500`);
    expect(imported(text).trace.rotation).toBeUndefined();
  });
  test('may have lines above the header, and a line of units below it', () => {
    const text = `Session 3\nkart;41\n\n${csvOf(rows).replace('time_s,lat_deg,lon_deg,speed_kmh,heading_deg,rpm', 'time,lat,lon,speed,heading,revs\ns,deg,deg,km/h,deg,rpm')}`;
    const read = imported(text);
    expect(read.trace).toEqual(imported(csvOf(rows)).trace);
    expect(skipped(read)).toEqual({ 'before the header': 3, units: 1 });
    expect(read.layout?.columns.speed).toEqual({ heading: 'speed', unit: 'km/h' });
  });
  test('lose rows with too few or too many cells, and keep those that end in an empty one', () => {
    const lines = csvOf(rows).trimEnd().split('\n');
    lines[3] = '1.0,44.9';
    lines[4] += ',7,7';
    lines[5] += ',';
    const read = imported(`${lines.join('\n')}\n`);
    expect(skipped(read)).toEqual({ fields: 2 });
    expect(read.skipped[0]?.lines).toEqual([4, 5]);
  });
  test('leave out a last line that may be cut', () => {
    const read = imported(csvOf(rows).trimEnd().slice(0, -3));
    expect(skipped(read)).toEqual({ unfinished: 1 });
    expect(read.trace.time.length).toBe(rows.length - 1);
  });
  test('count the columns that nobody asked for, and say when two say the same', () => {
    const layout = layoutOf(
      written('time_s,lat,lon,speed,gps speed,water temp', r => `${r.time},${r.lat},${r.lon},1,2,55`),
    );
    expect(layout?.unread).toEqual(['gps speed', 'water temp']);
    expect(layout?.doubts[0]).toBe('Both "speed" and "gps speed" say speed: the first is read.');
  });
});

describe('times', () => {
  const at = (header: string, cell: (seconds: number) => string) => {
    const { trace, notes } = imported(
      written(`${header},lat,lon`, ({ time, lat, lon }) => `${cell(time)},${lat},${lon}`),
    );
    return { zero: trace.zero, first: trace.time[0] ?? Number.NaN, last: trace.time.at(-1) ?? Number.NaN, notes };
  };
  const [first, last] = [rows[0]?.time ?? 0, rows.at(-1)?.time ?? 0];
  const day = Date.UTC(2025, 5, 14) / 1000;
  const iso = (seconds: number): string => new Date(Math.round((day + seconds) * 1000)).toISOString();

  test('in seconds, or in milliseconds with and without saying so, count from where the file does', () => {
    for (const [header, cell] of [
      ['time_s', (s: number) => String(s)],
      ['time_ms', (s: number) => (s * 1000).toFixed(0)],
      ['time', (s: number) => (s * 1000).toFixed(0)],
    ] as const) {
      const read = at(header, cell);
      expect(read.zero).toEqual({ kind: 'no date' });
      expect(read.first).toBeCloseTo(first, 3);
      expect(read.last).toBeCloseTo(last, 3);
    }
  });
  test('since 1970, in seconds or milliseconds, are a day and what is on it', () => {
    for (const [header, cell] of [
      ['timestamp', (s: number) => (day + s).toFixed(3)],
      ['unix_ms', (s: number) => ((day + s) * 1000).toFixed(0)],
      ['epoch', (s: number) => ((day + s) * 1000).toFixed(0)],
    ] as const) {
      const read = at(header, cell);
      expect(read.zero).toEqual({ kind: 'day', day: '2025-06-14' });
      expect(read.first).toBeCloseTo(first, 3);
      expect(read.last).toBeCloseTo(last, 3);
    }
  });
  test('with a date are a day, and a zone is taken into account or said to be missing', () => {
    const zulu = at('time', iso);
    expect(zulu).toMatchObject({ zero: { kind: 'day', day: '2025-06-14' }, notes: [] });
    expect(zulu.first).toBeCloseTo(first, 3);
    const east = at('time', s => iso(s + 7200).replace('Z', '+02:00'));
    expect(east).toEqual(zulu);
    expect(at('time', s => iso(s).replace('T', ' ').replace('Z', '')).notes).toEqual([
      'The times name no zone; they are read as UTC.',
    ]);
  });
  test('of day go on over midnight', () => {
    const clock = (s: number): string => iso(s + 86_380).slice(11, 23);
    const read = at('Uhrzeit', clock);
    expect(read.zero).toEqual({ kind: 'no date' });
    expect(read.first).toBeCloseTo(86_380 + first, 3);
    expect(read.last - read.first).toBeCloseTo(last - first, 2);
  });
  test('of day beside a date are of that day', () => {
    const read = at('date,time', s => `14.06.2025,${iso(s).slice(11, 23)}`);
    expect(read.zero).toEqual({ kind: 'day', day: '2025-06-14' });
    expect(read.first).toBeCloseTo(first, 3);
  });
});

describe('a speed without a unit', () => {
  for (const [unit, one] of [
    ['m/s', 1],
    ['km/h', 1 / 3.6],
    ['mph', 0.44704],
    ['kn', 1852 / 3600],
  ] as const)
    test(`in ${unit} is told by the places`, () => {
      const read = imported(written('time_s,lat,lon,speed', r => `${r.time},${r.lat},${r.lon},${r.speed / one}`));
      expect(read.notes).toEqual([`The speed names no unit; by the places it is in ${unit}.`]);
      expect(read.trace.speed?.[7]).toBeCloseTo(rows[7]?.speed ?? Number.NaN, 6);
    });
  test('that fits no unit is not used', () => {
    const read = imported(written('time_s,lat,lon,speed', r => `${r.time},${r.lat},${r.lon},${r.speed * 9}`));
    expect(read.trace.speed).toBeUndefined();
    expect(read.notes[0]).toMatch(/fits the places in none/);
  });
});

describe('a choice of columns', () => {
  const text = written('a,b,c,d', r => `${r.time},${r.lat},${r.lon},${r.speed * 3.6}`);
  test('is asked for where headings say nothing, with all that there is', () => {
    const read = readLog(text);
    expect(read).toMatchObject({
      kind: 'not imported',
      problem: { line: 1, expected: 'columns for time, lat, lon', got: '"a", "b", "c", "d"' },
      layout: { headings: ['a', 'b', 'c', 'd'], signature: ', a | b | c | d' },
    });
  });
  test('once made, serves every file with the same header', () => {
    const chosen = new Map<string, CsvLayout>();
    const proposed = proposeLayout(text.split('\n').slice(0, 20));
    if (proposed === undefined) throw new Error('a layout must be proposed');
    chosen.set(proposed.layout.signature, {
      ...proposed.layout,
      columns: {
        time: { heading: 'a', unit: 's' },
        lat: { heading: 'b' },
        lon: { heading: 'c' },
        speed: { heading: 'd', unit: 'km/h' },
      },
    });
    const read = imported(text, { layout: ({ signature }) => chosen.get(signature) });
    expect(read.trace.speed?.[3]).toBeCloseTo(rows[3]?.speed ?? Number.NaN, 9);
    expect(degrees(read.trace.lat[3])).toBeCloseTo(rows[3]?.lat ?? Number.NaN, 9);
  });
  test('with a column or a unit that is not there is refused', () => {
    const with_ = (columns: CsvLayout['columns']) => readLog(text, { layout: proposed => ({ ...proposed, columns }) });
    const three = { time: { heading: 'a' }, lat: { heading: 'b' }, lon: { heading: 'c' } };
    expect(with_({ ...three, lon: { heading: 'x' } })).toMatchObject({ problem: { expected: 'a column "x"' } });
    expect(with_({ ...three, speed: { heading: 'd', unit: 'furlongs' } })).toMatchObject({
      problem: { got: '"furlongs"' },
    });
    expect(unitsFor('speed')).toContain('km/h');
  });
});
