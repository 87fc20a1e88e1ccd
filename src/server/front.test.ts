import { beforeEach, describe, expect, test } from 'vitest';
import { note } from '../../test/store-contract/note.ts';
import { type App, createApp, NOBODY, type Register, type RegisterState, withCode } from '../app/index.ts';
import { type Fact, type FactKind, sealAll, sealNext } from '../book/index.ts';
import { demoText, kartReader, libraryFiles } from '../host/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { createFront, type Front } from './front.ts';

const reader = kartReader(libraryFiles());
const text = demoText().kart;
let now = '2026-05-01T10:00:00.000Z';
let state: RegisterState = NOBODY;
let front: Front;
let books: Map<string, App>;
let lines: string[] = [];
let n = 0;

const register: Register = {
  read: async () => state,
  async change(step) {
    const { state: next, give } = step(state);
    state = next;
    return give;
  },
};
const page = {
  bytes: new TextEncoder().encode('<!doctype html>'),
  type: 'text/html; charset=utf-8',
  cache: 'no-cache',
};
const clock = { now: () => new Date(now) };

async function bookOf(team: string): Promise<App> {
  const known = books.get(team);
  if (known) return known;
  const app = createApp({
    store: memoryStore(),
    clock,
    ids: { next: () => `id-${++n}`, salt: () => '0'.repeat(32) },
    reader,
    device: `laptop ${team}`,
  });
  books.set(team, app);
  await app.fileKart(text, { by: 'R. Vale', at: '2026-04-01T10:00:00.000Z' });
  return app;
}

beforeEach(() => {
  [now, state, books, lines, n] = ['2026-05-01T10:00:00.000Z', NOBODY, new Map(), [], 0];
  front = createFront({
    register,
    secrets: {
      code: () => 'ABCD-EFGH',
      token: () => `token-of-forty-letters-and-more-${++n}`,
      id: () => (++n).toString(16).padStart(8, '0'),
    },
    bookOf,
    now: clock.now,
    log: (level, event, more) => lines.push(JSON.stringify({ level, event, ...more })),
    pages: new Map([['/', page]]),
    hosts: ['192.168.7.5'],
    authority: 'PEM',
    reached: () => ['http://192.168.7.5:50271/'],
  });
});

type Asked = {
  readonly from?: string;
  readonly host?: string;
  readonly token?: string;
  readonly more?: Record<string, string>;
};
function ask(
  method: string,
  path: string,
  body?: unknown,
  { from = '192.168.7.20', host = '192.168.7.5:50271', token, more = {} }: Asked = {},
) {
  const headers = {
    host,
    ...(body === undefined ? {} : { 'content-type': 'application/json' }),
    ...(token === undefined ? {} : { cookie: `kartwright=${token}` }),
    ...more,
  };
  const request = new Request(`http://${host}${path}`, {
    method,
    headers,
    ...(body === undefined ? {} : { body: JSON.stringify(body) }),
  });
  return Promise.resolve(front.fetch(request, { incoming: { socket: { remoteAddress: from } } }));
}
const HERE: Asked = { from: '127.0.0.1', host: 'localhost:50271' };

async function paired(
  role: 'owner' | 'mechanic' | 'driver' | 'scrutineer',
  team = '',
): Promise<{ token: string; id: string }> {
  const code = `C${++n}`;
  state = withCode(state, { code, role, team, now: new Date(now) });
  const answer = await ask('POST', '/api/pair', { code, name: `${role} phone` }, { from: `10.0.0.${n}` });
  expect(answer.status).toBe(201);
  const [, token = ''] = /^kartwright=([^;]+)/.exec(answer.headers.get('set-cookie') ?? '') ?? [];
  return { token, id: ((await answer.json()) as { id: string }).id };
}
const writes = (payload: object, token: string, more: Partial<Asked> = {}) =>
  ask('POST', '/api/karts/41/facts', { payloads: [payload], by: 'A. Bench' }, { token, ...more });
const NOTE = { kind: 'note', text: 'dry' };

