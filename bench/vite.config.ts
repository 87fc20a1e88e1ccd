/** Builds the bench as the product is built: bundled, for the Node that runs it. */
import { defineConfig } from 'vite';

export default defineConfig({
  ssr: { noExternal: true, external: ['@photostructure/sqlite', 'playwright-core', 'vite', 'pg'] },
  build: { target: 'node20', minify: false, emptyOutDir: true, rolldownOptions: { external: [/^node:/] } },
});
