/** A PostgreSQL server killed and started again under load, commits waiting for the disk: what was acknowledged is there, once. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { proofOf } from '../../src/app/index.ts';
import { sealNext } from '../../src/book/index.ts';
import { openPostgresStore } from '../../src/store/postgres/index.ts';
import { type Postgres, postgresBinaries, startPostgres } from '../postgres.ts';
import { note } from '../store-contract/note.ts';
import { randoms, report, SEED, tries } from './size.ts';

const WRITERS = 12;
const bin = postgresBinaries();

describe.skipIf(bin === undefined)('a database that dies', () => {
  let server: Postgres;
  beforeAll(async () => {
    server = await startPostgres(bin ?? '', { durable: true });
  });
  afterAll(() => server?.stop());

  test('keeps what two servers acknowledged, and both go on when it is there again', async () => {
    const random = randoms(SEED);
    const url = await server.newDatabase();
    const stores = [await openPostgresStore(url), await openPostgresStore(url)];
    const [acknowledged, refused] = [new Set<string>(), new Set<string>()];
    const rounds = tries(2, 60);
    let n = 0;
    for (let round = 0; round < rounds; round++) {
      let up = true;
      const before = acknowledged.size;
      const load = Array.from({ length: WRITERS }, async (_, writer) => {
        const store = stores[writer % 2];
        while (up) {
          const id = `f${n++}`;
          try {
            await store?.appendNext(`bench ${writer % 3}`, last => [sealNext(last, note(id, `bench ${writer % 3}`))]);
            acknowledged.add(id);
          } catch (error) {
            expect(error).toMatchObject({ name: 'StoreError', remedy: expect.stringMatching(/\w{3}/) });
            refused.add(id);
          }
        }
      });
      while (acknowledged.size < before + WRITERS) await new Promise(done => setTimeout(done, 2));
      await new Promise(done => setTimeout(done, random() * 60));
      await server.kill();
      up = false;
      await Promise.all(load);
      await server.start();
    }
    const [store] = stores;
    const ids = ((await store?.read()) ?? []).map(({ fact }) => fact.id);
    expect([...acknowledged].filter(id => !ids.includes(id))).toEqual([]);
    expect(new Set(ids).size).toBe(ids.length);
    expect(store && (await proofOf(store)).problems).toEqual([]);
    for (const one of stores) await one.close();
    report(
      `PostgreSQL killed ${rounds} times under load of two servers: ${acknowledged.size} facts acknowledged, none lost, none doubled; ${refused.size} refused in words`,
    );
  }, 1_800_000);
});
