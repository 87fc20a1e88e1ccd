/** What a phone fetches before the bench page is there. */
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { gzipSync } from 'node:zlib';
import { packageRoot } from '../../src/host/index.ts';
import type { Figure } from '../measure.ts';

const MOST_KB = 200;

export function firstLoad(): Figure {
  const folder = join(packageRoot(), 'dist', 'web');
  const index = readFileSync(join(folder, 'index.html'), 'utf8');
  const files = [
    ...index.matchAll(/<(?:script|link rel="(?:modulepreload|stylesheet)")[^>]+(?:src|href)="(\/assets[^"]+)"/g),
  ];
  const bytes = files.reduce((sum, [, file = '']) => sum + gzipSync(readFileSync(join(folder, file))).length, 0);
  return {
    what: `first load, gzip: ${files.length} files`,
    value: `${(bytes / 1000).toFixed(0)} kB`,
    ratio: `goal ${MOST_KB} kB`,
  };
}
