import { beforeEach, describe, expect, test } from 'vitest';
import { note } from '../../test/store-contract/note.ts';
import { type App, createApp, exchange } from '../app/index.ts';
import { type Fact, sealNext } from '../book/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { createServer } from './server.ts';

const reader = { read: async () => ({ ok: false, problems: [] }) as never };
const book = (device: string, store = memoryStore()) => ({
  store,
  app: createApp({
    store,
    clock: { now: () => new Date(0) },
    ids: { next: () => '', salt: () => '0'.repeat(32) },
    reader,
    device,
  }),
});
let there: App;
let server: ReturnType<typeof createServer>;
beforeEach(() => {
  there = book('bench').app;
  server = createServer(there);
});
const ask = (path: string, body?: unknown) =>
  server.request(`http://localhost/api/book/${path}`, {
    headers: { host: 'localhost:4100', 'content-type': 'application/json' },
    ...(body === undefined ? {} : { method: 'POST', body: JSON.stringify(body) }),
  });
const answer = async (path: string, body?: unknown) => (await ask(path, body)).json() as Promise<never>;
/** The book at the other end of the line. */
const overHttp: Parameters<typeof exchange>[1] = {
  ends: async () => ((await answer('ends')) as { ends: never }).ends,
  since: async numbers => ((await answer('since', { numbers })) as { facts: Fact[] }).facts,
  async take(facts) {
    const response = await ask('take', { facts });
    const body = (await response.json()) as never;
    return response.ok
      ? { kind: 'taken', ...(body as { added: number; known: number }) }
      : { kind: 'refused', ...(body as { problems: [] }) };
  },
};

describe('two books over HTTP', () => {
  test('hold the same after they met', async () => {
    const phone = book('phone');
    await phone.store.appendNext('phone', last => [sealNext(last, note('from the phone', 'phone'))]);
    await there.take([sealNext({ seq: 0, hash: '0'.repeat(64) }, note('from the tablet', 'tablet'))]);
    expect(await exchange(phone.app, overHttp)).toEqual({ came: 1, went: 1, problems: [] });
    expect((await phone.app.since({})).map(({ id }) => id).toSorted()).toEqual(
      (await there.since({})).map(({ id }) => id).toSorted(),
    );
    expect(await exchange(phone.app, overHttp)).toEqual({ came: 0, went: 0, problems: [] });
  });

  test('take no fact that was changed, that is none, or that leaves a hole, and say why', async () => {
    const one = sealNext({ seq: 0, hash: '0'.repeat(64) }, note('a', 'phone'));
    const two = sealNext(one, note('b', 'phone'));
    for (const [facts, said] of [
      [[{ ...one, by: 'someone else' }], 'hash of this fact must be'],
      [['nonsense'], 'must be a JSON object'],
      [[two], 'Expected the facts of device phone to go on from number 1'],
    ] as const) {
      const response = await ask('take', { facts });
      expect(response.status).toBe(409);
      expect(JSON.stringify(await response.json())).toContain(said);
    }
    expect((await ask('take', { facts: 'all' })).status).toBe(422);
    expect((await ask('since', { numbers: { phone: -1 } })).status).toBe(422);
    expect(await there.since({})).toEqual([]);
  });
});
