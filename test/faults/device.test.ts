/**
 * What may go wrong between a phone and the server it meets, on real stores: the page's book in a database as a browser has it,
 * the server's in a SQLite file, the front door between them.
 */
import 'fake-indexeddb/auto';
import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import {
  type App,
  createApp,
  NOBODY,
  type Register,
  type RegisterState,
  withCode,
  withDevice,
} from '../../src/app/index.ts';
import { kartReader, libraryFiles } from '../../src/host/index.ts';
import { createFront } from '../../src/server/front.ts';
import { indexedDbStore } from '../../src/store/indexeddb/index.ts';
import { openSqliteStore } from '../../src/store/sqlite/index.ts';
import { type DeviceBook, openDeviceBook } from '../../src/web/book/open.ts';
import { httpRemote } from '../../src/web/book/remote.ts';

const KART = `
kart: 1
name: "7"
invented: true
rules: hollow-lane-club-2026
dimensions: { wheelbase: 1045 mm }
parts:
  front wheel left: { kind: front wheel, system: wheels and tyres, corner: front left, place: { x: 1045 mm, y: 500 mm } }
`;
const WHEEL = 'front wheel left';
const RIM = `${WHEEL}/rim`;
const NOW = Date.parse('2026-05-01T10:00:00.000Z');
const DAY = 86_400_000;
const { kinds, templates, rules } = libraryFiles();
const reader = kartReader({ kinds, templates, rules });

let folder = '';
let n = 0;
let ms = NOW;
const closing: (() => unknown)[] = [];
/** Each look at it moves it on by a second. */
const clock = (ahead = 0) => ({
  now: () => {
    ms += 1000;
    return new Date(ms + ahead);
  },
});
beforeEach(async () => {
  folder = await mkdtemp(join(tmpdir(), 'kartwright-device-'));
  ms = NOW;
});
afterEach(async () => {
  vi.restoreAllMocks();
  vi.unstubAllGlobals();
  for (const close of closing.splice(0).toReversed()) await close();
  await rm(folder, { recursive: true, force: true });
});

/** The book of a server, in a file of this name. */
async function bookOn(file: string, device = `laptop-${file}`): Promise<App> {
  const store = await openSqliteStore(join(folder, file));
  const app = createApp({
    store,
    clock: clock(),
    ids: { next: () => `00000000-0000-4000-8000-${String(++n).padStart(12, '0')}`, salt: () => '0'.repeat(32) },
    reader,
    device,
  });
  closing.push(() => app.close());
  return app;
}
async function kartBook(file: string): Promise<App> {
  const app = await bookOn(file);
  expect((await app.fileKart(KART, { by: 'A. Laptop' })).kind).toBe('recorded');
  return app;
}

/** A server with a book for each team, and the way a phone reaches it: its address, its cookie, a line that may be cut. */
function serverOf(books: Readonly<Record<string, App>>) {
  let state: RegisterState = NOBODY;
  const register: Register = {
    read: async () => state,
    async change(step) {
      const { state: next, give } = step(state);
      state = next;
      return give;
    },
  };
  const secret = (): string => `secret-of-forty-letters-and-some-${++n}`;
  const front = createFront({
    register,
    secrets: { code: () => `CODE-${++n}`, token: secret, id: () => (++n).toString(16).padStart(8, '0') },
    bookOf: async team => books[team] as App,
    now: () => new Date(ms),
    log: () => undefined,
    library: async () => ({ kinds, templates, rules }),
  });
  let cookie = '';
  const line = { down: false, asked: 0 };
  const reach = async (path: string, init: RequestInit = {}): Promise<Response> => {
    line.asked++;
    if (line.down) throw new TypeError('the line is down');
    const headers = { ...(init.headers as Record<string, string>), host: 'localhost', ...(cookie && { cookie }) };
    const request = new Request(`http://localhost${path}`, { ...init, headers });
    const answer = await front.fetch(request, { incoming: { socket: { remoteAddress: '192.168.7.20' } } });
    cookie = /^([^;]+)/.exec(answer.headers.get('set-cookie') ?? '')?.[1] ?? cookie;
    // A socket says when it answers; there is none here.
    return new Response(answer.body, {
      status: answer.status,
      headers: { ...Object.fromEntries(answer.headers), date: new Date(ms).toUTCString() },
    });
  };
  vi.stubGlobal('fetch', reach);
  vi.stubGlobal(
    'EventSource',
    class {
      addEventListener() {}
      close() {}
    },
  );
  return {
    line,
    /** The phone types a code: from now on it is of this team. */
    async letIn(team = '', role: 'owner' | 'mechanic' = 'mechanic'): Promise<string> {
      const code = `C${++n}`;
      state = withCode(state, { code, role, team, now: new Date(ms) });
      const answer = await reach('/api/pair', {
        method: 'POST',
        headers: { 'content-type': 'application/json' },
        body: JSON.stringify({ code, name: 'Phone' }),
      });
      expect(answer.status).toBe(201);
      return ((await answer.json()) as { id: string }).id;
    },
    putOut: (id: string) => {
      state = withDevice(state, id, one => ({ ...one, revoked: new Date(ms).toISOString() }));
    },
  };
}