describe('who comes in', () => {
  test('this machine needs no login; anything else gets the empty page and a 401', async () => {
    expect((await ask('GET', '/api/karts', undefined, HERE)).status).toBe(200);
    expect((await ask('GET', '/')).status).toBe(200);
    const EVERY = [
      '/api/karts',
      '/api/karts/41/plan',
      '/api/export',
      '/api/book/ends',
      '/api/live',
      '/api/devices',
      '/api/me',
      '/metrics',
      '/api/files/0',
      '/nothing',
      '/%61pi/karts',
      '//api/karts',
      '/api/../api/karts',
    ];
    for (const path of EVERY) expect([path, (await ask('GET', path)).status]).toEqual([path, 401]);
    for (const path of ['/api/karts/41/facts', '/api/book/take', '/api/devices/pair', '/api/karts/41/release'])
      expect((await ask('POST', path, {})).status).toBe(401);
    expect(books.size).toBe(1);
  });

  test('a proxy on this machine, another name for it, or an address that only looks like it, is not this machine', async () => {
    const strangers: Asked[] = [
      { ...HERE, more: { 'x-forwarded-for': '1.2.3.4' } },
      { ...HERE, more: { forwarded: 'for=1.2.3.4' } },
      { ...HERE, more: { via: '1.1 proxy' } },
      { from: '127.0.0.1' }, // asked for as 192.168.7.5
      { from: '192.168.7.20', host: 'localhost:50271' },
      { from: '127.0.0.1.evil', host: 'localhost' },
      { from: '', host: 'localhost' },
    ];
    for (const one of strangers) expect((await ask('GET', '/api/karts', undefined, one)).status).toBe(401);
    expect((await ask('GET', '/api/karts', undefined, { from: '::ffff:127.0.0.1', host: 'localhost' })).status).toBe(
      200,
    );
    expect((await ask('GET', '/api/karts', undefined, { ...HERE, host: 'evil.example' })).status).toBe(421);
  });

  test('a code gives a cookie that no page reads and no other site sends; the token stands in no answer', async () => {
    await ask('POST', '/api/devices/pair', { role: 'driver' }, HERE);
    const answer = await ask('POST', '/api/pair', { code: 'abcd efgh', name: 'Phone of the driver' });
    expect(answer.status).toBe(201);
    const cookie = answer.headers.get('set-cookie') ?? '';
    expect(cookie).toMatch(/^kartwright=[\w-]+; Max-Age=34560000; Path=\/; HttpOnly; SameSite=Strict$/);
    expect(await answer.text()).not.toContain(/=([^;]+)/.exec(cookie)?.[1]);
    expect((await ask('POST', '/api/pair', { code: 'ABCD-EFGH', name: 'another' })).status).toBe(403); // once
  });

  test('tokens change with every pairing, and a revoked one is worth nothing at once', async () => {
    const [one, two] = [await paired('mechanic'), await paired('mechanic')];
    expect(one.token).not.toBe(two.token);
    expect((await ask('GET', '/api/karts', undefined, one)).status).toBe(200);
    expect((await ask('POST', `/api/devices/${one.id}`, { revoke: true }, HERE)).status).toBe(200);
    expect((await ask('GET', '/api/karts', undefined, one)).status).toBe(401);
    expect((await ask('DELETE', '/api/me', undefined, two)).status).toBe(204);
    expect((await ask('GET', '/api/karts', undefined, two)).status).toBe(401);
    for (const token of ['', 'x', `${two.token}x`, '../../devices.json', '%00'])
      expect((await ask('GET', '/api/karts', undefined, { token })).status).toBe(401);
  });

  test('a program may send its token as a bearer', async () => {
    state = withCode(state, { code: 'B', role: 'mechanic', team: '', now: new Date(now) });
    const { token } = (await (await ask('POST', '/api/pair', { code: 'B', name: 'script', bearer: true })).json()) as {
      token: string;
    };
    const answer = await ask('GET', '/api/karts', undefined, { more: { authorization: `Bearer ${token}` } });
    expect(answer.status).toBe(200);
  });

  test('guessing a code is stopped after five tries a minute, also from many addresses; others still work', async () => {
    const { token } = await paired('mechanic');
    const tries = async (count: number, from: (n: number) => string): Promise<number[]> => {
      const all: number[] = [];
      for (let k = 0; k < count; k++)
        all.push((await ask('POST', '/api/pair', { code: `W${k}`, name: 'x' }, { from: from(k) })).status);
      return all;
    };
    expect(await tries(7, () => '192.168.7.66')).toEqual([403, 403, 403, 403, 403, 429, 429]);
    expect((await tries(60, k => `10.1.${k}.1`)).filter(status => status === 403).length).toBeLessThan(30);
    expect((await ask('GET', '/api/karts', undefined, { token })).status).toBe(200);
    const late = await ask('POST', '/api/pair', { code: 'W', name: 'x' }, { from: '192.168.7.66' });
    expect(Number(late.headers.get('retry-after'))).toBeGreaterThan(0);
  });

  test('a device that asks without end is told to wait, this machine never', async () => {
    const { token } = await paired('mechanic');
    const codes = new Set<number>();
    for (let k = 0; k < 500; k++) codes.add((await ask('GET', '/api/me', undefined, { token })).status);
    expect(codes).toEqual(new Set([200, 429]));
    for (let k = 0; k < 500; k++) expect((await ask('GET', '/api/me', undefined, HERE)).status).toBe(200);
  });

  test('a page of another site can neither read nor write with the cookie of a paired phone', async () => {
    const { token } = await paired('owner');
    for (const origin of ['https://evil.example', 'http://192.168.7.5:8080', 'null']) {
      expect((await writes(NOTE, token, { more: { origin } })).status).toBe(403);
      expect((await ask('POST', '/api/devices/pair', { role: 'owner' }, { token, more: { origin } })).status).toBe(403);
    }
    expect((await writes(NOTE, token, { more: { origin: 'http://192.168.7.5:50271' } })).status).toBe(201);
    const answer = await ask('GET', '/api/karts', undefined, { token });
    expect(answer.headers.get('access-control-allow-origin')).toBeNull();
    expect(answer.headers.get('cross-origin-resource-policy')).toBe('same-origin');
  });
});

