/**
 * The real machine: files, clock, the SQLite book and the server. The one place of this face that builds them, each when
 * it is asked for, so that a question that needs none of them is answered at once.
 */
import { createReadStream, readFileSync } from 'node:fs';
import { readdir, readFile, stat, writeFile } from 'node:fs/promises';
import { userInfo } from 'node:os';
import { basename, dirname, join, relative, resolve } from 'node:path';
import type { App, BookStore, Clock, KartReader, RiskTexts } from '../app/index.ts';
import { packageRoot } from '../host/index.ts';
import { run } from './program.ts';
import { asked, textOf } from './terminal.ts';
import type { Backups, World } from './world.ts';

const root = packageRoot();

/** Made the first time it is asked for. */
function once<T>(make: () => Promise<T>): () => Promise<T> {
  let made: Promise<T> | undefined;
  return () => {
    made ??= make();
    return made;
  };
}

const host = once(() => import('../host/index.ts'));
const library = once(async () => (await host()).libraryFiles(root, join(root, 'dist', 'library.json')));
const shelf = once(async () => (await host()).kartReader(await library()));
const reader: KartReader = { read: async text => (await shelf()).read(text) };

async function appOn(
  store: BookStore,
  { device, snapshot }: { device: string; snapshot?: string },
  now?: Date,
): Promise<App> {
  const [{ createApp }, { fileSnapshots, randomIds, systemClock }] = await Promise.all([
    import('../app/index.ts'),
    host(),
  ]);
  const clock: Clock = now === undefined ? systemClock : { now: () => now };
  const snapshots = snapshot === undefined ? {} : { snapshots: fileSnapshots(snapshot) };
  return createApp({ store, clock, ids: randomIds, reader, device, ...snapshots });
}

/** Undefined when there is no such file; anything else that stands in the way is thrown. */
async function whenThere<T>(read: Promise<T>): Promise<T | undefined> {
  try {
    return await read;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === 'ENOENT') return undefined;
    throw error;
  }
}

function userName(): string | undefined {
  try {
    return userInfo().username;
  } catch {
    return undefined; // a machine without an entry for this user id
  }
}

const isDatabase = (place: string): boolean => /^postgres(ql)?:/.test(place);

/** A team has a folder of its own, a data folder like any other, also where its book is in a database (`?team=`). */
async function dataFolder(place?: string) {
  const { openDataFolder } = await host();
  if (place !== undefined && !isDatabase(place)) return openDataFolder({ KARTWRIGHT_DATA: place });
  const own = openDataFolder(process.env);
  const team = await teamHere();
  return team === '' ? own : openDataFolder({ KARTWRIGHT_DATA: join(own.path, 'teams', team) });
}

/** Which team's book `DATABASE_URL` names; '' for that of this machine. */
const teamHere = async (): Promise<string> =>
  process.env.DATABASE_URL ? (await import('../store/postgres/index.ts')).teamIn(process.env.DATABASE_URL) : '';

async function storeAt(place?: string): Promise<BookStore> {
  const database = place === undefined ? process.env.DATABASE_URL : isDatabase(place) ? place : undefined;
  if (!database) return (await import('../store/sqlite/index.ts')).openSqliteStore((await dataFolder(place)).book);
  return (await import('../store/postgres/index.ts')).openPostgresStore(database);
}

async function folderOfBackups(): Promise<string> {
  const named = process.env.KARTWRIGHT_BACKUPS;
  if (!named) return join((await dataFolder()).path, 'backups');
  const team = await teamHere();
  return team === '' ? named : join(named, 'teams', team); // the rules of keeping look at one book
}

