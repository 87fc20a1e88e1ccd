/** Builds dist/web (the page) and dist/cli.js (command line and server), both with Vite. */
import { cpSync, existsSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import { root } from './root.mjs';
import { run } from './run.mjs';

const vite = join(root, 'node_modules', 'vite', 'bin', 'vite.js');

/** Made beside dist/ and then put in its place, so that a failed build leaves the old one and a running one misses no file for long. */
const next = join(root, '.kartwright', 'dist');
const dist = join(root, 'dist');
const LATE_MS = 10 * 60_000;

/** Throws with Vite's own output when a build fails. */
export async function bundle() {
  rmSync(next, { recursive: true, force: true });
  for (const [what, args] of [
    ['the page', ['build', '--outDir', join(next, 'web')]],
    ['the command line', ['build', '--ssr', 'src/cli/main.ts', '--outDir', next]],
  ]) {
    const env = { ...process.env, NODE_ENV: 'production' };
    const { code, output } = await run(process.execPath, [vite, ...args, '--logLevel', 'warn'], {
      cwd: root,
      env,
      quiet: true,
    });
    if (code !== 0) throw new Error(`Building ${what} failed (vite exit ${code}); it said:\n${output.trim()}`);
  }
  keepLate();
  rmSync(dist, { recursive: true, force: true });
  renameSync(next, dist);
}

/** A program started just before still fetches its chunks: those of the last minutes stay beside the new ones. */
function keepLate() {
  const old = join(dist, 'cli');
  if (!existsSync(old)) return;
  for (const name of readdirSync(old)) {
    const from = join(old, name);
    if (Date.now() - statSync(from).mtimeMs < LATE_MS)
      cpSync(from, join(next, 'cli', name), { force: false, preserveTimestamps: true });
  }
}