/** A phone; the same name is the same phone, loaded again. */
async function phone(name: string, ahead = 0): Promise<DeviceBook> {
  const store = await indexedDbStore(name);
  const book = await openDeviceBook({
    store,
    kept: true,
    remote: httpRemote,
    clock: clock(ahead),
    random: bytes => crypto.getRandomValues(new Uint8Array(bytes)),
    build: 'test',
  });
  closing.push(() => {
    book.sync.stop();
    return store.close();
  });
  await book.sync.now();
  return book;
}
const said = async (app: App): Promise<readonly string[]> =>
  (await app.facts('7')).map(({ fact }) => ('text' in fact && fact.kind === 'note' ? fact.text : fact.kind));
const writes = async (app: App, payload: object, by = 'R. Vale'): Promise<void> => {
  expect(await app.record('7', [payload], { by })).toMatchObject({ kind: 'recorded' });
};
const note = (text: string) => ({ kind: 'note', text });
/** Every fact once, chains whole, and both hold the same in the same order. */
async function areOne(a: App, b: App): Promise<void> {
  const ids = async (app: App) => (await app.facts('7')).map(({ fact }) => fact.id);
  expect(await ids(a)).toEqual(await ids(b));
  expect(new Set(await ids(a)).size).toBe((await ids(a)).length);
  for (const app of [a, b]) expect((await app.verifyBook()).problems).toEqual([]);
}

describe('a phone whose clock is a day off', () => {
  test('ahead: a fail that is found after its pass counts, and the phone is told', async () => {
    const laptop = await kartBook('a.db');
    await serverOf({ '': laptop }).letIn();
    const { app, sync } = await phone('ahead', DAY);
    expect(sync.state().ahead).toBeGreaterThan(DAY - 60_000);
    await writes(app, { kind: 'checked', item: RIM, result: 'pass' });
    await sync.now();
    await writes(laptop, { kind: 'checked', item: RIM, result: 'fail', why: 'crack' }, 'A. Laptop');
    await sync.now();
    for (const book of [laptop, app])
      expect((await book.due('7')).due.find(({ item }) => item === RIM)?.cause).toBe('failed');
    await areOne(laptop, app);
  });

  test('behind: what is done on it after what others wrote counts after it, and the phone is told', async () => {
    const laptop = await kartBook('b.db');
    await serverOf({ '': laptop }).letIn();
    await writes(laptop, { kind: 'taken off', part: WHEEL }, 'A. Laptop');
    const { app, sync } = await phone('behind', -DAY);
    expect(sync.state().ahead).toBeLessThan(60_000 - DAY);
    await writes(app, { kind: 'fitted', part: WHEEL });
    await writes(app, { kind: 'made', joint: `${WHEEL}/wheel nuts`, reading: '20 N·m' });
    await sync.now();
    for (const book of [laptop, app]) {
      const { steps } = await book.plan('7');
      const left = steps.filter(({ state }) => state !== 'done').map(({ key }) => key);
      expect(left).toContain(`look ${RIM}`);
      expect(left.filter(key => key.startsWith('refit') || key.startsWith('torque'))).toEqual([]);
    }
    await areOne(laptop, app);
  });
});