describe('what a role may do', () => {
  const TRIED: readonly [FactKind, object][] = [
    ['note', NOTE],
    ['ran', { kind: 'ran', minutes: 8 }],
    ['checked', { kind: 'checked', item: 'frame/welds', result: 'pass' }],
    ['taken off', { kind: 'taken off', part: 'chain' }],
  ];
  test('every role reads; each writes what is its own to write, and nothing else', async () => {
    const MAY: Record<string, readonly string[]> = {
      owner: ['note', 'ran', 'checked', 'taken off'],
      mechanic: ['note', 'ran', 'checked', 'taken off'],
      driver: ['note', 'ran'],
      scrutineer: [],
    };
    for (const role of ['owner', 'mechanic', 'driver', 'scrutineer'] as const) {
      const { token } = await paired(role);
      expect((await ask('GET', '/api/karts/41/plan', undefined, { token })).status).toBe(200);
      const took: string[] = [];
      for (const [kind, payload] of TRIED) {
        const { status } = await writes(payload, token);
        if (status !== 403) took.push(kind);
      }
      expect([role, took]).toEqual([role, MAY[role]]);
      const sign = await ask('POST', '/api/karts/41/release', { signer: 'S. Crutin', sure: true }, { token });
      expect([role, sign.status === 403]).toEqual([role, role === 'driver']);
      const devices = await ask('POST', '/api/devices/pair', { role: 'owner' }, { token });
      expect([role, devices.status]).toEqual([role, role === 'owner' ? 201 : 403]);
      const photo = await ask('PUT', '/api/files', undefined, { token, more: { 'content-type': 'image/png' } });
      expect([role, photo.status]).toEqual([role, 422]); // an empty one; nobody is asked before the shape is right
    }
  });

  test('a driver cannot strike what a driver may not write', async () => {
    const [mechanic, driver] = [await paired('mechanic'), await paired('driver')];
    const written = (await (await writes({ kind: 'set-up', changes: { caster: '18°' } }, mechanic.token)).json()) as {
      facts: Fact[];
    };
    const strike = { kind: 'struck', fact: written.facts[0]?.id, why: 'no' };
    expect((await writes(strike, driver.token)).status).toBe(403);
    expect((await writes(strike, mechanic.token)).status).toBe(201);
  });

  test('who wrote and who signed is told by the chain: each device writes under its own name', async () => {
    const [one, two] = [await paired('mechanic'), await paired('scrutineer')];
    const noted = (await (await writes(NOTE, one.token)).json()) as { facts: Fact[] };
    const signed = (await (await ask('POST', '/api/karts/41/release', { signer: 'S', sure: true }, two)).json()) as {
      facts: Fact[];
    };
    expect(noted.facts[0]).toMatchObject({ device: `paired-${one.id}`, seq: 1 });
    expect(signed.facts[0]).toMatchObject({ device: `paired-${two.id}`, seq: 1, kind: 'released' });
    expect((await (await bookOf('')).verifyBook()).problems).toEqual([]);
    const { devices } = (await (await ask('GET', '/api/devices', undefined, HERE)).json()) as {
      devices: { id: string; chains: string[] }[];
    };
    expect(devices.find(({ id }) => id === two.id)?.chains).toEqual([`paired-${two.id}`]);
    expect(JSON.stringify(devices)).not.toMatch(/token/);
  });

  test('a device sends facts of its own chain only, of kinds it may write; an owner brings what others wrote too', async () => {
    const [mechanic, driver, owner] = [await paired('mechanic'), await paired('driver'), await paired('owner')];
    const send = (facts: readonly Fact[], token: string) => ask('POST', '/api/book/take', { facts }, { token });
    const start = { seq: 0, hash: '0'.repeat(64) };
    const mine = sealAll(start, [note('a', 'phone-a'), note('b', 'phone-a')]);
    expect((await send(mine.slice(0, 1), mechanic.token)).status).toBe(200);
    expect((await send(mine, mechanic.token)).status).toBe(200);
    expect((await send(sealAll(mine[1] ?? start, [note('c', 'phone-a')]), driver.token)).status).toBe(409); // another's chain
    const laptop = (await (await bookOf('')).ends())['laptop '] ?? start;
    expect((await send([sealNext(laptop, note('forged', 'laptop '))], mechanic.token)).status).toBe(409);
    const check = sealNext(start, {
      ...note('d', 'phone-d'),
      kind: 'taken off',
      part: 'chain',
      text: undefined,
    } as never);
    expect((await send([check], driver.token)).status).toBe(409);
    expect((await send([check], owner.token)).status).toBe(200);
    expect((await send([{ ...mine[1], device: '__proto__' } as never], driver.token)).status).toBe(409);
  });
});

