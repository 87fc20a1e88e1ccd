/** Every statement on a book, prepared once: a fact is kept in the time that the disk takes. */
import type { Lying } from '../../app/ports.ts';
import type { ChainEnd, Fact, NamedRedaction } from '../../book/index.ts';
import type { Database } from './driver.ts';
import { SQLITE_FORMAT } from './open.ts';

type Row = { readonly row: number; readonly body: string };
type FileRow = { readonly media_type: string; readonly bytes: Uint8Array };

/** A damaged file may have thousands; the first few say as much. */
const MOST_AILMENTS = 20;

export type Statements = ReturnType<typeof prepare>;

export function prepare(database: Database) {
  // A writer waits its turn at `begin`: one that has read before would fail at once, whatever the time-out.
  const begin = database.prepare('begin immediate');
  const commit = database.prepare('commit');
  const hash = database.prepare('select hash from fact where id = ?');
  const end = database.prepare('select seq, hash from fact where device = ? order by seq desc limit 1');
  const keep = database.prepare('insert into fact (id, hash, device, seq, body) values (?, ?, ?, ?, ?)');
  const rows = database.prepare('select row, body from fact where row > ? order by row limit ?');
  const these = database.prepare(
    'select row, body from fact where row in (select value from json_each(?)) order by row',
  );
  const one = database.prepare('select row, body from fact where id = ?');
  const chain = database.prepare('select row, body from fact where device = ? and seq > ? order by seq limit ?');
  const lying = database.prepare(
    'select row, id, hash, device, seq, body from fact where row > ? order by row limit ?',
  );
  const files = database.prepare('select hash from file order by hash');
  const check = database.prepare(`pragma integrity_check(${MOST_AILMENTS})`);
  const keepFile = database.prepare(
    'insert into file (hash, media_type, bytes) values (?, ?, ?) on conflict (hash) do nothing',
  );
  const raise = database.prepare(`pragma user_version = ${SQLITE_FORMAT}`);
  const redactions = database.prepare('select body from redaction where target = ?');
  const keepRedaction = database.prepare('insert into redaction (target, body) values (?, ?) on conflict do nothing');
  const body = database.prepare('select body from fact where id = ?');
  const rewrite = database.prepare('update fact set body = ? where id = ?');
  const dropFile = database.prepare('delete from file where hash = ?');
  const file = database.prepare('select media_type, bytes from file where hash = ?');
  return {
    begin: () => begin.run(),
    commit: () => commit.run(),
    /** Hash of the fact kept under an id. */
    hash: (id: string) => (hash.get(id) as { readonly hash: string } | undefined)?.hash,
    /** End of a device's chain; undefined when it has none. */
    end: (device: string) => end.get(device) as ChainEnd | undefined,
    keep: (fact: Fact, body: string) => keep.run(fact.id, fact.hash, fact.device, fact.seq, body),
    /** From here on an older program leaves this book alone. */
    raise: () => raise.run(),
    /** Of a fact by its id, or of a file by its hash. */
    redactions: (target: string) =>
      (redactions.all(target) as { readonly body: string }[]).map(one => JSON.parse(one.body) as NamedRedaction),
    keepRedaction: (target: string, text: string) => keepRedaction.run(target, text),
    body: (id: string) => (body.get(id) as { readonly body: string } | undefined)?.body,
    rewrite: (id: string, text: string) => rewrite.run(text, id),
    dropFile: (key: string) => dropFile.run(key),
    rows: (after: number, most: number) => rows.all(after, most) as Row[],
    these: (rows: readonly number[]) => these.all(JSON.stringify(rows)) as Row[],
    one: (id: string) => one.all(id) as Row[],
    chain: (device: string, after: number, most: number) => chain.all(device, after, most) as Row[],
    lying: (after: number, most: number) => lying.all(after, most) as Lying[],
    files: () => (files.all() as { readonly hash: string }[]).map(one => one.hash),
    /** Source: SQLite documentation, PRAGMA integrity_check: one row `ok`, or one a fault. */
    ailments: () =>
      (check.all() as { readonly integrity_check: string }[])
        .map(one => one.integrity_check)
        .filter(said => said !== 'ok'),
    keepFile: (key: string, mediaType: string, bytes: Uint8Array) => keepFile.run(key, mediaType, bytes),
    file: (key: string) => file.get(key) as FileRow | undefined,
  };
}
