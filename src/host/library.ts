/** The kinds, templates and rule sets that are shipped, and the demo, as text. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { DemoText, KartRead, KartReader } from '../app/index.ts';
import { type Library, readKart } from '../kart/index.ts';
import { packageRoot } from './root.ts';

const yamlIn = (folder: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(folder)
      .filter(name => name.endsWith('.yaml'))
      .sort()
      .map(name => [name, readFileSync(join(folder, name), 'utf8')]),
  );

/** Every file of the library by its name. Throws when the installation is not whole. */
export const libraryFiles = (root: string = packageRoot()): Library => ({
  kinds: yamlIn(join(root, 'data', 'kinds')),
  templates: yamlIn(join(root, 'data', 'templates')),
  rules: yamlIn(join(root, 'data', 'rules')),
});

export const demoText = (root: string = packageRoot()): DemoText => ({
  kart: readFileSync(join(root, 'data', 'demo', 'kart-41.yaml'), 'utf8'),
  season: readFileSync(join(root, 'data', 'demo', 'season.yaml'), 'utf8'),
});

/** Kart texts read so far: a book holds few, and the same one is asked for with every answer. */
const MOST_KEPT = 100;

/** Reads kart files with the shipped library, each text once. */
export function kartReader(library: Library): KartReader {
  const known = new Map<string, KartRead>();
  return {
    async read(text) {
      const before = known.get(text);
      if (before) return before;
      const read = readKart(text, library);
      if (known.size >= MOST_KEPT) known.clear();
      known.set(text, read);
      return read;
    },
  };
}
