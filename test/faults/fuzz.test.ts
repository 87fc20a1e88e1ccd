/** Whatever comes in from outside, mangled from what is right with fixed seeds: no crash, no hang, one clear answer. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { createApp, proofOf } from '../../src/app/index.ts';
import { exportLines, importLines } from '../../src/book/index.ts';
import { demoText, kartReader, libraryFiles } from '../../src/host/index.ts';
import { readKart } from '../../src/kart/index.ts';
import { LogImport } from '../../src/laps/index.ts';
import { readMef } from '../../src/risk/index.ts';
import { createServer } from '../../src/server/index.ts';
import { memoryStore } from '../../src/store/memory/index.ts';
import { randoms, report, SEED, tries } from './size.ts';

const fixtures = join(import.meta.dirname, '..', 'fixtures');
/** What mangling puts in: signs that mean something to a reader, and numbers at their ends. */
const ODD = [
  '',
  '\0',
  '"',
  "'",
  '\\',
  '{',
  '}',
  '[',
  ']',
  '<',
  '>',
  '&',
  '#',
  ':',
  '- ',
  '\n',
  '\r',
  '\t',
  '%00',
  '../',
  'NaN',
  '-1',
  '1e999',
  '9'.repeat(40),
  'null',
  '__proto__',
  'constructor',
  '\ud800',
  '\u202e',
  '😀',
  '<!ENTITY a "b">',
  '&a;',
  '*a',
  '&a [*a]',
  '!!js',
  '0x',
  '-0',
];
/** A hang is told from slowness by far. */
const LONG_MS = 20_000;

/** One to six cuts, doublings, swaps and insertions. */
function mangled(text: string, random: () => number): string {
  let now = text;
  const place = (): number => Math.floor(random() * (now.length + 1));
  for (let n = 1 + Math.floor(random() * 6); n > 0; n--) {
    const [a, b] = [place(), place()].sort((x, y) => x - y) as [number, number];
    const end = Math.min(b, a + 200);
    const way = Math.floor(random() * 5);
    if (way === 0) now = now.slice(0, a) + now.slice(end);
    else if (way === 1) now = now.slice(0, end) + now.slice(a);
    else if (way === 2) now = now.slice(0, a) + ODD[Math.floor(random() * ODD.length)] + now.slice(a);
    else if (way === 3) now = now.slice(0, a) + String.fromCharCode(Math.floor(random() * 0x300)) + now.slice(a + 1);
    else now = now.slice(0, random() < 0.2 ? a : now.length);
  }
  return now;
}

/** Feeds `count` mangled texts; `read` must give 'taken', or what was said against it. */
async function feed(what: string, right: string, count: number, read: (text: string) => unknown): Promise<void> {
  const random = randoms(SEED + what.length);
  let [taken, slowest] = [0, 0];
  for (let n = 0; n < count; n++) {
    const text = mangled(right, random);
    const from = performance.now();
    let said: unknown;
    try {
      said = await read(text);
    } catch (error) {
      throw new Error(`${what}, number ${n} of seed ${SEED}: ${JSON.stringify(text).slice(0, 2000)}`, { cause: error });
    }
    slowest = Math.max(slowest, performance.now() - from);
    if (said === 'taken') taken++;
    else expect([n, Array.isArray(said) && said.length > 0 && said.every(isSaid)]).toEqual([n, true]);
  }
  expect(slowest).toBeLessThan(LONG_MS);
  report(
    `${what}: ${count} mangled texts, ${taken} still right, the others refused in words; slowest ${Math.round(slowest)} ms`,
  );
}

/** Something that a person can read. */
const isSaid = (problem: unknown): boolean =>
  typeof problem === 'object' &&
  problem !== null &&
  Object.values(problem).some(one => typeof one === 'string' && /\w{3}/.test(one));

const library = libraryFiles();
const kartText = demoText().kart;
let book = '';
beforeAll(async () => {
  const app = createApp({
    store: memoryStore(),
    clock: { now: () => new Date('2026-11-26T10:00:00Z') },
    ids: { next: () => 'id', salt: () => '0'.repeat(32) },
    reader: kartReader(library),
    device: 'fuzz',
  });
  await app.seedDemo(demoText());
  book = await app.exportBook();
});

test(
  'a kart file',
  () =>
    feed('kart file', kartText, tries(60, 5000), text => {
      const read = readKart(text, library);
      return read.ok ? 'taken' : read.problems;
    }),
  3_600_000,
);

test(
  'an exported book',
  () =>
    feed('book', book.slice(0, 40_000), tries(60, 20_000), text => {
      const read = importLines(text);
      if (read.kind === 'problems') return read.problems;
      expect(importLines(exportLines(read.facts)).kind).toBe('facts'); // what is taken is whole
      return 'taken';
    }),
  3_600_000,
);