describe('teams', () => {
  test('are strictly apart: no question, write, file or device of one reaches another', async () => {
    const [red, blue] = [await paired('owner', 'red'), await paired('owner', 'blue')];
    const written = (await (await writes({ kind: 'note', text: 'secret of red' }, red.token)).json()) as {
      facts: Fact[];
    };
    const PATHS = [
      '/api/export',
      '/api/karts/41/facts',
      '/api/karts/41/plan',
      '/api/devices',
      '/api/book/ends',
      '/api/karts',
    ];
    for (const asker of [{ token: blue.token }, HERE])
      for (const path of PATHS) {
        const said = await (await ask('GET', path, undefined, asker)).text();
        expect(said).not.toMatch(/secret of red/);
        if (path !== '/api/devices' || asker !== HERE) expect(said).not.toContain(red.id);
      }
    expect(await (await ask('POST', '/api/book/since', { numbers: {} }, { token: blue.token })).text()).not.toContain(
      'secret of red',
    );
    expect((await writes({ kind: 'struck', fact: written.facts[0]?.id, why: 'x' }, blue.token)).status).toBe(422);
    expect((await ask('POST', `/api/devices/${red.id}`, { revoke: true }, { token: blue.token })).status).toBe(404);
    expect((await ask('POST', '/api/devices/pair', { role: 'owner', team: 'red' }, { token: blue.token })).status).toBe(
      403,
    );
    const photo = new Request('http://192.168.7.5:50271/api/files', {
      method: 'PUT',
      body: 'picture',
      headers: { host: '192.168.7.5:50271', 'content-type': 'image/png', cookie: `kartwright=${red.token}` },
    });
    const { hash } = (await (
      await front.fetch(photo, { incoming: { socket: { remoteAddress: '10.0.0.1' } } })
    ).json()) as { hash: string };
    expect((await ask('GET', `/api/files/${hash}`, undefined, { token: red.token })).status).toBe(200);
    expect((await ask('GET', `/api/files/${hash}`, undefined, { token: blue.token })).status).toBe(404);
  });

  test('a name of a team that could be a path is refused', async () => {
    for (const team of ['../red', '..', 'a/b', 'a\\b', 'Red', '.', 'a\u0000', '%2e%2e', 'x'.repeat(41)])
      expect((await ask('POST', '/api/devices/pair', { role: 'driver', team }, HERE)).status).toBe(422);
  });
});

