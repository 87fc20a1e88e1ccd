/** The kinds, templates and rule sets that are shipped, and the demo, as text. */
import { createHash } from 'node:crypto';
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { DemoText, KartRead, KartReader } from '../app/index.ts';
import { type Library, type LibraryTexts, type Packs, packLibrary, readKart } from '../kart/index.ts';
import { packageRoot } from './root.ts';

const yamlIn = (folder: string): Record<string, string> =>
  Object.fromEntries(
    readdirSync(folder)
      .filter(name => name.endsWith('.yaml'))
      .sort()
      .map(name => [name, readFileSync(join(folder, name), 'utf8')]),
  );

const textsIn = (root: string): LibraryTexts => ({
  kinds: yamlIn(join(root, 'data', 'kinds')),
  templates: yamlIn(join(root, 'data', 'templates')),
  rules: yamlIn(join(root, 'data', 'rules')),
  instruments: yamlIn(join(root, 'data', 'instruments')),
});

/** As the build writes it down: a file's pack counts only for the very text it was made of. */
type PackFile = Readonly<Record<string, { readonly sha256: string; readonly pack: Packs[string] }>>;

/** What the build keeps beside the program, so that each start need not parse the YAML again. */
export function packedLibrary(root: string): string {
  const texts = textsIn(root);
  const entries = Object.entries(packLibrary(texts)).map(([file, pack]) => [
    file,
    { sha256: hashIn(texts, file), pack },
  ]);
  return JSON.stringify(Object.fromEntries(entries));
}

/**
 * Every file of the library by its name. `packed` names the build's own copy of it; a file that was corrected since, or
 * is not in there, is read from its YAML. Throws when the installation is not whole.
 */
export function libraryFiles(root: string = packageRoot(), packed?: string): Library {
  const texts = textsIn(root);
  if (packed === undefined || !existsSync(packed)) return texts;
  const fresh = Object.entries(JSON.parse(readFileSync(packed, 'utf8')) as PackFile)
    .filter(([file, { sha256 }]) => sha256 === hashIn(texts, file))
    .map(([file, { pack }]) => [file, pack] as const);
  return { ...texts, packs: Object.fromEntries(fresh) };
}

/** @param file 'kinds/brakes.yaml'; undefined when there is no such text */
function hashIn(texts: LibraryTexts, file: string): string | undefined {
  const [folder, name] = file.split('/') as [keyof LibraryTexts, string];
  const text = texts[folder]?.[name];
  return text === undefined ? undefined : createHash('sha256').update(text).digest('hex');
}

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
