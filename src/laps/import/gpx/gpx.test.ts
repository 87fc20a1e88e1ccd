import { describe, expect, test } from 'vitest';
import { drive } from '../../../../test/drive.ts';
import { gpxOf, imported, readLog, skipped } from '../../../../test/drive-files.ts';

const { rows } = drive({ laps: 1, rate: 5 });
const text = gpxOf(rows);
const whole = imported(text);
const point = '<trkpt lat="44" lon="9"><time>2026-05-09T09:00:00Z</time></trkpt>';
const gpx = (inside: string, before = ''): string =>
  `${before}<gpx version="1.1"><trk><trkseg>${inside}</trkseg></trk></gpx>`;

describe('a track', () => {
  test('with prefixes, comments, CDATA and quotes of both kinds is the same', () => {
    const other = text
      .replaceAll(/<(\/?)(gpx|trk|trkseg|trkpt|ele|time)(?=[\s>])/g, '<$1g:$2')
      .replaceAll('lat="', "lat = '")
      .replaceAll(/lat = '([^"']*)"/g, "lat = '$1'")
      .replace(
        '<g:trkseg>',
        '<!-- <trkpt> is no point here --><g:name a="x > y">a &lt; b</g:name><g:cmt><![CDATA[<trkpt>]]></g:cmt><g:trkseg>',
      );
    expect(imported(other).trace).toEqual(whole.trace);
  });
  test('loses points without a time or a place, and says so', () => {
    const more =
      '<trkpt lat="44" lon="9"/><trkpt lat="44" lon="9"><time/></trkpt><trkpt lon="9"><time>2026-05-09T09:00:00Z</time></trkpt>';
    const read = imported(text.replace('<trkseg>\n', `<trkseg>${more}\n`));
    expect(skipped(read)).toEqual({ 'no number': 3 });
    expect(read.skipped[0]?.lines).toEqual([2, 2, 2]);
    expect(read.trace).toEqual(whole.trace);
  });
  test('takes way points and route points for none', () => {
    const way = '<wpt lat="44" lon="9"><time>2026-05-09T09:00:00Z</time></wpt><rte><rtept lat="1" lon="1"/></rte>';
    const read = imported(text.replace('<trk>', `${way}<trk>`));
    expect(skipped(read)).toEqual({ 'not on the track': 2 });
    expect(read.trace).toEqual(whole.trace);
  });
  test('reads speed and course where an extension says them', () => {
    const said = text.replaceAll(
      '</trkpt>',
      '<extensions><x:speed>12.5</x:speed><x:course>90</x:course></extensions></trkpt>',
    );
    const { trace } = imported(said);
    expect(trace.speed?.[0]).toBe(12.5);
    expect(trace.heading?.[0]).toBeCloseTo(Math.PI / 2, 12);
  });
  test('in segments and tracks out of order is put in order', () => {
    const points = text.split('\n').slice(2, -2);
    const half = points.length >> 1;
    const turned = gpx(`${points.slice(half).join('\n')}</trkseg><trkseg>${points.slice(0, half).join('\n')}`);
    expect(imported(turned).trace).toEqual(whole.trace);
  });
  test('of two receivers over the same time keeps the longer one', () => {
    const points = text.split('\n').slice(2, -2);
    const other = points.slice(20, 60).map(each => each.replace(/lat="(\d+)\./, 'lat="$1.9'));
    const read = imported(gpx(`${other.join('')}</trkseg></trk><trk><trkseg>${points.join('')}`));
    expect(skipped(read)).toEqual({ overlap: 40 });
    expect(read.trace).toEqual(whole.trace);
  });
});

describe('what is not well made', () => {
  const stop = (log: string) => {
    const read = readLog(log);
    return read.kind === 'imported' ? read.stopped : read.problem;
  };
  test('is used up to there, and the place is named', () => {
    const lines = text.split('\n');
    lines[40] = (lines[40] ?? '').replace('</time>', '</tine>');
    const read = imported(lines.join('\n'));
    expect(read.trace.time.length).toBe(38);
    expect(read.stopped).toMatchObject({ line: 41, expected: '</time>', got: '</tine>' });
  });
  test('and could grow or reach outside is refused before it does', () => {
    const bomb = '<!DOCTYPE gpx [<!ENTITY a "aaaaaaaaaa"><!ENTITY b "&a;&a;&a;&a;&a;&a;&a;&a;&a;&a;">]>';
    const outside = '<!DOCTYPE gpx [<!ENTITY x SYSTEM "file:///etc/hostname">]>';
    for (const before of [bomb, outside, '<?xml version="1.0"?>\n<!DOCTYPE gpx>'])
      expect(stop(gpx(point, before))?.got).toMatch(/document type or entity/);
    expect(stop(gpx('<name>&b;</name>'))?.got).toMatch(/another entity/);
    expect(stop(`<gpx>${'<a>'.repeat(100)}`)?.expected).toBe('at most 64 elements deep');
    expect(stop(`<gpx>${'x'.repeat(70_000)}`)).toMatchObject({ got: 'one without an end' });
    expect(stop(`<gpx><!-- ${'x'.repeat(70_000)} --></gpx>`)?.got).toBe('a longer one');
  });
  test('in other ways is named too', () => {
    for (const [log, expected] of [
      ['<gpx><trk a=1></trk></gpx>', 'an element, its attributes in quotes'],
      ['<gpx></gpx><gpx></gpx>', 'nothing after the first element'],
      ['<gpx></gpx>more', 'nothing after the last element'],
      ['<gpx><trk>', 'the end of <trk>'],
      ['<kml></kml>', '<gpx> as the outermost element'],
    ] as const)
      expect(stop(log)?.expected).toBe(expected);
  });
});
