/** The files of the project as a clone has them: what git tracks, or is about to. */
import { execFileSync } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import { extname, join } from 'node:path';
import { fileURLToPath } from 'node:url';

export const root = fileURLToPath(new URL('../..', import.meta.url));

const TEXT = new Set([
  '.ts',
  '.tsx',
  '.mjs',
  '.cjs',
  '.json',
  '.jsonl',
  '.md',
  '.yaml',
  '.yml',
  '.css',
  '.html',
  '.svg',
  '',
]);

/** Paths from the root, `/` between folders. */
export const tracked: readonly string[] = execFileSync(
  'git',
  ['ls-files', '--cached', '--others', '--exclude-standard'],
  {
    cwd: root,
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
  },
)
  .split('\n')
  .filter(path => path !== '' && existsSync(join(root, path)));

export const texts = tracked.filter(path => TEXT.has(extname(path)) && path !== 'package-lock.json');
export const code = tracked.filter(path => /\.(ts|tsx|mjs|cjs)$/.test(path));

export const readText = (path: string): string => readFileSync(join(root, path), 'utf8');

/** `path:line  text` of every line that matches, in the files given. */
export function linesLike(pattern: RegExp, among: readonly string[]): string[] {
  return among.flatMap(path =>
    readText(path)
      .split('\n')
      .flatMap((line, i) => (pattern.test(line) ? [`${path}:${i + 1}  ${line.trim().slice(0, 120)}`] : [])),
  );
}
