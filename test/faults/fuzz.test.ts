/** Whatever comes in from outside, mangled from what is right with fixed seeds, a million in full: no crash, no hang, one clear answer. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { type App, createApp, NOBODY, proofOf, type Register, withCode } from '../../src/app/index.ts';
import { exportLines, importLines } from '../../src/book/index.ts';
import { demoText, kartReader, libraryFiles } from '../../src/host/index.ts';
import { readKart } from '../../src/kart/index.ts';
import { LogImport } from '../../src/laps/index.ts';
import { readMef } from '../../src/risk/index.ts';
import { createFront } from '../../src/server/front.ts';
import { createServer } from '../../src/server/index.ts';
import { memoryStore } from '../../src/store/memory/index.ts';
import { onTheWay, randoms, report, SEED, tries } from './size.ts';

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
    onTheWay(what, n + 1, count);
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
    feed('kart file', kartText, tries(60, 20_000), text => {
      const read = readKart(text, library);
      return read.ok ? 'taken' : read.problems;
    }),
  3_600_000,
);

test(
  'an exported book',
  () =>
    feed('book', book.slice(0, 12_000), tries(60, 80_000), text => {
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
    feed('MEF XML', fixture('fault-trees/kartlike_s.xml'), tries(300, 500_000), text => {
      const read = readMef(text);
      return read.kind === 'tree' ? 'taken' : read.problems;
    }),
  3_600_000,
);

for (const end of ['gpx', 'csv', 'nmea'])
  test(
    `a log in ${end}`,
    () =>
      feed(`log in ${end}`, fixture(`laps/K1_01hz.${end}`).slice(0, 20_000), tries(60, 120_000), text => {
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
  const count = tries(60, 20_000);
  const told = new Map<number, number>();
  for (let n = 0; n < count; n++) {
    onTheWay('HTTP', n + 1, count);
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

/** Stands in everything the blue team wrote, and in no answer to anybody else. */
const SECRET = 'blue-keeps-this';

test('over HTTP from a phone of one team: nothing of another team in any answer, whatever is asked', async () => {
  let [state, n] = [NOBODY, 0];
  const register: Register = {
    read: async () => state,
    async change(step) {
      const { state: next, give } = step(state);
      state = next;
      return give;
    },
  };
  const clock = { now: () => new Date('2026-11-26T10:00:00Z') };
  const teams = new Map<string, App>();
  for (const team of ['red', 'blue']) {
    const ids = { next: () => `${team === 'blue' ? SECRET : 'red'}-${++n}`, salt: () => '0'.repeat(32) };
    const app = createApp({ store: memoryStore(), clock, ids, reader: kartReader(library), device: `laptop ${team}` });
    await app.fileKart(kartText, { by: team });
    teams.set(team, app);
  }
  const blue = teams.get('blue');
  const red = teams.get('red');
  if (!blue || !red) throw new Error('both teams must have a book');
  await blue.record('41', [{ kind: 'note', text: SECRET }], { by: SECRET });
  const photo = await blue.putFile(new TextEncoder().encode(SECRET), 'text/plain');
  const failed: unknown[] = [];
  const front = createFront({
    register,
    secrets: {
      code: () => 'ABCD-EFGH',
      token: () => `token-of-forty-letters-and-more-${++n}`,
      id: () => String(++n).padStart(8, '0'),
    },
    bookOf: async team => teams.get(team) ?? red,
    now: () => new Date(clock.now().getTime() + n++ * 1000), // so that nobody asks too often
    log: (_, event, more) => event === 'failed' && failed.push(more),
    hosts: ['192.168.7.5'],
  });
  const ask = (method: string, url: URL, body: string | undefined, more: Record<string, string>) => {
    const headers = {
      host: '192.168.7.5',
      'content-type': method === 'PUT' ? 'image/png' : 'application/json',
      ...more,
    };
    const request = new Request(url, { method, headers, ...(body === undefined ? {} : { body }) });
    return Promise.resolve(front.fetch(request, { incoming: { socket: { remoteAddress: '192.168.7.20' } } }));
  };
  state = withCode(state, { code: 'RED1', role: 'mechanic', team: 'red', now: clock.now() });
  const paired = await ask(
    'POST',
    new URL('http://192.168.7.5/api/pair'),
    JSON.stringify({ code: 'RED1', name: 'phone' }),
    {},
  );
  const [cookie = ''] = /^kartwright=[^;]+/.exec(paired.headers.get('set-cookie') ?? '') ?? [];
  expect([paired.status, cookie !== '']).toEqual([201, true]);
  const requests = [
    ...REQUESTS,
    'GET /api/export',
    'GET /api/book/ends',
    'GET /api/devices',
    `GET /api/files/${photo}`,
    'GET /api/karts/41/facts?after=0',
  ];
  const random = randoms(SEED + 9);
  const count = tries(150, 20_000);
  const told = new Map<number, number>();
  for (let k = 0; k < count; k++) {
    onTheWay('HTTP from another team', k + 1, count);
    const right = requests[k % requests.length] ?? '';
    const [, method = '', path = '', body] = /^(\S+) (\/[^{]*?)(?: (\{.*|picture))?$/s.exec(right) ?? [];
    const hurtPath = random() < 0.5 ? path : mangled(path, random);
    if (!URL.canParse(`http://192.168.7.5/${hurtPath.replace(/^\/+/, '')}`)) continue;
    const url = new URL(`http://192.168.7.5/${hurtPath.replace(/^\/+/, '')}`);
    if (url.pathname === '/api/live') continue; // never ends
    const hurtBody = body === undefined || random() < 0.3 ? body : mangled(body, random);
    const answer = await ask(method, url, hurtBody, random() < 0.9 ? { cookie } : {});
    const said = await answer.text();
    told.set(answer.status, (told.get(answer.status) ?? 0) + 1);
    if (said.includes(SECRET) || answer.status >= 500)
      throw new Error(
        `${k} of seed ${SEED}: ${method} ${url.href} ${hurtBody ?? ''} → ${answer.status} ${said.slice(0, 500)}`,
        { cause: failed[0] },
      );
  }
  expect((await blue.facts('41')).length).toBe(2);
  expect((await blue.verifyBook()).problems).toEqual([]);
  const counts = [...told].sort(([a], [b]) => a - b).map(([status, many]) => `${many}× ${status}`);
  report(
    `HTTP from another team: ${count} mangled requests: ${counts.join(', ')}; nothing of the other team in any answer`,
  );
  expect([told.get(200) ?? 0, told.get(401) ?? 0].every(many => many > 0)).toBe(true);
}, 3_600_000);
