/** An append that is on the disk when it returns, in PostgreSQL: our store against the bare driver with the same statements. */
import pg from 'pg';
import { canonical, type Fact } from '../src/book/index.ts';
import { openPostgresStore } from '../src/store/postgres/index.ts';
import { postgresBinaries, startPostgres } from '../test/postgres.ts';
import { inventBook } from './facts.ts';
import { benchKart } from './kart.ts';
import { type Figure, times } from './measure.ts';

const FACTS = 400;
const ROUNDS = 5;
const TOGETHER = 20;

export async function databaseAppends(): Promise<readonly Figure[]> {
  const bin = postgresBinaries();
  if (bin === undefined) return [{ what: 'PostgreSQL', value: 'not here', ratio: 'no server in /usr/lib/postgresql' }];
  const facts = inventBook(benchKart(), FACTS);
  const server = await startPostgres(bin, { durable: true });
  try {
    const [bare, ours, many]: [number[], number[], number[]] = [[], [], []];
    for (let round = 0; round < ROUNDS; round++) {
      bare.push(await bareAppends(await server.newDatabase(), facts));
      ours.push(await storeAppends(await server.newDatabase(), facts, 1));
      many.push(await storeAppends(await server.newDatabase(), facts, TOGETHER));
    }
    const [driver, store, together] = [Math.max(...bare), Math.max(...ours), Math.max(...many)];
    return [
      { what: 'bare driver, same statements', value: rate(driver) },
      { what: 'store, one fact a transaction', value: rate(store), ratio: times(store, driver, 'the bare driver') },
      {
        what: `store, ${TOGETHER} writers at once`,
        value: rate(together),
        ratio: times(together, driver, 'the bare driver'),
      },
    ];
  } finally {
    await server.stop();
  }
}

const rate = (perSecond: number): string => `${Math.round(perSecond)} /s`;

async function storeAppends(url: string, facts: readonly Fact[], writers: number): Promise<number> {
  const store = await openPostgresStore(url);
  const from = performance.now();
  for (let n = 0; n < facts.length; n += writers) {
    const outcomes = await Promise.all(facts.slice(n, n + writers).map(fact => store.append([fact])));
    const lost = outcomes.find(({ kind }) => kind !== 'kept');
    if (lost) throw new Error(`bench: the store must keep every fact, got ${lost.kind}`);
  }
  const seconds = (performance.now() - from) / 1000;
  await store.close();
  return facts.length / seconds;
}

/** The statements of the store's append on a book that the store has made. */
async function bareAppends(url: string, facts: readonly Fact[]): Promise<number> {
  await (await openPostgresStore(url)).close();
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  const ask = (name: string, text: string, values: unknown[]) => client.query({ name, text, values });
  const from = performance.now();
  for (const { id, hash, device, seq, ...rest } of facts) {
    await client.query(
      'begin; set local synchronous_commit = on; set local lock_timeout = 10000; select pg_advisory_xact_lock(1)',
    );
    await ask('known', 'select id, hash from kartwright.fact where id = any($1)', [[id]]);
    await ask(
      'ends',
      `select device, seq::text, hash from unnest($1::text[]) as named(device)
       cross join lateral (select seq, hash from kartwright.fact f where f.device = named.device order by seq desc limit 1) as last`,
      [[device]],
    );
    await ask(
      'keep',
      `insert into kartwright.fact (id, hash, device, seq, body)
       select id, hash, device, seq, body
       from unnest($1::text[], $2::text[], $3::text[], $4::bigint[], $5::text[])
         with ordinality as fresh(id, hash, device, seq, body, place)
       order by place`,
      [[id], [hash], [device], [seq], [canonical({ id, hash, device, seq, ...rest })]],
    );
    await client.query('notify kartwright_facts');
    await client.query('commit');
  }
  const seconds = (performance.now() - from) / 1000;
  await client.end();
  return facts.length / seconds;
}
