/** Makes the book in a database when it is new, and leaves alone what is newer than this program. */
import type { PoolClient } from 'pg';
import { StoreError } from '../store-error.ts';
import type { Place } from './place.ts';

/** 1 holds facts of format 1 only. A book becomes 2 with the first fact that an older program could not read, and not before. */
export const POSTGRES_FORMAT = 2;
/** A schema of its own, so that a book can share a database. */
const schemaOf = (schema: string): string => `
  create schema ${schema};
  create table ${schema}.book (format integer not null);
  create table ${schema}.fact (
    row bigserial primary key,
    id text not null unique,
    hash text not null,
    device text not null,
    seq bigint not null,
    body text not null,
    unique (device, seq)
  );
  create table ${schema}.file (hash text primary key, media_type text not null, bytes bytea not null);
  create function ${schema}.never() returns trigger language plpgsql as
    $$ begin raise exception 'a fact is never changed or deleted'; end $$;
  create trigger fact_never_changed before update or delete or truncate on ${schema}.fact
    execute function ${schema}.never();
  insert into ${schema}.book values (1);
`;

/** What redactions take out: of the fact of an id, or the file of a hash. An older program passes it over. */
const redactionOf = (schema: string): string => `
  create table ${schema}.redaction (target text not null, body text not null, unique (target, body));
  create function ${schema}.only_redacted() returns trigger language plpgsql as
    $$ begin
      if (new.row, new.id, new.hash, new.device, new.seq) = (old.row, old.id, old.hash, old.device, old.seq)
        and exists (select 1 from ${schema}.redaction where target = old.id) then return new; end if;
      raise exception 'a fact is never changed or deleted';
    end $$;
  drop trigger fact_never_changed on ${schema}.fact;
  create trigger fact_never_deleted before delete or truncate on ${schema}.fact
    execute function ${schema}.never();
  create trigger fact_never_changed before update on ${schema}.fact
    for each row execute function ${schema}.only_redacted();
`;

const THERE = 'select to_regclass($1) is not null as there';

/** Inside a transaction that holds the lock of the writers. */
export async function beginBook(client: PoolClient, { schema, where }: Place): Promise<void> {
  const { rows } = await client.query<{ there: boolean }>(THERE, [`${schema}.book`]);
  if (!rows[0]?.there) return void (await client.query(schemaOf(schema) + redactionOf(schema)));
  const found = await client.query<{ format: number }>(`select format from ${schema}.book`);
  const format = found.rows[0]?.format ?? 0;
  if (format > POSTGRES_FORMAT)
    throw new StoreError(
      'newer format',
      `${where}: this version reads books up to format ${POSTGRES_FORMAT}, got format ${format}`,
      'update this program; the book was not touched',
    );
  const redaction = await client.query<{ there: boolean }>(THERE, [`${schema}.redaction`]);
  if (!redaction.rows[0]?.there) await client.query(redactionOf(schema));
}
