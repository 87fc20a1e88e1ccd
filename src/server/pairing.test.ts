/** Coming in again, and who may make an owner. */
import { beforeEach, expect, test } from 'vitest';
import { note } from '../../test/store-contract/note.ts';
import { createApp, NOBODY, type Register, type RegisterState, withCode } from '../app/index.ts';
import { CHAIN_START, type Fact, sealAll } from '../book/index.ts';
import { kartReader, libraryFiles } from '../host/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { createFront, type Front } from './front.ts';

let now = '';
let state: RegisterState = NOBODY;
let front: Front;
let n = 0;
const clock = { now: () => new Date(now) };
const register: Register = {
  read: async () => state,
  async change(step) {
    const { state: next, give } = step(state);
    state = next;
    return give;
  },
};
const ids = { next: () => `id-${++n}`, salt: () => '0'.repeat(32) };
const app = createApp({ store: memoryStore(), clock, ids, reader: kartReader(libraryFiles()), device: 'laptop' });
beforeEach(() => {
  [now, state] = ['2026-05-01T10:00:00.000Z', NOBODY];
  const secrets = {
    code: () => `CODE-${++n}`,
    token: () => `token-of-forty-letters-and-more-${++n}`,
    id: () => (++n).toString(16).padStart(8, '0'),
  };
  front = createFront({
    register,
    secrets,
    bookOf: async () => app,
    now: clock.now,
    log: () => undefined,
    hosts: ['192.168.7.5'],
  });
});

type Asked = { readonly token?: string; readonly from?: string; readonly host?: string };
const HERE: Asked = { from: '127.0.0.1', host: 'localhost' };
function ask(method: string, path: string, body?: object, { token, from, host = '192.168.7.5' }: Asked = {}) {
  const headers = { host, 'content-type': 'application/json', ...(token && { cookie: `kartwright=${token}` }) };
  const request = new Request(`http://${host}${path}`, {
    method,
    headers,
    ...(body && { body: JSON.stringify(body) }),
  });
  const socket = { remoteAddress: from ?? `10.0.${n % 200}.${++n % 200}` };
  return Promise.resolve(front.fetch(request, { incoming: { socket } }));
}

/** Lets a device in, which is the one of `before` again when there is one. */
async function paired(role: 'owner' | 'mechanic' | 'driver', team = '', before: Asked = {}) {
  const code = `C${++n}`;
  state = withCode(state, { code, role, team, now: new Date(now) });
  const answer = await ask('POST', '/api/pair', { code, name: `${role} phone` }, before);
  expect(answer.status).toBe(201);
  const [, token = ''] = /^kartwright=([^;]+)/.exec(answer.headers.get('set-cookie') ?? '') ?? [];
  return { token, id: ((await answer.json()) as { id: string }).id };
}

test('a device that comes in again has a new token, and the one before is worth nothing, also when it went to another team', async () => {
  for (const team of ['', 'red']) {
    const { token } = await paired('mechanic');
    const { token: next } = await paired('mechanic', team, { token });
    expect(next).not.toBe(token);
    expect((await ask('GET', '/api/karts', undefined, { token: next })).status).toBe(200);
    expect((await ask('GET', '/api/karts', undefined, { token })).status).toBe(401);
  }
});

test('a device that left and comes in again goes on with the chain it wrote, which is nobody else’s', async () => {
  const { token, id } = await paired('mechanic');
  const [first, second] = sealAll(CHAIN_START, [note('a', 'phone-a'), note('b', 'phone-a')]);
  const send = async (fact: Fact | undefined, asked: Asked) =>
    (await ask('POST', '/api/book/take', { facts: [fact] }, asked)).status;
  expect(await send(first, { token })).toBe(200);
  const left = await ask('DELETE', '/api/me', undefined, { token });
  expect([left.status, left.headers.get('set-cookie')]).toEqual([204, null]);
  expect(await send(second, { token })).toBe(401);
  expect(await send(second, await paired('mechanic'))).toBe(409);
  const again = await paired('mechanic', '', { token });
  expect(again.id).not.toBe(id);
  expect(await send(second, again)).toBe(200);
});

test('an owner makes another owner only just after showing a code; this machine, and whoever makes no owner, is not asked', async () => {
  const [owner, other] = [await paired('owner'), await paired('driver')];
  const makes = async (role: string, asked: Asked) => (await ask('POST', '/api/devices/pair', { role }, asked)).status;
  const raises = async (role: string, asked: Asked) =>
    (await ask('POST', `/api/devices/${other.id}`, { role }, asked)).status;
  expect([await makes('owner', owner), await raises('owner', owner)]).toEqual([201, 200]);
  expect(await raises('driver', owner)).toBe(200);
  now = '2026-05-01T10:15:00.000Z';
  expect([await makes('owner', owner), await raises('owner', owner)]).toEqual([403, 403]);
  expect(await (await ask('POST', '/api/devices/pair', { role: 'owner' }, owner)).text()).toMatch(/15 minutes/);
  expect([await makes('mechanic', owner), await raises('mechanic', owner)]).toEqual([201, 200]);
  expect([await makes('owner', HERE), await raises('owner', HERE)]).toEqual([201, 200]);
  expect((await ask('POST', `/api/devices/${other.id}`, { revoke: true }, owner)).status).toBe(200); // never waits
  const again = await paired('owner');
  expect(await makes('owner', again)).toBe(201);
});
