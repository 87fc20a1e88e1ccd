/**
 * One at a time, across processes: `npm start` in two windows must not install or build at once.
 * The lock is a file holding a process id, touched every second while held. It is taken over when its process is dead,
 * or when it has not been touched while we watched it for STALE_POLLS polls (its id was given to another program).
 */
import { linkSync, mkdirSync, readFileSync, renameSync, rmSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { dirname } from 'node:path';

const POLL_MS = 200;
const STALE_POLLS = 150; // 30 s of our own watching, so that a laptop's sleep does not count

/** Runs `work` while holding the lock at `path`; says once on standard error whom it waits for. */
export async function withLock(path, work, { say = text => console.error(text), stalePolls = STALE_POLLS } = {}) {
  mkdirSync(dirname(path), { recursive: true });
  await take(path, say, stalePolls);
  const touch = setInterval(() => {
    try {
      utimesSync(path, new Date(), new Date());
    } catch {
      // Taken over by someone who believed us dead: nothing to keep alive any more.
    }
  }, 1000);
  touch.unref();
  const leave = () => rmSync(path, { force: true });
  process.once('exit', leave);
  try {
    return await work();
  } finally {
    clearInterval(touch);
    process.removeListener('exit', leave);
    leave();
  }
}

async function take(path, say, stalePolls) {
  let seen = '';
  let unchanged = 0;
  for (let told = false; ; ) {
    if (tryTake(path)) return;
    const holder = look(path);
    if (holder === undefined) continue; // let go of between the two looks
    unchanged = holder.stamp === seen ? unchanged + 1 : 0;
    seen = holder.stamp;
    if (!alive(holder.pid) || unchanged >= stalePolls) {
      moveAway(path, holder.text);
      continue;
    }
    if (!told) say(`Waiting for another start (process ${holder.pid}) to finish installing or building ...`);
    told = true;
    await new Promise(resolve => setTimeout(resolve, POLL_MS));
  }
}

function tryTake(path) {
  try {
    writeFileSync(path, `${process.pid} ${Date.now()}`, { flag: 'wx' });
    return true;
  } catch (error) {
    if (error.code === 'EEXIST') return false;
    throw error;
  }
}

function look(path) {
  try {
    const text = readFileSync(path, 'utf8');
    return { text, pid: Number.parseInt(text, 10), stamp: `${text} ${statSync(path).mtimeMs}` };
  } catch (error) {
    if (error.code === 'ENOENT') return undefined;
    throw error;
  }
}

function alive(pid) {
  if (!Number.isInteger(pid) || pid <= 0) return true; // just created, not yet written: the watch decides
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return error.code !== 'ESRCH';
  }
}

/** Moves a stale lock aside; puts it back when another process was quicker and what we moved is its new lock. */
function moveAway(path, stale) {
  const aside = `${path}.${process.pid}`;
  try {
    renameSync(path, aside);
    if (readFileSync(aside, 'utf8') !== stale) linkSync(aside, path);
  } catch (error) {
    if (error.code !== 'ENOENT' && error.code !== 'EEXIST') throw error;
  } finally {
    rmSync(aside, { force: true });
  }
}
