/** Backups as files of a folder: each is written beside its name, proved, forced to the disk, and only then gets its name. */
import {
  chmodSync,
  closeSync,
  existsSync,
  fsyncSync,
  mkdirSync,
  openSync,
  readdirSync,
  renameSync,
  rmSync,
} from 'node:fs';
import { dirname, join, resolve } from 'node:path';

/** `at`: RFC 3339, UTC, to the second, as its name says. */
export type Backup = { readonly file: string; readonly at: string };

const NAME = /^book-(\d{4}-\d\d-\d\dT)(\d\d)-(\d\d)-(\d\d)Z\.sqlite$/;

/** A name with the time; where one of this second is there already, with the next second that is free. */
export function backupFile(folder: string, now: Date): string {
  const file = join(folder, `book-${now.toISOString().slice(0, 19).replaceAll(':', '-')}Z.sqlite`);
  return existsSync(file) ? backupFile(folder, new Date(now.getTime() + 1000)) : file;
}

/** Newest first; a file of another name is none of ours. */
export function backupsIn(folder: string): readonly Backup[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .flatMap(name => {
      const [, day, hour, minute, second] = NAME.exec(name) ?? [];
      return day === undefined ? [] : [{ file: join(folder, name), at: `${day}${hour}:${minute}:${second}Z` }];
    })
    .sort((a, b) => (a.at < b.at ? 1 : -1));
}

export const removeBackup = ({ file }: Backup): void => rmSync(file);

/**
 * Whatever goes wrong in `copy` or `prove`, no file of this name is left and an older one is untouched. Throws when the
 * name is taken.
 */
export async function writeBackup<Proof>(
  file: string,
  by: { readonly copy: (part: string) => Promise<void>; readonly prove: (part: string) => Promise<Proof> },
): Promise<Proof> {
  const path = resolve(file);
  if (existsSync(path)) throw taken(path);
  mkdirSync(dirname(path), { recursive: true, mode: 0o700 });
  const part = `${path}.part`;
  remove(part);
  try {
    await by.copy(part);
    chmodSync(part, 0o600); // all that a person wrote is in there
    const proof = await by.prove(part);
    toDisk(part);
    if (existsSync(path)) throw taken(path);
    renameSync(part, path);
    if (process.platform !== 'win32') toDisk(dirname(path)); // the name too; Windows opens no folder
    return proof;
  } finally {
    remove(part);
  }
}

function toDisk(path: string): void {
  const handle = openSync(path, 'r');
  try {
    fsyncSync(handle);
  } finally {
    closeSync(handle);
  }
}

function remove(part: string): void {
  for (const end of ['', '-wal', '-shm', '-journal']) rmSync(`${part}${end}`, { force: true });
}

const taken = (path: string): Error =>
  Object.assign(new Error(`Expected no file at ${path} yet, and there is one`), {
    remedy: 'Choose another name; nothing was overwritten.',
  });
