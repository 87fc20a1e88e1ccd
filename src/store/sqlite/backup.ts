/** The whole file of a book, as it is at one moment, into a new file while other programs write. */
import { loadDriver } from './driver.ts';
import { storeError } from './faults.ts';
import { openDatabase } from './open.ts';

/**
 * All pages in one step: a writer of another connection would make a copy in several steps begin again, and in a log (WAL) no
 * writer waits for a reader. Source: SQLite documentation, "SQLite Backup API" and "Write-Ahead Logging".
 */
const ALL_PAGES = 0x7fffffff;

/** Throws StoreError: damaged, disk full, cannot open ... */
export async function backUpSqlite(path: string, to: string): Promise<void> {
  const driver = await loadDriver();
  try {
    const database = openDatabase(driver, path);
    try {
      if (driver.backup) await driver.backup(database, to, { rate: ALL_PAGES });
      else database.exec(`vacuum into '${to.replaceAll("'", "''")}'`); // Node's own before 22.16
    } finally {
      database.close();
    }
  } catch (error) {
    throw storeError(error, path);
  }
}
