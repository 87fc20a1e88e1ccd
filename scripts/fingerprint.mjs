/** A hash over files: the same while nothing that matters has changed. Used to tell whether an install or a build is stale. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative, sep } from 'node:path';

/** All files under `path` (a file or a folder), in one order on every machine. */
export function filesUnder(path) {
  if (!existsSync(path)) return [];
  if (!statSync(path).isDirectory()) return [path];
  return readdirSync(path)
    .sort()
    .flatMap(name => filesUnder(join(path, name)));
}

/**
 * @param {string} base folder the names are taken relative to
 * @param {readonly string[]} paths files and folders below it; a missing one counts as missing
 * @param {{ skip?: RegExp, also?: readonly string[] }} options names to leave out; texts to mix in
 */
export function fingerprint(base, paths, { skip, also = [] } = {}) {
  const hash = createHash('sha256');
  for (const text of also) hash.update(`text ${text}\n`);
  for (const file of paths.flatMap(path => filesUnder(join(base, path)))) {
    const name = relative(base, file).split(sep).join('/');
    if (skip?.test(name)) continue;
    const bytes = readFileSync(file);
    hash.update(`file ${name} ${bytes.length}\n`).update(bytes);
  }
  return hash.digest('hex');
}

/** What a mark file says, or undefined. */
export function readMark(path) {
  return existsSync(path) ? readFileSync(path, 'utf8').trim() : undefined;
}
