/** `vite build` makes the web page in dist/web; `vite build --ssr src/cli/main.ts` makes the command line, dist/cli.js. */
import { fileURLToPath } from 'node:url';
import { defineConfig, type Plugin } from 'vite';
import { packedLibrary } from './src/host/index.ts';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

/** The shipped kinds, templates and rule sets, parsed and checked once here and not at every start. */
const library: Plugin = {
  name: 'library',
  generateBundle() {
    this.emitFile({ type: 'asset', fileName: 'library.json', source: packedLibrary(here('.')) });
  },
};

/** Nothing of ours does anything by being imported but what a page or its worker begins with, so the numbers wait in their own chunk. */
const treeshake = {
  moduleSideEffects: (id: string) =>
    !/\/src\/(?!web\/(main|(plan\/worker|laps\/(compare-)?worker)))/.test(id) || /\.(css|html)/.test(id),
};

export default defineConfig(({ isSsrBuild }) =>
  isSsrBuild
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
        root: here('src/web'),
        build: {
          outDir: here('dist/web'),
          emptyOutDir: true,
          target: 'es2022',
          assetsInlineLimit: 0,
          modulePreload: { polyfill: false },
          rolldownOptions: { treeshake },
        },
        worker: { format: 'es', rolldownOptions: { treeshake } },
      },
);