const backups: Backups = {
  folder: folderOfBackups,
  list: async () => (await host()).backupsIn(await folderOfBackups()),
  name: async now => (await host()).backupFile(await folderOfBackups(), now),
  async write(file) {
    const [{ writeBackup }, { Refusal, proofOf }, sqlite] = await Promise.all([
      host(),
      import('../app/index.ts'),
      import('../store/sqlite/index.ts'),
    ]);
    return writeBackup(file, {
      async copy(part) {
        if (!process.env.DATABASE_URL) return sqlite.backUpSqlite((await dataFolder()).book, part);
        await using(storeAt(), from => using(sqlite.openSqliteStore(part), to => copied(from, to)));
      },
      async prove(part) {
        const proof = await using(sqlite.openSqliteStore(part), proofOf);
        if (proof.problems.length > 0) throw new Refusal(proof.problems);
        return proof;
      },
    });
  },
  async open(file) {
    if ((await whenThere(stat(file))) === undefined) return undefined;
    return (await import('../store/sqlite/index.ts')).openSqliteStore(file);
  },
  async ofTeams() {
    const failed: string[] = [];
    const teams = await teamsHere();
    for (const [team, more] of teams)
      await backUpApart(more).catch(error => failed.push(`team ${team}: ${(error as Error).message}`));
    return { teams: teams.length, failed };
  },
  async later(file) {
    const { backupsIn } = await host();
    const path = resolve(file);
    const newest = [dirname(path), resolve(await folderOfBackups())].flatMap(
      folder => backupsIn(folder).find(one => one.file !== path)?.file ?? [],
    );
    const opened: BookStore[] = [];
    for (const one of new Set(newest)) {
      const store = await backups.open(one).catch(() => undefined); // it is not what is restored
      if (store) opened.push(store);
    }
    return opened;
  },
  remove: async one => (await host()).removeBackup(one),
  daily: async () =>
    (await host()).everyDay({
      now: () => new Date(),
      last: async () => (await backups.list())[0]?.at,
      work: () => backUpApart({}, '--teams'),
      failed: error => world.err(`kartwright: the backup of today failed: ${String(error)}\n`),
    }),
  renameDevice: async () => (await host()).renameDevice(await dataFolder()),
};

/** What names the book of each team that was served from here. */
async function teamsHere(): Promise<readonly (readonly [team: string, more: NodeJS.ProcessEnv])[]> {
  const [{ path }, { isTeam }] = [await dataFolder(), await import('../app/index.ts')];
  const { DATABASE_URL: database, KARTWRIGHT_BACKUPS: kept } = process.env;
  const teams = ((await whenThere(readdir(join(path, 'teams')))) ?? []).filter(team => team !== '' && isTeam(team));
  return Promise.all(
    teams.map(async team => {
      const place = await placeOfTeam(team);
      if (database) return [team, { DATABASE_URL: place }] as const;
      return [
        team,
        { KARTWRIGHT_DATA: place, ...(kept && { KARTWRIGHT_BACKUPS: join(kept, 'teams', team) }) },
      ] as const;
    }),
  );
}

/** What a person does with `kartwright backup`, in a process of its own: who works at the bench does not wait for it. */
async function backUpApart(more: NodeJS.ProcessEnv, ...words: readonly string[]): Promise<void> {
  const { spawn } = await import('node:child_process');
  const child = spawn(process.execPath, [process.argv[1] ?? '', 'backup', ...words], {
    stdio: ['ignore', 'ignore', 'pipe'],
    env: { ...process.env, ...more },
  });
  let said = '';
  child.stderr.on('data', (text: Buffer) => {
    said = (said + text.toString()).slice(-2000);
  });
  const code = await new Promise(done => child.once('error', done).once('close', done));
  if (code !== 0) throw new Error(said.trim() || `exit ${String(code)}`);
}

async function copied(from: BookStore, to: BookStore): Promise<void> {
  const { Refusal, copyBook } = await import('../app/index.ts');
  const done = await copyBook(from, to);
  if (done.kind === 'refused') throw new Refusal(done.problems);
}

/** Closes what was opened, whatever happened. */
async function using<T extends { close(): Promise<void> }, R>(
  opened: Promise<T>,
  work: (one: T) => Promise<R>,
): Promise<R> {
  const one = await opened;
  try {
    return await work(one);
  } finally {
    await one.close();
  }
}

const devices = once(async () => (await host()).fileRegister((await dataFolder()).path));

/** The folder of a team lies in the one of the machine that serves it, and so does the register of the team's devices. */
async function registers() {
  const [{ fileRegister }, { isTeam }, { path }] = [await host(), await import('../app/index.ts'), await dataFolder()];
  const own = { register: await devices(), team: '' };
  const [team, above] = [basename(path), dirname(path)];
  const served = basename(above) === 'teams' && isTeam(team) ? dirname(above) : undefined;
  if (served === undefined || (await whenThere(stat(join(served, 'devices.json')))) === undefined) return [own];
  return [own, { register: fileRegister(served), team }];
}

