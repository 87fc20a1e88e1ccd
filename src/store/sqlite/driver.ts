/**
 * The SQLite that is there. `@photostructure/sqlite` has the API of Node's own `node:sqlite`; where its binary does not
 * load, Node's own (from 22.13) takes its place.
 */

type Value = string | number | null | Uint8Array;
type Statement = {
  all(...values: readonly Value[]): unknown[];
  get(...values: readonly Value[]): unknown;
  run(...values: readonly Value[]): { changes: number | bigint; lastInsertRowid: number | bigint };
};
export type Database = { exec(sql: string): void; prepare(sql: string): Statement; close(): void };
type Options = { readonly readOnly?: boolean; readonly timeout?: number };
export type Driver = {
  readonly DatabaseSync: new (path: string, options?: Options) => Database;
  readonly backup?: (from: Database, to: string, options: { readonly rate: number }) => Promise<number>;
};

export async function loadDriver(): Promise<Driver> {
  try {
    return (await import('@photostructure/sqlite')) as unknown as Driver;
  } catch (cause) {
    const own = process.getBuiltinModule?.('node:sqlite') as Driver | undefined;
    if (own) return own;
    throw new Error('no SQLite for this machine: use Node 22.13 or newer, which brings its own', { cause });
  }
}
