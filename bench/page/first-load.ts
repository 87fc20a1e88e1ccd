/** What a phone fetches before the bench page is there. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { packageRoot } from '../../src/host/index.ts';
import type { Figure } from '../measure.ts';

const MOST_KB = 200;

export function firstLoad(): Figure {
  const folder = join(packageRoot(), 'dist', 'web');
  const index = readFileSync(join(folder, 'index.html'), 'utf8');
  const named = index.matchAll(
    /<(?:script|link rel="(?:modulepreload|stylesheet|preload)")[^>]+(?:src|href)="(\/assets[^"]+)"/g,
  );
  const keeper = readdirSync(join(folder, 'assets')).filter(file => /^book-worker-.*\.js$/.test(file));
  const beside = new Set<string>();
  for (const file of keeper) imported(folder, file, beside);
  const files = [...[...named].map(([, file = '']) => file), ...[...beside].map(file => join('assets', file))];
  const bytes = files.reduce((sum, file) => sum + gzipSync(readFileSync(join(folder, file))).length, 0);
  return {
    what: `first load, gzip: ${files.length} files`,
    value: `${(bytes / 1000).toFixed(0)} kB`,
    ratio: `goal ${MOST_KB} kB`,
  };
}

/** A script of the worker and whatever it imports before it runs. */
function imported(folder: string, file: string, found: Set<string>): void {
  if (found.has(file)) return;
  found.add(file);
  const text = readFileSync(join(folder, 'assets', file), 'utf8');
  for (const [, next = ''] of text.matchAll(/(?:import|export)[^"'();]*["']\.\/([^"']+\.js)["']/g))
    imported(folder, next, found);
}
