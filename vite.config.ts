/** `vite build` makes the web page in dist/web; `vite build --ssr src/cli/main.ts` makes the command line, dist/cli.js. */
import { fileURLToPath } from 'node:url';
import { defineConfig } from 'vite';

const here = (path: string) => fileURLToPath(new URL(path, import.meta.url));

export default defineConfig(({ isSsrBuild }) =>
  isSsrBuild
    ? {
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
