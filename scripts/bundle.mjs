/** Builds dist/web (the page) and dist/cli.js (command line and server), both with Vite. */
import { rmSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './root.mjs';
import { run } from './run.mjs';

const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');

/** Throws with Vite's own output when a build fails. */
export async function bundle() {
  rmSync(join(root, 'dist'), { recursive: true, force: true }); // else chunks of old builds would pile up
  for (const [what, args] of [
    ['the page', ['build']],
    ['the command line', ['build', '--ssr', 'src/cli/main.ts']],
  ]) {
    const env = { ...process.env, NODE_ENV: 'production' };
    const { code, output } = await run(process.execPath, [vite, ...args, '--logLevel', 'warn'], {
      cwd: root,
      env,
      quiet: true,
    });
    if (code !== 0) throw new Error(`Building ${what} failed (vite exit ${code}); it said:\n${output.trim()}`);
  }
}
