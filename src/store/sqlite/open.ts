/** Opens the file of a book, makes it when it is new, and leaves alone what is not a book or is newer than this program. */
import { existsSync, statSync } from 'node:fs';
import { StoreError } from '../store-error.ts';
import type { Database, Driver } from './driver.ts';

/** 1 holds facts of format 1 only. A book becomes 2 with the first fact that an older program could not read, and not before. */
export const SQLITE_FORMAT = 2;
/** "KWRT": tells a book from any other SQLite file. */
const APPLICATION_ID = 0x4b575254;
/** How long one writer waits for another, milliseconds. */
const BUSY_MS = 10_000;

const SCHEMA = `
  create table fact (
    row integer primary key,
    id text not null unique,
    hash text not null,
    device text not null,
    seq integer not null,
    body text not null,
    unique (device, seq)
  ) strict;
  create table file (hash text primary key, media_type text not null, bytes blob not null) strict;
  create trigger fact_never_changed before update on fact begin select raise(abort, 'a fact is never changed'); end;
  create trigger fact_never_deleted before delete on fact begin select raise(abort, 'a fact is never deleted'); end;
  pragma application_id = ${APPLICATION_ID};
  pragma user_version = 1;
`;

/** What redactions take out: of the fact of an id, or the file of a hash. An older program passes it over. */
const REDACTION = `
  create table redaction (target text not null, body text not null, unique (target, body)) strict;
  drop trigger fact_never_changed;
  create trigger fact_never_changed before update on fact
    when new.row is not old.row or new.id is not old.id or new.hash is not old.hash or new.device is not old.device
      or new.seq is not old.seq or not exists (select 1 from redaction where target = old.id)
    begin select raise(abort, 'a fact is never changed'); end;
`;
const HAS_REDACTION = "select 1 from sqlite_schema where type = 'table' and name = 'redaction'";

export function openDatabase(driver: Driver, path: string): Database {
  if (existsSync(path) && statSync(path).size > 0) lookFirst(driver, path);
  const database = new driver.DatabaseSync(path, { timeout: BUSY_MS });
  try {
    database.exec(`pragma busy_timeout = ${BUSY_MS}`);
    database.exec('begin immediate');
    // Another program may have made it between the look and here.
    if (pragma(database, 'user_version') === 0) database.exec(SCHEMA);
    if (database.prepare(HAS_REDACTION).get() === undefined) database.exec(REDACTION);
    database.exec('commit');
    // What is taken out is overwritten, not only let go.
    database.exec('pragma journal_mode = wal; pragma synchronous = full; pragma secure_delete = on');
    return database;
  } catch (error) {
    letGo(database);
    throw error;
  }
}

/** A driver that keeps its statements closes late: an open transaction would hold the file until then. */
function letGo(database: Database): void {
  try {
    database.exec('rollback');
  } catch {
    // None was open, or the file is too damaged even for that.
  }
  database.close();
}

/** Without the right to write, so that a file that is refused stays as it is to the last byte. */
function lookFirst(driver: Driver, path: string): void {
  const database = new driver.DatabaseSync(path, { readOnly: true, timeout: BUSY_MS });
  try {
    const version = pragma(database, 'user_version');
    const application = pragma(database, 'application_id');
    const fresh =
      version === 0 && application === 0 && database.prepare('select 1 from sqlite_schema').get() === undefined;
    if (fresh) return;
    if (application !== APPLICATION_ID) {
      throw new StoreError(
        'not a book',
        `${path}: must be a book of this program, got an SQLite file of another`,
        'name the right file; this one was not touched',
      );
    }
    if (version > SQLITE_FORMAT) {
      throw new StoreError(
        'newer format',
        `${path}: this version reads books up to format ${SQLITE_FORMAT}, got format ${version}`,
        'update this program; the book was not touched',
      );
    }
  } finally {
    database.close();
  }
}

function pragma(database: Database, name: 'user_version' | 'application_id'): number {
  return (database.prepare(`pragma ${name}`).get() as Record<typeof name, number>)[name];
}
