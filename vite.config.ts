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

export default defineConfig(({ isSsrBuild }) =>
  isSsrBuild
    ? {
        plugins: [library],
        // Bundled whole, for one file is read faster than a hundred; what holds a compiled binary stays a package.
        ssr: { noExternal: true, external: ['@photostructure/sqlite'] },
        build: {
          outDir: here('dist'),
          emptyOutDir: false,
          target: 'node20',
          minify: false,
          sourcemap: true,
          rolldownOptions: {
            external: [/^node:/],
            output: { entryFileNames: 'cli.js', chunkFileNames: 'cli/[name]-[hash].js' },
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
        },
      },
);
