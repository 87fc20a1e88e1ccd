import { describe, expect, test } from 'vitest';
import { drive } from '../../../../test/drive.ts';
import { imported, nmeaOf, sentence, skipped } from '../../../../test/drive-files.ts';
import { degreesOf, secondsOf } from './sentence.ts';

const { rows } = drive({ laps: 1, rate: 5 });
const whole = imported(nmeaOf(rows));

describe('places and times', () => {
  test('are told from nothing and from nonsense', () => {
    expect(degreesOf('4807.038', 'N')).toBeCloseTo(48.1173, 10);
    expect(degreesOf('01131.000', 'W')).toBeCloseTo(-(11 + 31 / 60), 12);
    for (const [text, side] of [
      ['', 'N'],
      ['4807.038', ''],
      ['4860.0', 'N'],
      ['48x7.0', 'N'],
      ['7.038', 'N'],
      ['-4807.0', 'N'],
    ] as const)
      expect(degreesOf(text, side)).toBeNaN();
    expect(secondsOf('235959.99')).toBeCloseTo(86_399.99, 9);
    for (const text of ['', '240000', '126000', '120061', 'abcdef', '1234']) expect(secondsOf(text)).toBeNaN();
  });
});

describe('sentences', () => {
  test('of any talker say the same', () => {
    for (const talker of ['GP', 'GL', 'GA', 'GB', 'QZ', 'II'])
      expect(imported(nmeaOf(rows, { talker })).trace).toEqual(whole.trace);
  });
  test('in any order and company make one fix a time', () => {
    for (const sentences of ['GGA RMC', 'RMC', 'RMC GGA VTG', 'GGA VTG RMC']) {
      const { trace } = imported(nmeaOf(rows, { sentences }));
      expect(trace.time).toEqual(whole.trace.time);
      expect(trace.lat).toEqual(whole.trace.lat);
      expect(trace.speed?.[5]).toBeCloseTo(rows[5]?.speed ?? Number.NaN, 3);
    }
  });
  test('without a date are of a day that is not known, with the speed that VTG says', () => {
    const read = imported(nmeaOf(rows, { sentences: 'GGA VTG' }));
    expect(read.trace.zero).toEqual({ kind: 'no date' });
    expect(read.notes).toEqual(['No sentence says the date; times are of a day that is not known.']);
    expect(read.trace.speed).toEqual(imported(nmeaOf(rows, { sentences: 'RMC VTG' })).trace.speed);
  });
  test('behind what a logger writes before them, and beside others, are found', () => {
    const text =
      nmeaOf(rows).replaceAll('$', '2026-05-09 10:00 | $') +
      sentence('PXYZ,1') +
      sentence('GPGSV,3,1,12') +
      '!AIVDM,1*00\r\n';
    const read = imported(text);
    expect(skipped(read)).toEqual({ 'other sentences': 3 });
    expect(read.trace).toEqual(whole.trace);
  });
  test('with one letter changed anywhere are never believed', () => {
    const lines = nmeaOf(rows.slice(0, 30), { sentences: 'RMC' }).trimEnd().split('\r\n');
    const { trace } = imported(`${lines.join('\r\n')}\r\n`);
    const line = lines[10] ?? '';
    for (let at = 1; at < line.length; at++) {
      const other = line[at] === '5' ? '6' : '5';
      const wrong = lines.with(10, line.slice(0, at) + other + line.slice(at + 1));
      const read = imported(`${wrong.join('\r\n')}\r\n`);
      expect(read.trace.time).toEqual(trace.time.filter((_, n) => n !== 10));
      expect(read.skipped).toHaveLength(1);
    }
  });
});

describe('a fix', () => {
  const say = (rmc: string, gga?: string): string =>
    nmeaOf(rows.slice(0, 5)) +
    sentence(`GPRMC,120000,${rmc}`) +
    (gga === undefined ? '' : sentence(`GPGGA,120000,${gga}`));
  const place = '4500.0,N,01000.0,E';
  test('that is void, estimated, without quality or of no mode counts for nothing', () => {
    for (const log of [
      say(`V,${place},1,1,090526,,`),
      say(`A,${place},1,1,090526,,,E`),
      say(`A,${place},1,1,090526,,,N`),
      say(`A,${place},1,1,090526,,,A`, `${place},0,0,,,M,,M,,`),
      say(`A,${place},1,1,090526,,,A`, `${place},6,9,,,M,,M,,`),
    ]) {
      const read = imported(log);
      expect(skipped(read)).toEqual({ 'not valid': 1 });
      expect(read.trace.time.length).toBe(5);
    }
  });
  test('without a place counts for nothing', () => {
    expect(skipped(imported(say('A,,,,,,,090526,,,A')))).toEqual({ 'no number': 1 });
  });
});

describe('midnight', () => {
  const late = drive({ laps: 1, rate: 5, later: 86_370 }).rows;
  const before = late.filter(({ time }) => time < 86_400);
  const after = late.slice(before.length);
  const steps = (of: Float64Array): readonly number[] => [...of.slice(1)].map((time, n) => time - (of[n] ?? 0));
  const regular = (text: string) => {
    const { trace } = imported(text);
    expect(trace.time.length).toBe(late.length);
    for (const step of steps(trace.time)) expect(step).toBeCloseTo(0.2, 2);
    return trace.zero;
  };
  test('passes, with dates and without', () => {
    const dated = (a: string, b: string) => nmeaOf(before, { date: a }) + nmeaOf(after, { date: b });
    expect(regular(dated('090526', '100526'))).toEqual({ kind: 'day', day: '2026-05-09' });
    expect(regular(nmeaOf(late, { sentences: 'GGA' }))).toEqual({ kind: 'no date' });
  });
  test('of the year, of a leap day and of the century passes too', () => {
    const dated = (a: string, b: string) => regular(nmeaOf(before, { date: a }) + nmeaOf(after, { date: b }));
    expect(dated('311225', '010126')).toEqual({ kind: 'day', day: '2025-12-31' });
    expect(dated('290224', '010324')).toEqual({ kind: 'day', day: '2024-02-29' });
    expect(dated('311299', '010100')).toEqual({ kind: 'day', day: '1999-12-31' });
  });
  test('passes where the first date is only heard later', () => {
    const text = nmeaOf(before, { sentences: 'GGA' }) + nmeaOf(after, { date: '100526' });
    expect(regular(text)).toEqual({ kind: 'day', day: '2026-05-09' });
  });
});