test('a server that was set back to an older copy gets back what it lost, once, from every phone, and each is told', async () => {
  const laptop = await kartBook('c.db');
  await serverOf({ '': laptop }).letIn('', 'owner');
  const one = await phone('one');
  await writes(one.app, note('one before'));
  await one.sync.now();
  const copy = await laptop.since({}); // the backup
  await writes(laptop, note('laptop after'), 'A. Laptop');
  await writes(one.app, note('one after'));
  await one.sync.now();
  one.sync.stop();
  const restored = await bookOn('d.db', 'laptop-restored'); // as `restore` does it: under a new name
  expect(await restored.take(copy)).toMatchObject({ kind: 'taken' });
  await serverOf({ '': restored }).letIn('', 'owner');
  await writes(restored, note('restored went on'), 'A. Laptop');
  const again = await phone('one');
  expect(again.sync.state()).toMatchObject({ is: 'all sent', setBack: 2 });
  await writes(again.app, note('and on'));
  await again.sync.now();
  expect((await said(restored)).toSorted()).toEqual(
    ['kart filed', 'one before', 'laptop after', 'one after', 'restored went on', 'and on'].toSorted(),
  );
  await areOne(restored, again.app);
});

test('a phone that was put out keeps what it wrote, gives it as a file, and sends it when it is let in again', async () => {
  const laptop = await kartBook('e.db');
  const server = serverOf({ '': laptop });
  const id = await server.letIn();
  const { app, sync } = await phone('out');
  await writes(app, note('sent'));
  await sync.now();
  server.putOut(id);
  await writes(app, note('not sent'));
  await sync.now();
  expect(sync.state()).toMatchObject({ is: 'put out', waiting: 1 });
  expect(await app.exportBook()).toContain('not sent');
  await server.letIn();
  await sync.now();
  expect(sync.state()).toMatchObject({ is: 'all sent', waiting: 0 });
  expect(await said(laptop)).toEqual(['kart filed', 'sent', 'not sent']);
  await areOne(laptop, app);
});

test('the book of a phone never runs into that of another team, though both began from one export or the other is empty', async () => {
  const red = await kartBook('red.db');
  const [blue, green] = [await bookOn('blue.db'), await bookOn('green.db')];
  await blue.take(await red.since({}));
  const server = serverOf({ red, blue, green });
  await server.letIn('red', 'owner');
  const { app, sync } = await phone('team');
  await writes(app, note('of red'));
  await sync.now();
  for (const team of ['blue', 'green']) {
    await server.letIn(team, 'owner');
    await writes(app, note(`written while ${team} was there`));
    await sync.now();
    expect(sync.state()).toMatchObject({ is: 'other book', theirs: { team } });
  }
  expect(await said(blue)).toEqual(['kart filed']);
  expect(await green.since({})).toEqual([]);
  await server.letIn('red', 'owner');
  await sync.now();
  expect(sync.state()).toMatchObject({ is: 'all sent', waiting: 0 });
  await areOne(red, app);
});

describe('a phone without room', () => {
  const full = () => {
    throw new DOMException('the quota is used up', 'QuotaExceededError');
  };

  test('sends what it holds though it can take nothing, says what to do, and takes it when there is room again', async () => {
    const laptop = await kartBook('f.db');
    const server = serverOf({ '': laptop });
    await server.letIn();
    const { app, sync } = await phone('full');
    server.line.down = true;
    await writes(app, note('from the phone'));
    await writes(laptop, note('from the laptop'), 'A. Laptop');
    server.line.down = false;
    const noRoom = [vi.spyOn(IDBObjectStore.prototype, 'add'), vi.spyOn(IDBObjectStore.prototype, 'put')];
    for (const spy of noRoom) spy.mockImplementation(full);
    expect(await app.record('7', [note('lost')], { by: 'R. Vale' }).catch(error => error)).toMatchObject({
      code: 'disk full',
    });
    await sync.now();
    expect(sync.state().is).toBe('stopped');
    expect(sync.state().problems[0]?.remedy).toContain('free some space');
    expect(await said(laptop)).toContain('from the phone');
    for (const spy of noRoom) spy.mockRestore();
    await sync.now();
    expect(sync.state().is).toBe('all sent');
    expect(await said(app)).toContain('from the laptop');
    await areOne(laptop, app);
  });

  test('opens the book it has', async () => {
    const laptop = await kartBook('g.db');
    await serverOf({ '': laptop }).letIn();
    (await phone('full start')).sync.stop();
    for (const how of ['add', 'put'] as const) vi.spyOn(IDBObjectStore.prototype, how).mockImplementation(full);
    const again = await phone('full start');
    expect(await said(again.app)).toEqual(['kart filed']);
    expect(again.sync.state().is).toBe('all sent');
  });
});
