/** The page in a language nobody speaks: every text of `src/web/words` in brackets, so that a text from elsewhere shows. */
import { cpSync, mkdirSync, mkdtempSync, readdirSync, symlinkSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';
import { build, type Plugin } from 'vite';
import { page } from '../../vite.config.ts';

const ROOT = resolve(import.meta.dirname, '../..');
const WORDS = join(ROOT, 'src/web/words');

/** Files that hold words, from `words/`. */
const files = (): readonly string[] =>
  readdirSync(WORDS, { recursive: true })
    .map(String)
    .filter(file => /(?<!\.test)\.tsx?$/.test(file));

/** As src/web/words/README.md says: `language.ts`, the first import of `main.tsx`, lays another language over the objects. */
const madeUp: Plugin = {
  name: 'made-up-language',
  enforce: 'pre',
  resolveId: id => (id.endsWith('words/language.ts') ? join(WORDS, 'language.ts') : null),
  load: id => (id === join(WORDS, 'language.ts') ? language() : null),
  transform: (code, id) => (id === join(ROOT, 'src/web/main.tsx') ? `import '${WORDS}/language.ts';\n${code}` : null),
};

function language(): string {
  const all = files();
  return `${all.map((file, n) => `import * as words${n} from '${WORDS}/${file}';`).join('\n')}
const said = text => (text === '' ? text : '⟦' + text + '⟧');
const laidOver = value =>
  typeof value === 'string' ? said(value)
  : typeof value === 'function' ? (...given) => laidOver(value(...given))
  : Array.isArray(value) ? value.map(laidOver)
  : value?.props ? ((value.props.children = laidOver(value.props.children)), value)
  : value && Object.getPrototypeOf(value) === Object.prototype
    ? Object.fromEntries(Object.entries(value).map(([key, one]) => [key, laidOver(one)]))
  : value;
for (const file of [${all.map((_, n) => `words${n}`).join(', ')}])
  for (const [name, words] of Object.entries(file))
    if (name.endsWith('Words')) Object.assign(words, laidOver(words));
`;
}

/** The program as it was built, with the page in that language; in a folder that is the caller's to remove. */
export async function builtInMadeUp(): Promise<string> {
  const folder = mkdtempSync(join(tmpdir(), 'kartwright-language-'));
  mkdirSync(join(folder, 'dist'));
  for (const part of ['package.json', 'dist/cli.js', 'dist/cli', 'dist/library.json', 'data'])
    cpSync(join(ROOT, part), join(folder, part), { recursive: true });
  symlinkSync(join(ROOT, 'node_modules'), join(folder, 'node_modules'));
  await build({
    ...page,
    configFile: false,
    logLevel: 'error',
    plugins: [madeUp, page.plugins],
    build: { ...page.build, outDir: join(folder, 'dist/web'), minify: false },
  });
  return folder;
}
