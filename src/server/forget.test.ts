/** Taking a person out over HTTP: owners only, within their team. */
import { beforeEach, describe, expect, test } from 'vitest';
import {
  type App,
  createApp,
  enter,
  NOBODY,
  type Register,
  type RegisterState,
  type Role,
  withCode,
} from '../app/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { createFront, type Front } from './front.ts';

const now = new Date('2026-05-01T10:00:00.000Z');
const reader = { read: async () => ({ ok: true, kart: { name: '41', items: {}, parts: {}, joints: {} } }) as never };
let state: RegisterState;
let front: Front;
let books: Map<string, App>;
let lines: string[];
let n = 0;
const register: Register = {
  read: async () => state,
  async change(step) {
    const { state: next, give } = step(state);
    state = next;
    return give;
  },
};

async function bookOf(team: string): Promise<App> {
  const known = books.get(team);
  if (known) return known;
  const ids = { next: () => `id-${++n}`, salt: () => '0'.repeat(32) };
  const app = createApp({ store: memoryStore(), clock: { now: () => now }, ids, reader, device: `laptop ${team}` });
  books.set(team, app);
  await app.fileKart('kart: 1', { by: 'R. Vale' });
  return app;
}

beforeEach(() => {
  [state, books, lines] = [NOBODY, new Map(), []];
  const secrets = { code: () => '', token: () => '', id: () => '' };
  const log = (...said: readonly unknown[]): void => void lines.push(JSON.stringify(said));
  front = createFront({ register, secrets, bookOf, now: () => now, log });
});

type From = { readonly token?: string; readonly here?: true };
const HERE: From = { here: true };
function ask(body: object, { token, here }: From) {
  const headers = {
    host: 'localhost:50271',
    'content-type': 'application/json',
    ...(token && { authorization: `Bearer ${token}` }),
  };
  const request = new Request('http://localhost:50271/api/forget', {
    method: 'POST',
    headers,
    body: JSON.stringify(body),
  });
  const remoteAddress = here ? '127.0.0.1' : '192.168.7.20';
  return Promise.resolve(front.fetch(request, { incoming: { socket: { remoteAddress } } }));
}

async function paired(role: Role, team = ''): Promise<{ token: string; id: string }> {
  const [code, token, id] = [`C${++n}`, `token-of-forty-letters-and-more-${n}`, n.toString(16).padStart(8, '0')];
  state = withCode(state, { code, role, team, now });
  state = enter(state, { code, name: 'phone of A. Bench', id, token, now }).state;
  return { token, id };
}

describe('a person taken out', () => {
  const FORGET = { person: 'A. Bench', by: 'R. Vale' };

  test('by an owner of the team, from its book and from the names of its devices, and from no other', async () => {
    const [owner, other] = [await paired('owner'), await paired('mechanic', 'red')];
    for (const team of ['', 'red'])
      await (await bookOf(team)).record('41', [{ kind: 'note', text: 'dry' }], { by: 'A. Bench' });
    const dry = await ask({ ...FORGET, dryRun: true }, owner);
    expect(await dry.json()).toMatchObject({ theirs: 1, done: false });
    const done = await ask(FORGET, owner);
    expect(await done.json()).toMatchObject({ theirs: 1, left: [], done: true });
    expect(await (await bookOf('')).exportBook()).not.toContain('A. Bench');
    expect(await (await bookOf('red')).exportBook()).toContain('A. Bench');
    expect(owner.id).not.toBe(other.id);
    expect(state.devices.map(({ name }) => name)).toEqual([
      expect.stringMatching(/^device of somebody/),
      'phone of A. Bench',
    ]);
    expect(lines.join()).not.toContain('A. Bench');
  });

  test('by nobody else', async () => {
    for (const role of ['mechanic', 'driver', 'scrutineer'] as const)
      expect((await ask(FORGET, await paired(role))).status).toBe(403);
    expect((await ask(FORGET, {})).status).toBe(401);
    expect((await ask({ person: 'A. Bench' }, HERE)).status).toBe(422);
    expect((await ask({ ...FORGET, person: 'N. Nobody' }, HERE)).status).toBeGreaterThan(400);
  });
});
