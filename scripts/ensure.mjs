/** Brings a clone to where it can run: packages installed as the lock file says, dist/ built from the sources as they are. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { bundle } from './bundle.mjs';
import { fingerprint, readMark } from './fingerprint.mjs';
import { withLock } from './lock.mjs';
import { root } from './root.mjs';
import { run } from './run.mjs';

const lockFile = join(root, '.kartwright', 'start.lock');
const installMark = join(root, 'node_modules', '.kartwright-installed');
const buildMark = join(root, 'dist', '.built-from');

/** What the packages in node_modules depend on: the wanted ones, the lock, and what a prebuilt binary is tied to. */
function installPrint() {
  const { dependencies, devDependencies, optionalDependencies, overrides } = JSON.parse(
    readFileSync(join(root, 'package.json'), 'utf8'),
  );
  const wanted = JSON.stringify({ dependencies, devDependencies, optionalDependencies, overrides });
  return fingerprint(root, ['package-lock.json', '.npmrc'], {
    also: [wanted, process.platform, process.arch, process.versions.modules],
  });
}

function buildPrint() {
  return fingerprint(root, ['src', 'vite.config.ts', 'tsconfig.json', 'package.json', 'package-lock.json'], {
    skip: /\.test\.tsx?$|README\.md$|SPEC\.md$/,
  });
}

/** Installs the packages of the lock file unless they are there. Throws a readable error when npm cannot. */
export async function ensureInstalled() {
  if (readMark(installMark) === installPrint()) return;
  await withLock(lockFile, async () => {
    const print = installPrint();
    if (readMark(installMark) === print) return; // another start did it while we waited
    console.error('Installing the packages of package-lock.json ...');
    await npmCi();
    writeMark(installMark, print);
  });
}

/** Builds dist/ unless it was built from these very sources. */
export async function ensureBuilt() {
  if (readMark(buildMark) === buildPrint()) return;
  await ensureInstalled();
  await withLock(lockFile, async () => {
    const print = buildPrint(); // before the build: a source edited meanwhile makes the next start build again
    if (readMark(buildMark) === print) return;
    console.error('Building ...');
    await bundle();
    writeMark(buildMark, print);
  });
}

function writeMark(path, text) {
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, `${text}\n`);
}

/** `npm ci`, once more if it fails: a registry that hiccups is the usual reason. */
async function npmCi() {
  const own = process.env.npm_execpath;
  const [command, ...args] = own?.endsWith('js') ? [process.execPath, own, 'ci'] : ['npm', 'ci'];
  const env = { ...process.env, npm_config_loglevel: 'warn' };
  const options = { cwd: root, env, quiet: true, shell: command === 'npm' && process.platform === 'win32' };
  const first = await run(command, args, options);
  if (first.code === 0) return;
  const second = await run(command, args, options);
  if (second.code === 0) return;
  throw new Error(
    `npm ci failed twice (exit ${second.code}); it said:\n${second.output.trim()}\n` +
      'Expected the packages of package-lock.json to install: check the network and the free space, then run the same command again.',
  );
}
