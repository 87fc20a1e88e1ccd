/** The folder that holds a person's book: KARTWRIGHT_DATA, else .kartwright in the home folder. */
import { randomUUID } from 'node:crypto';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { homedir, hostname } from 'node:os';
import { join, resolve } from 'node:path';

export type DataFolder = {
  readonly path: string;
  readonly book: string;
  /** Of the book, to open it faster; whoever deletes it loses nothing. */
  readonly snapshot: string;
  /** Name of this device in the record, made once and kept beside the book. */
  readonly device: string;
};

/** Makes the folder, readable by its owner only, when it is missing. Throws with the remedy when it cannot. */
export function openDataFolder(env: Readonly<Record<string, string | undefined>> = process.env): DataFolder {
  const path = resolve(env.KARTWRIGHT_DATA || join(homedir(), '.kartwright'));
  try {
    mkdirSync(path, { recursive: true, mode: 0o700 });
    return {
      path,
      book: join(path, 'book.sqlite'),
      snapshot: join(path, 'book.snapshot'),
      device: deviceName(join(path, 'device')),
    };
  } catch (cause) {
    const why = cause instanceof Error ? cause.message : String(cause);
    throw new Error(
      `Expected a folder for the book that can be written, got ${path} (${why}). Set KARTWRIGHT_DATA to a folder of your own.`,
      { cause },
    );
  }
}

/** Two processes may start at once: only one writes the name, both read it. */
function deviceName(file: string): string {
  const known = read(file);
  if (known) return known;
  const host =
    hostname()
      .replace(/[^\w-]+/g, '-')
      .slice(0, 40) || 'device';
  try {
    writeFileSync(file, `${host}-${randomUUID().slice(0, 8)}\n`, {
      flag: known === undefined ? 'wx' : 'w',
      mode: 0o600,
    });
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code !== 'EEXIST') throw error;
  }
  return readFileSync(file, 'utf8').trim();
}

/**
 * A new name for this device: a book that was set back to an old copy must not number its facts under the old one, for
 * others may hold what it wrote there since.
 */
export function renameDevice({ path }: Pick<DataFolder, 'path'>): string {
  const file = join(path, 'device');
  rmSync(file, { force: true });
  return deviceName(file);
}

/** Undefined when there is no such file; empty when its writing was cut off. */
function read(file: string): string | undefined {
  try {
    return readFileSync(file, 'utf8').trim();
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
}
