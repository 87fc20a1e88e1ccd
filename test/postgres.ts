/**
 * A PostgreSQL server of our own for tests, from the binaries of the system, on a free port of loopback, in a folder that
 * is gone afterwards. It does not run as root, so root hands it to the system's user for it.
 */
import { execFileSync, spawn } from 'node:child_process';
import { once } from 'node:events';
import { chownSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

export type Postgres = {
  readonly url: string;
  readonly newDatabase: () => Promise<string>;
  /** As when the power fails. */
  readonly kill: () => Promise<void>;
  readonly start: () => Promise<void>;
  readonly stop: () => Promise<void>;
};

/** Only processes are killed here, never the machine, so what was handed to the system is not lost; forcing the disk is the server's own matter. */
const FAST = ['-c', 'fsync=off', '-c', 'recovery_init_sync_method=syncfs'];
const ROOT = '/usr/lib/postgresql';
/** The newest that is there; undefined when none is. */
export function postgresBinaries(): string | undefined {
  const versions = existsSync(ROOT) ? readdirSync(ROOT).filter(name => /^\d+$/.test(name)) : [];
  const [newest] = versions.map(Number).sort((a, b) => b - a);
  return newest === undefined ? undefined : join(ROOT, String(newest), 'bin');
}

/** @param how `durable`: commits wait for the disk, as they do for people */
export async function startPostgres(bin: string, how: { readonly durable?: boolean } = {}): Promise<Postgres> {
  const folder = mkdtempSync(join(tmpdir(), 'kartwright-postgres-'));
  const as = runner();
  if (as.uid !== undefined && as.gid !== undefined) chownSync(folder, as.uid, as.gid);
  const data = join(folder, 'data');
  const run = (name: string, ...args: string[]) =>
    execFileSync(join(bin, name), args, { ...as, cwd: folder, stdio: 'pipe' });
  run('initdb', '-D', data, '-U', 'kartwright', '--auth=trust', '--no-sync', '-E', 'UTF8', '--locale=C');
  const port = await freePort();
  const address = `postgres://kartwright@127.0.0.1:${port}`;
  let server: ReturnType<typeof spawn> | undefined;
  let databases = 0;

  /** Processes of a server that was killed go a moment after it, and hold its memory until then. */
  const LEFT_OVER = /pre-existing shared memory block/;
  const start = async (again = 20): Promise<void> => {
    const started = spawn(
      join(bin, 'postgres'),
      [
        '-D',
        data,
        '-p',
        String(port),
        '-h',
        '127.0.0.1',
        '-k',
        folder,
        '-c',
        'max_connections=60',
        ...(how.durable ? [] : FAST),
      ],
      { ...as, cwd: folder, stdio: ['ignore', 'ignore', 'pipe'] },
    );
    server = started;
    let said = '';
    started.stderr?.setEncoding('utf8').on('data', (text: string) => {
      said = (said + text).slice(-4000);
    });
    for (let tries = 0; tries < 300; tries++) {
      if (started.exitCode !== null) {
        if (again === 0 || !LEFT_OVER.test(said))
          throw new Error(`postgres must start, got exit ${started.exitCode}: ${said}`);
        await new Promise(done => setTimeout(done, 100));
        return start(again - 1);
      }
      try {
        return void run('pg_isready', '-h', '127.0.0.1', '-p', String(port), '-q');
      } catch {
        await new Promise(done => setTimeout(done, 50));
      }
    }
    throw new Error(`postgres must start within 15 s, got: ${said}`);
  };
  const end = async (signal: 'SIGKILL' | 'SIGINT'): Promise<void> => {
    const running = server;
    if (running === undefined || running.exitCode !== null || running.signalCode !== null) return;
    const ended = once(running, 'exit');
    running.kill(signal);
    await ended;
  };
  await start();
  return {
    url: `${address}/postgres`,
    async newDatabase() {
      const name = `book_${++databases}`;
      run('createdb', '-h', '127.0.0.1', '-p', String(port), '-U', 'kartwright', name);
      return `${address}/${name}`;
    },
    kill: () => end('SIGKILL'),
    start: () => start(),
    async stop() {
      await end('SIGINT'); // fast shutdown
      rmSync(folder, { recursive: true, force: true });
    },
  };
}

function runner(): { readonly uid?: number; readonly gid?: number } {
  if (process.getuid?.() !== 0) return {};
  const line = readFileSync('/etc/passwd', 'utf8')
    .split('\n')
    .find(one => one.startsWith('postgres:') || one.startsWith('nobody:'));
  const [, , uid, gid] = (line ?? '').split(':').map(Number);
  return uid === undefined || gid === undefined ? {} : { uid, gid };
}

async function freePort(): Promise<number> {
  const probe = createServer().listen(0, '127.0.0.1');
  await once(probe, 'listening');
  const address = probe.address();
  probe.close();
  await once(probe, 'close');
  if (address === null || typeof address === 'string') throw new Error('freePort: loopback must give a port');
  return address.port;
}
