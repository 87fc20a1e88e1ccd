/** `vite build` makes the web page in dist/web; `vite build --ssr src/cli/main.ts` makes the command line, dist/cli.js. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { build, defineConfig, type Plugin, type UserConfig } from 'vite';
import { packedLibrary } from './src/host/index.ts';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** The shipped kinds, templates and rule sets, parsed and checked once here and not at every start. */
const library: Plugin = {
  name: 'library',
  generateBundle() {
    this.emitFile({ type: 'asset', fileName: 'library.json', source: packedLibrary(here('.')) });
  },
};

/** The licence of the type family goes with it, as it asks. */
const fontLicence: Plugin = {
  name: 'font-licence',
  generateBundle() {
    const source = readFileSync(here('src/web/style/fonts/barlow-licence.txt'));
    this.emitFile({ type: 'asset', fileName: 'barlow-licence.txt', source });
  },
};

/**
 * Writes into the service worker which files this build has, and a name that changes with any of them. It stands beside
 * the page under a name that never changes, and is not among them.
 */
const pageFiles: Plugin = {
  name: 'page-files',
  enforce: 'post',
  generateBundle(_, bundle) {
    const worker = bundle['sw.js'];
    if (worker?.type !== 'chunk') throw new Error('page-files: expected the service worker as sw.js, found none');
    const publicFolder = here('src/web/public');
    const contents = new Map<string, string | Uint8Array>([
      ...Object.values(bundle).flatMap(one =>
        one === worker || one.fileName.endsWith('.map')
          ? []
          : [[`/${one.fileName}`, one.type === 'chunk' ? one.code : one.source] as const],
      ),
      ...readdirSync(publicFolder).map(name => [`/${name}`, readFileSync(join(publicFolder, name))] as const),
    ]);
    const files = [...contents.keys()].sort();
    if (!files.includes('/index.html')) throw new Error('page-files: expected index.html in the build, found none');
    const hash = createHash('sha256').update(worker.code);
    for (const file of files) hash.update(file).update(contents.get(file) ?? '');
    const first = files.filter(
      file => /^\/(assets\/|early\.js)/.test(file) && String(contents.get('/index.html')).includes(file),
    );
    const list = JSON.stringify({ files, first, version: hash.digest('hex').slice(0, 16) });
    const filled = worker.code.replace(/(["'`])__FILES__\1/, () => JSON.stringify(list));
    if (filled === worker.code)
      throw new Error('page-files: expected a place for the files in src/web/sw.ts, found none');
    worker.code = filled;
  },
};

/** Nothing of ours does anything by being imported but what a page or its worker begins with and a second language, so the numbers wait in their own chunk. */
const treeshake = {
  moduleSideEffects: (id: string) =>
    !/\/src\/(?!web\/(main|no-eval|sw|words\/language|book\/book-worker|(plan|slow-questions|kart-file)\/worker|laps\/((compare|import|predict)-)?worker))/.test(
      id,
    ) || /\.(css|html)/.test(id),
};

/** The page without what a first look finds out about its files. */
export const page: UserConfig = {
  root: here('src/web'),
  plugins: [fontLicence, pageFiles],
  build: {
    outDir: here('dist/web'),
    emptyOutDir: true,
    target: 'es2022',
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
    rolldownOptions: {
      treeshake,
      input: { index: here('src/web/index.html'), sw: here('src/web/sw.ts') },
      output: { entryFileNames: ({ name }) => (name === 'sw' ? 'sw.js' : 'assets/[name]-[hash].js') },
    },
  },
  // Else a chunk that is fetched when it is wanted is put into the one that would fetch it.
  worker: {
    format: 'es',
    rolldownOptions: {
      treeshake,
      experimental: { chunkOptimization: false },
      output: {
        codeSplitting: {
          includeDependenciesRecursively: false,
          // Small files that are all needed at once, for each costs a little more.
          groups: [
            {
              name: 'core',
              test: /zod.v4|noble|src.(quantity|book|kart.(model|disturb|suggest)|app.(asking|problem|reading|snapshot|words))/,
            },
          ],
        },
      },
    },
  },
};

/** What the page runs before anybody asks for more, found by building it once: what only a later sheet uses is not among it. */
async function modulesAtOnce(): Promise<ReadonlySet<string>> {
  const found = new Set<string>();
  const collect: Plugin = {
    name: 'modules-at-once',
    generateBundle(_, bundle) {
      const seen = new Set<string>();
      const walk = (file: string): void => {
        const chunk = bundle[file];
        if (chunk?.type !== 'chunk' || seen.has(file)) return;
        seen.add(file);
        for (const id of chunk.moduleIds) found.add(id);
        for (const next of chunk.imports) walk(next);
      };
      for (const one of Object.values(bundle))
        if (one.type === 'chunk' && one.name === 'index' && one.isEntry) walk(one.fileName);
    },
  };
  await build({
    ...page,
    configFile: false,
    logLevel: 'error',
    plugins: [collect],
    build: { ...page.build, write: false },
  });
  if (found.size === 0) throw new Error('modules-at-once: expected the modules of index.html, found none');
  return found;
}

export default defineConfig(async ({ isSsrBuild }): Promise<UserConfig> => {
  const atOnce = isSsrBuild ? undefined : await modulesAtOnce();
  return isSsrBuild
    ? {
        plugins: [library],
        // Bundled whole, for one file is read faster than a hundred; what holds a compiled binary, and what few need, stays a package.
        ssr: { noExternal: true, external: ['@photostructure/sqlite', 'pg'] },
        build: {
          outDir: here('dist'),
          emptyOutDir: false,
          target: 'node20',
          minify: false,
          sourcemap: true,
          rolldownOptions: {
            external: [/^node:/],
            // Nothing of ours does anything by being imported but main.ts, so what is not asked for at once stays in its chunk.
            treeshake: { moduleSideEffects: id => !/\/src\/(?!cli\/main)/.test(id) },
            output: {
              entryFileNames: 'cli.js',
              chunkFileNames: 'cli/[name]-[hash].js',
              // What every command needs at once lies apart from the readers and the planner.
              codeSplitting: {
                includeDependenciesRecursively: false,
                groups: [{ name: 'words', test: /src.(quantity.|app.(problem|when|words)|kart.suggest|host.root)/ }],
              },
            },
          },
        },
      }
    : {
        ...page,
        build: {
          ...page.build,
          rolldownOptions: {
            ...page.build?.rolldownOptions,
            output: {
              ...page.build?.rolldownOptions?.output,
              // One file: a phone waits for each, however small.
              codeSplitting: {
                includeDependenciesRecursively: false,
                groups: [{ name: 'bench', test: id => atOnce?.has(id) ?? false }],
              },
            },
          },
        },
      };
});