async function placeOfTeam(team: string): Promise<string> {
  const database = process.env.DATABASE_URL;
  if (database) return (await import('../store/postgres/index.ts')).addressOfTeam(database, team);
  return join((await dataFolder()).path, 'teams', team);
}

async function bookOfTeam(team: string): Promise<App> {
  const folder = await dataFolder(join((await dataFolder()).path, 'teams', team));
  return appOn(await storeAt(await placeOfTeam(team)), folder);
}

const setupEffects = (): Promise<string> => readFile(join(root, 'data', 'setup-effects.yaml'), 'utf8');

async function riskTexts(): Promise<RiskTexts> {
  const text = (file: string): Promise<string> => readFile(join(root, 'data', file), 'utf8');
  return {
    retentions: await text('retentions.yaml'),
    priors: await text('priors.yaml'),
    severity: await text('severity.yaml'),
  };
}

const world: World = {
  env: process.env,
  user: userName(),
  version: (JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string }).version,
  now: () => new Date(),
  out: text => void process.stdout.write(text),
  err: text => void process.stderr.write(text),
  stdin: async () => (process.stdin.isTTY ? undefined : await textOf(process.stdin)),
  ask: process.stdin.isTTY && process.stdout.isTTY ? asked : undefined,
  readFile: path => whenThere(readFile(path, 'utf8')),
  readBytes: path => whenThere(readFile(path)),
  async readPieces(path) {
    const found = await whenThere(stat(path));
    if (found === undefined) return undefined;
    return { bytes: found.size, pieces: createReadStream(path, { highWaterMark: 1 << 18 }) };
  },
  async writeNew(path, text) {
    try {
      await writeFile(path, text, { flag: 'wx' });
      return true;
    } catch (error) {
      if ((error as NodeJS.ErrnoException).code === 'EEXIST') return false;
      throw error;
    }
  },
  schemaFor: file =>
    relative(dirname(resolve(file)), join(root, 'data', 'schema', 'kart.schema.json')).replaceAll('\\', '/'),
  library,
  demo: async () => (await host()).demoText(root),
  setupEffects,
  riskTexts,
  open: async () => appOn(await storeAt(), await dataFolder()),
  store: storeAt,
  backups,
  async scratch(now) {
    const { memoryStore } = await import('../store/memory/index.ts');
    return appOn(memoryStore(), { device: 'scratch' }, now);
  },
  devices,
  registers,
  newCode: async () => (await host()).newCode(),
  async serve(app, { port, host: address, https, log }) {
    const [{ startServer, jsonLines, levelOf }, machine] = await Promise.all([import('../server/index.ts'), host()]);
    const now = () => new Date();
    const [folder, outside] = [await dataFolder(), !/^(127\.|localhost$|::1$)/.test(address)];
    const also = (process.env.KARTWRIGHT_NAMES ?? '').split(/[\s,]+/).filter(name => name !== '');
    const names = () => (outside ? [...also, ...machine.localAddresses()] : []);
    const certificate = https && (await machine.certificateFor(join(folder.path, 'https'), names(), now()));
    const teams = new Map<string, Promise<App>>();
    const started = await startServer({
      port,
      host: address,
      names,
      also,
      ...(certificate && { certificate }),
      register: await devices(),
      secrets: { code: machine.newCode, token: machine.newToken, id: machine.newDeviceId },
      bookOf(team) {
        if (team === '') return Promise.resolve(app);
        const known = teams.get(team) ?? bookOfTeam(team);
        teams.set(team, known);
        known.catch(() => teams.delete(team)); // told to who asked; tried anew the next time
        return known;
      },
      now,
      log: jsonLines(levelOf(log), line => world.err(line), now),
      webRoot: join(root, 'dist', 'web'),
      setupEffects,
      riskTexts,
      library,
    });
    return {
      ...started,
      ...(certificate && { authority: { fingerprint: certificate.fingerprint, folder: certificate.folder } }),
      async close() {
        await started.close();
        for (const team of teams.values()) await (await team).close();
      },
    };
  },
  stopped: () =>
    new Promise(resolve => {
      for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
    }),
};

// A reader that has had enough (`| head`) is no error of ours.
process.stdout.on('error', error => {
  if ((error as NodeJS.ErrnoException).code === 'EPIPE') process.exit(0);
  throw error;
});
process.exitCode = await run(process.argv.slice(2), world);
