/**
 * What a newcomer meets: clones this repository's last commit into a temporary folder, runs `npm start` there twice, asks the
 * address it prints for the page and a kart, and stops it. By hand: node scripts/fresh-clone.mjs
 * A developer's folder always has something that a clone lacks; this finds it.
 */
import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { root } from './root.mjs';
import { run } from './run.mjs';
import { toldAndDone } from './told.mjs';

const ADDRESS = /http:\/\/(?:127\.0\.0\.1|localhost|\[::1\]):\d+/;
const FIRST_START_MS = 300_000; // packages are fetched
const STOP_MS = 10_000;

await toldAndDone(async () => {
  const folder = mkdtempSync(join(tmpdir(), 'kartwright-clone-'));
  try {
    const clone = join(folder, 'kartwright');
    const cloned = await run('git', ['clone', '--quiet', root, clone], { quiet: true });
    if (cloned.code !== 0) throw new Error(`git clone failed; it said:\n${cloned.output}`);
    const env = { ...process.env, KARTWRIGHT_DATA: join(folder, 'data') };
    const first = await startAndAsk(clone, env);
    console.log(`first start: the page after ${first.seconds} s`);
    const second = await startAndAsk(clone, env);
    console.log(`second start: the page after ${second.seconds} s`);
    if (first.facts !== second.facts) {
      throw new Error(
        `A second start must change nothing: ${first.facts} facts after the first, ${second.facts} after the second.`,
      );
    }
    const dirty = await run('git', ['status', '--porcelain'], { cwd: clone, quiet: true });
    if (dirty.output.trim() !== '') throw new Error(`npm start must leave the clone clean, got:\n${dirty.output}`);
    console.log(`${first.facts} facts in the new book, the same after the second start; the clone is clean`);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});

async function startAndAsk(cwd, env) {
  const from = Date.now();
  const npm = spawn('npm', ['start'], { cwd, env, stdio: ['ignore', 'pipe', 'pipe'], detached: true });
  const ended = new Promise(resolve => npm.on('close', resolve));
  try {
    const address = await addressOf(npm, ended);
    const page = await fetch(address);
    if (!page.ok || !(await page.text()).includes('Kartwright'))
      throw new Error(`${address} answered ${page.status} and not the page`);
    const seconds = ((Date.now() - from) / 1000).toFixed(1);
    const facts = (await (await fetch(`${address}/api/export`)).text()).trim().split('\n').length - 1;
    return { seconds, facts };
  } finally {
    stop(npm.pid, 'SIGTERM');
    const late = setTimeout(() => stop(npm.pid, 'SIGKILL'), STOP_MS);
    await ended;
    clearTimeout(late);
  }
}

/** npm and what it started are a process group of their own; it may have ended by itself. */
function stop(group, signal) {
  try {
    process.kill(-group, signal);
  } catch (error) {
    if (error.code !== 'ESRCH') throw error;
  }
}

/** Waits for the printed address; fails with all that was printed when the program ends before or takes too long. */
function addressOf(npm, ended) {
  return new Promise((resolve, reject) => {
    let output = '';
    const fail = why => reject(new Error(`npm start ${why}; it printed:\n${output}`));
    const timer = setTimeout(() => fail('printed no address in five minutes'), FIRST_START_MS);
    const hear = text => {
      output += text;
      const found = ADDRESS.exec(output);
      if (!found) return;
      clearTimeout(timer);
      resolve(found[0]);
    };
    npm.stdout.setEncoding('utf8').on('data', hear);
    npm.stderr.setEncoding('utf8').on('data', hear);
    ended.then(() => {
      clearTimeout(timer);
      fail('ended');
    });
  });
}
