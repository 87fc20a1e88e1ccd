/** `npm run bench`: builds bench/main.ts beside the packages and runs it. Prints figures and ratios; passes no judgement. */
import { join } from 'node:path';
import { ensureBuilt, ensureInstalled } from './ensure.mjs';
import { root } from './root.mjs';
import { run } from './run.mjs';
import { toldAndDone } from './told.mjs';

const out = join(root, 'node_modules', '.cache', 'kartwright', 'bench');

await toldAndDone(async () => {
  await ensureInstalled();
  await ensureBuilt(); // the start of the built command line is one of the figures
  const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');
  const args = [
    'build',
    '--config',
    'bench/vite.config.ts',
    '--ssr',
    'bench/main.ts',
    '--outDir',
    out,
    '--logLevel',
    'warn',
  ];
  const built = await run(process.execPath, [vite, ...args], { cwd: root, quiet: true });
  if (built.code !== 0) throw new Error(`Building the bench failed; it said:\n${built.output}`);
  const { code } = await run(process.execPath, ['--expose-gc', join(out, 'main.js'), ...process.argv.slice(2)], {
    cwd: root,
  });
  if (code !== 0) throw new Error(`The bench ended with exit ${code}.`);
});