describe('for whoever runs it', () => {
  test('health and readiness are answered to everybody and say nothing; when it stops it is not ready', async () => {
    const from: Asked = { host: 'whatever.example' };
    expect(await (await ask('GET', '/healthz', undefined, from)).text()).toBe('ok\n');
    expect(await (await ask('GET', '/readyz', undefined, from)).text()).toBe('ready\n');
    front.stop();
    expect((await ask('GET', '/readyz', undefined, from)).status).toBe(503);
    expect((await ask('GET', '/healthz', undefined, from)).status).toBe(200);
  });

  test('lines that stay open end when it stops', async () => {
    const live = await ask('GET', '/api/live', undefined, HERE);
    const reader = live.body?.getReader();
    await reader?.read();
    front.stop();
    for (let part = await reader?.read(); part && !part.done; part = await reader?.read());
    expect(await reader?.read()).toMatchObject({ done: true });
  });

  test('neither log nor figures hold a name, an address, a code or a token', async () => {
    const { token } = await paired('mechanic');
    await writes({ kind: 'note', text: 'R. Vale was slow' }, token);
    await ask('GET', '/api/karts/41/facts?by=R.+Vale', undefined, { token });
    await ask('GET', '/api/karts/R.%20Vale', undefined, { token });
    await ask('POST', '/api/pair', { code: 'SECRETCODE', name: 'R. Vale' });
    const figures = await (await ask('GET', '/metrics', undefined, HERE)).text();
    expect(figures).toContain('kartwright_requests_total{method="POST",route="/api/karts/:name/facts",status="201"} 1');
    for (const text of [figures, lines.join('')])
      expect(text).not.toMatch(/Vale|192\.168|10\.0\.0|SECRETCODE|token-of|karts\/41/);
    expect(lines.length).toBeGreaterThan(4);
  });

  test('the certificate of the authority is for everybody, its key for nobody', async () => {
    expect(await (await ask('GET', '/authority.pem')).text()).toBe('PEM');
    expect((await ask('GET', '/authority-key.pem')).status).toBe(401);
  });

  test('what the front door answers of the API is kept in no cache either', async () => {
    for (const path of ['/api/me', '/api/devices', '/api/karts'])
      for (const asker of [{}, HERE])
        expect((await ask('GET', path, undefined, asker)).headers.get('cache-control')).toBe('no-store');
  });

  test('every answer carries the headers that keep other pages out', async () => {
    for (const path of ['/', '/api/karts', '/healthz', '/nothing', '/authority.pem']) {
      const { headers } = await ask('GET', path);
      expect(headers.get('content-security-policy')).toMatch(/default-src 'none'; script-src 'self'; style-src 'self'/);
      expect(headers.get('content-security-policy')).not.toMatch(/unsafe/);
      expect(headers.get('x-content-type-options')).toBe('nosniff');
      expect(headers.get('referrer-policy')).toBe('no-referrer');
      expect(headers.get('cross-origin-opener-policy')).toBe('same-origin');
    }
  });
});
