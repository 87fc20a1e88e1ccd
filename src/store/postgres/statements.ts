/** Every statement on a book in a database. Each names the schema of its book, and there is no other here. */
import type { Place } from './place.ts';

export type Statements = ReturnType<typeof statementsIn>;

export function statementsIn({ schema, channel, lock }: Pick<Place, 'schema' | 'channel' | 'lock'>) {
  const [fact, file, redaction] = ['fact', 'file', 'redaction'].map(table => `${schema}.${table}`);
  return {
    /** Whoever holds the lock writes. */
    lock: `select pg_advisory_xact_lock(${lock})`,
    tell: `notify ${channel}`,
    raise: `update ${schema}.book set format = $1 where format < $1`,
    /** What was taken out lies in the table's pages until they are cleared. */
    clear: `vacuum ${fact}`,
    rows: `select row::text, body from ${fact} where row > $1 order by ${fact}.row limit $2`,
    these: `select row::text, body from ${fact} where row = any($1) order by ${fact}.row`,
    one: `select row::text, body from ${fact} where id = $1`,
    chain: `select row::text, body from ${fact} where device = $1 and seq > $2 order by seq limit $3`,
    lying: `select row::text, id, hash, device, seq::text, body from ${fact} where row > $1 order by ${fact}.row limit $2`,
    files: `select hash from ${file} order by hash`,
    file: `select media_type, bytes from ${file} where hash = $1`,
    keepFile: `insert into ${file} (hash, media_type, bytes) select $1, $2, $3
      where not exists (select 1 from ${redaction} where target = $1) on conflict do nothing`,
    dropFile: `delete from ${file} where hash = $1`,
    /** Which facts are there under these ids, and what is to be taken out of them. */
    known: `select id, hash, null as redaction from ${fact} where id = any($1)
      union all select target, null, body from ${redaction} where target = any($1)`,
    ends: `select device, seq::text, hash from unnest($1::text[]) as named(device)
      cross join lateral (select seq, hash from ${fact} f where f.device = named.device order by seq desc limit 1) as last`,
    body: `select body from ${fact} where id = $1`,
    rewrite: `update ${fact} set body = $1 where id = $2`,
    keepRedaction: `insert into ${redaction} (target, body) values ($1, $2) on conflict do nothing`,
    /** Rows are numbered in the order of the facts. */
    keep: `insert into ${fact} (id, hash, device, seq, body)
      select id, hash, device, seq, body
      from unnest($1::text[], $2::text[], $3::text[], $4::bigint[], $5::text[])
        with ordinality as fresh(id, hash, device, seq, body, place)
      order by place`,
  };
}
