import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { inLog, jsonLines, levelOf } from './log.ts';
import { Metrics } from './metrics.ts';
import { Buckets } from './rate.ts';
import { routeOf } from './route.ts';

type Sample = { readonly name: string; readonly labels: Record<string, string>; readonly value: number };

/**
 * Reads the text format as its description says: "Exposition formats", text format 0.0.4 (from memory of the document: lines end with LF,
 * `# HELP` and `# TYPE` once a metric and before its samples, label values with \\ \" \n escaped, one sample once).
 */
function parsed(text: string): { types: Map<string, string>; samples: Sample[] } {
  expect(text.endsWith('\n')).toBe(true);
  const [types, samples, seen] = [new Map<string, string>(), [] as Sample[], new Set<string>()];
  for (const line of text.slice(0, -1).split('\n')) {
    const type = /^# TYPE ([a-zA-Z_:][a-zA-Z0-9_:]*) (counter|gauge|histogram|summary|untyped)$/.exec(line);
    if (type) {
      expect(types.has(type[1] ?? '')).toBe(false);
      types.set(type[1] ?? '', type[2] ?? '');
      continue;
    }
    if (/^# HELP [a-zA-Z_:][a-zA-Z0-9_:]* \S/.test(line)) continue;
    const sample = /^([a-zA-Z_:][a-zA-Z0-9_:]*)(?:\{(.*)\})? (\S+)$/s.exec(line);
    if (!sample) throw new Error(`no line of the format: ${line}`);
    const [, name = '', inside = '', number = ''] = sample;
    const labels: Record<string, string> = {};
    let rest = inside;
    while (rest !== '') {
      const pair = /^([a-zA-Z_][a-zA-Z0-9_]*)="((?:[^"\\\n]|\\\\|\\"|\\n)*)"(?:,|$)/.exec(rest);
      if (!pair) throw new Error(`no labels: ${inside}`);
      labels[pair[1] ?? ''] = (pair[2] ?? '').replace(/\\(.)/g, (_, sign) => (sign === 'n' ? '\n' : sign));
      rest = rest.slice(pair[0].length);
    }
    const family = name.replace(/_(bucket|sum|count)$/, '');
    expect(types.has(name) || types.get(family) === 'histogram').toBe(true);
    const key = `${name}${JSON.stringify(labels)}`;
    expect(seen.has(key)).toBe(false);
    seen.add(key);
    const value = number === '+Inf' ? Number.POSITIVE_INFINITY : Number(number);
    expect(value).not.toBeNaN();
    samples.push({ name, labels, value });
  }
  return { types, samples };
}

describe('the figures', () => {
  test('read by the published format, count every request once, and the buckets of a histogram add up', () => {
    const answered = fc.record({
      method: fc.constantFrom('GET', 'POST'),
      route: fc.oneof(fc.constantFrom('/api/karts', 'page'), fc.string({ unit: 'binary' })),
      status: fc.constantFrom(200, 201, 422),
      seconds: fc.double({ min: 0, max: 30, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(answered, { maxLength: 40 }), all => {
        const metrics = new Metrics();
        metrics.gauge('kartwright_open_requests', 'Being answered.', () => 3);
        for (const one of all) metrics.answered(one.method, one.route, one.status, one.seconds);
        const { types, samples } = parsed(metrics.text());
        expect(types.get('kartwright_requests_total')).toBe('counter');
        const of = (name: string) => samples.filter(one => one.name === name);
        expect(of('kartwright_requests_total').reduce((sum, { value }) => sum + value, 0)).toBe(all.length);
        for (const { route } of all) {
          const mine = all.filter(one => one.route === route).map(one => one.seconds);
          const buckets = of('kartwright_request_seconds_bucket').filter(one => one.labels.route === route);
          for (const { labels, value } of buckets) {
            const most = labels.le === '+Inf' ? Number.POSITIVE_INFINITY : Number(labels.le);
            expect(value).toBe(mine.filter(seconds => seconds <= most).length);
          }
          const sum = of('kartwright_request_seconds_sum').find(one => one.labels.route === route)?.value;
          expect(sum).toBeCloseTo(
            mine.reduce((total, one) => total + one, 0),
            6,
          );
        }
        expect(of('kartwright_open_requests')).toMatchObject([{ value: 3 }]);
      }),
    );
  });

  test('name a route by its pattern: no kart, no hash, and few of them whatever is asked', () => {
    expect(routeOf('/api/karts', 200)).toBe('/api/karts');
    expect(routeOf('/api/karts/Red 41/plan', 200)).toBe('/api/karts/:name/plan');
    expect(routeOf('/api/karts/plan/plan', 200)).toBe('/api/karts/:name/plan'); // a kart may have such a name
    expect(routeOf(`/api/files/${'a'.repeat(64)}`, 200)).toBe('/api/files/:name');
    expect(routeOf('/api/book/take', 200)).toBe('/api/book/take');
    expect(routeOf('/api/anything/else', 404)).toBe('refused');
    expect(routeOf('/assets/index-4f3a.js', 200)).toBe('page');
    expect(routeOf('/healthz', 200)).toBe('/healthz');
  });
});

describe('the log', () => {
  test('is one JSON object a line, from the level that was asked for', () => {
    const lines: string[] = [];
    const log = jsonLines(
      levelOf('warn'),
      line => lines.push(line),
      () => new Date(0),
    );
    log('info', 'answered');
    log('warn', 'answered', { route: '/api/karts', status: 401, ms: 3 });
    expect(lines).toEqual([
      '{"time":"1970-01-01T00:00:00.000Z","level":"warn","event":"answered","route":"/api/karts","status":401,"ms":3}\n',
    ]);
    const none: string[] = [];
    jsonLines(
      levelOf('none'),
      line => none.push(line),
      () => new Date(0),
    )('error', 'failed');
    expect(none).toEqual([]);
  });

  test('says of an error what it was and where, and nothing that a person wrote', () => {
    const said = inLog(Object.assign(new TypeError('note "R. Vale hit the wall" is too long'), { code: 'E1' }));
    expect(said).toMatchObject({ kind: 'TypeError', code: 'E1', at: expect.stringMatching(/metrics\.test\.ts:\d+/) });
    expect(JSON.stringify(said)).not.toContain('Vale');
  });
});

describe('how often one address may ask', () => {
  test('a burst goes through, then so many a second, and others are not held up', () => {
    let now = 0;
    const buckets = new Buckets({ perSecond: 2, burst: 3 }, () => now);
    expect([1, 2, 3].map(() => buckets.take('a'))).toEqual([0, 0, 0]);
    expect(buckets.take('a')).toBe(1);
    expect(buckets.take('b')).toBe(0);
    now += 500;
    expect(buckets.take('a')).toBe(0);
    expect(buckets.take('a')).toBe(1);
    now -= 10_000; // a clock set back gives nothing away and locks nobody out
    expect(buckets.take('a')).toBe(1);
    now += 500;
    expect(buckets.take('a')).toBe(0);
  });

  test('a flood of addresses fills no memory', () => {
    const buckets = new Buckets({ perSecond: 1, burst: 1 }, () => 0);
    for (let n = 0; n < 20_000; n++) buckets.take(`address ${n}`);
    expect(buckets.take('address 19999')).toBeGreaterThan(0);
    expect(buckets.take('address 0')).toBe(0); // forgotten
  });
});