const fixture = (path: string): string => readFileSync(join(fixtures, path), 'utf8').slice(0, 60_000);

test(
  'a fault tree in MEF XML',
  () =>
    feed('MEF XML', fixture('fault-trees/kartlike_s.xml'), tries(300, 200_000), text => {
      const read = readMef(text);
      return read.kind === 'tree' ? 'taken' : read.problems;
    }),
  3_600_000,
);

for (const end of ['gpx', 'csv'])
  test(
    `a log in ${end}`,
    () =>
      feed(`log in ${end}`, fixture(`laps/K1_01hz.${end}`), tries(60, 20_000), text => {
        const into = new LogImport({});
        const bytes = new TextEncoder().encode(text);
        for (let at = 0; at < bytes.length; at += 7919) into.push(bytes.slice(at, at + 7919));
        const read = into.finish();
        return read.kind === 'not imported' ? [read.problem] : 'taken';
      }),
    3_600_000,
  );

/** Requests that are right, to be mangled: method, address and body. */
const REQUESTS = [
  'GET /api/karts/41/plan?minutes=60&people=2',
  'GET /api/karts/41/facts?after=3',
  'GET /api/karts/41/setup?against=baseline',
  'GET /api/karts/41/due?at=2026-11-20T10:00:00Z',
  'GET /api/karts/41/laps/compare?a=Heat 1%231&b=Heat 1%232',
  `GET /api/files/${'0'.repeat(64)}`,
  'POST /api/karts/41/facts {"payloads":[{"kind":"checked","item":"frame/welds","result":"pass"}],"by":"A"}',
  'POST /api/karts/41/facts {"payloads":[{"kind":"ran","minutes":8,"laps":7,"wet":true}],"by":"A","at":"2026-11-20T10:00:00Z"}',
  'POST /api/karts/41/release {"signer":"A","sure":true}',
  'POST /api/book/since {"numbers":{"bench":1}}',
  'POST /api/book/take {"facts":[{"v":1,"id":"a","kart":"41","device":"d","seq":1,"kind":"note","text":"x"}]}',
  'POST /api/karts/41/laps {"times":"52.31 52.1","by":"A","session":"Heat 9","minutes":6}',
  'PUT /api/files picture',
];

test('over HTTP: never a 500, every refusal a problem document, and the book whole at the end', async () => {
  const store = memoryStore();
  let ids = 0;
  const clock = { now: () => new Date('2026-11-26T10:00:00Z') };
  const app = createApp({
    store,
    clock,
    ids: { next: () => `h${++ids}`, salt: () => '0'.repeat(32) },
    reader: kartReader(library),
    device: 'fuzz',
  });
  await app.seedDemo(demoText());
  const failed: unknown[] = [];
  const server = createServer(app, { failed: error => failed.push(error) });
  const random = randoms(SEED);
  const count = tries(150, 20_000);
  const told = new Map<number, number>();
  for (let n = 0; n < count; n++) {
    const right = REQUESTS[n % REQUESTS.length] ?? '';
    const [, method = '', path = '', body] = /^(\S+) (\/[^{]*?)(?: (\{.*|picture))?$/s.exec(right) ?? [];
    const hurtPath = random() < 0.5 ? path : mangled(path, random);
    const hurtBody = body === undefined || random() < 0.3 ? body : mangled(body, random);
    let url: URL;
    try {
      url = new URL(`http://localhost/${hurtPath.replace(/^\/+/, '')}`);
    } catch {
      continue; // no client sends it
    }
    const headers = { host: 'localhost', 'content-type': method === 'PUT' ? 'image/png' : 'application/json' };
    const answer = await server.request(url.href, {
      method,
      headers,
      ...(hurtBody === undefined ? {} : { body: hurtBody }),
    });
    told.set(answer.status, (told.get(answer.status) ?? 0) + 1);
    const said = `${n} of seed ${SEED}: ${method} ${url.href} ${hurtBody ?? ''} → ${answer.status} ${String(failed[0] ?? '')}`;
    if (answer.status >= 500) throw new Error(said, { cause: failed[0] });
    if (answer.status >= 400) {
      const { problems } = (await answer.json()) as { problems: unknown[] };
      if (!(problems.length > 0 && problems.every(isSaid))) throw new Error(said);
    }
  }
  expect((await proofOf(store)).problems).toEqual([]);
  const counts = [...told].sort(([a], [b]) => a - b).map(([status, many]) => `${many}× ${status}`);
  report(`HTTP: ${count} mangled requests: ${counts.join(', ')}`);
  expect(told.get(200)).toBeGreaterThan(0);
}, 3_600_000);
