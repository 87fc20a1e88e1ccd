/**
 * The SQLite that is there. `@photostructure/sqlite` has the API of Node's own `node:sqlite`; where its binary does not
 * load, Node's own (from 22.13) takes its place.
 */
import { SqliteDialect } from 'kysely';

export type Value = string | number | null | Uint8Array;
type Statement = {
  all(...values: readonly Value[]): unknown[];
  get(...values: readonly Value[]): unknown;
  run(...values: readonly Value[]): { changes: number | bigint; lastInsertRowid: number | bigint };
  columns(): readonly unknown[];
};
export type Database = { exec(sql: string): void; prepare(sql: string): Statement; close(): void };
type Options = { readonly readOnly?: boolean; readonly timeout?: number };
export type Driver = { readonly DatabaseSync: new (path: string, options?: Options) => Database };

export async function loadDriver(): Promise<Driver> {
  try {
    return (await import('@photostructure/sqlite')) as unknown as Driver;
  } catch (cause) {
    const own = process.getBuiltinModule?.('node:sqlite') as Driver | undefined;
    if (own) return own;
    throw new Error('no SQLite for this machine: use Node 22.13 or newer, which brings its own', { cause });
  }
}

/** For kysely: statements prepared once, and writing transactions that wait their turn at `begin`, not half way. Who opened the database closes it. */
export function dialect(database: Database): SqliteDialect {
  const prepared = new Map<string, ReturnType<typeof prepare>>();
  const prepare = (sql: string) => {
    const statement = database.prepare(sql === 'begin' ? 'begin immediate' : sql);
    return {
      reader: statement.columns().length > 0,
      all: (values: readonly unknown[]) => statement.all(...(values as readonly Value[])),
      run: (values: readonly unknown[]) =>
        sql === 'rollback' ? undone() : statement.run(...(values as readonly Value[])),
      iterate: (values: readonly unknown[]) => statement.all(...(values as readonly Value[]))[Symbol.iterator](),
    };
  };
  /** On a full disk SQLite may have undone the transaction itself; a second undoing would hide the reason. */
  const undone = () => {
    try {
      database.exec('rollback');
    } catch (error) {
      if (!String(error).includes('no transaction is active')) throw error;
    }
    return { changes: 0, lastInsertRowid: 0 };
  };
  const cached = (sql: string) => {
    const statement = prepared.get(sql) ?? prepare(sql);
    prepared.set(sql, statement);
    return statement;
  };
  return new SqliteDialect({ database: { prepare: cached, close: () => {} } });
}
