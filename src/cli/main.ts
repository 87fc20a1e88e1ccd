/**
 * The real machine: files, clock, the SQLite book and the server. The one place of this face that builds them, each when
 * it is asked for, so that a question that needs none of them is answered at once.
 */
import { createReadStream, readFileSync } from 'node:fs';
import { readFile, stat, writeFile } from 'node:fs/promises';
import { userInfo } from 'node:os';
import { dirname, join, relative, resolve } from 'node:path';
import type { App, BookStore, Clock, KartReader, RiskTexts } from '../app/index.ts';
import { packageRoot } from '../host/index.ts';
import { run } from './program.ts';
import type { World } from './world.ts';

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

async function appOn(store: BookStore, device: string, now?: Date): Promise<App> {
  const [{ createApp }, { randomIds, systemClock }] = await Promise.all([import('../app/index.ts'), host()]);
  const clock: Clock = now === undefined ? systemClock : { now: () => now };
  return createApp({ store, clock, ids: randomIds, reader, device });
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
  async open(place) {
    const { openDataFolder } = await host();
    const folder = openDataFolder(place === undefined || isDatabase(place) ? process.env : { KARTWRIGHT_DATA: place });
    const database = place === undefined ? process.env.DATABASE_URL : isDatabase(place) ? place : undefined;
    if (!database) {
      const { openSqliteStore } = await import('../store/sqlite/index.ts');
      return appOn(await openSqliteStore(folder.book), folder.device);
    }
    const { openPostgresStore } = await import('../store/postgres/index.ts');
    return appOn(await openPostgresStore(database), folder.device);
  },
  async scratch(now) {
    const { memoryStore } = await import('../store/memory/index.ts');
    return appOn(memoryStore(), 'scratch', now);
  },
  async serve(app, at) {
    const { startServer } = await import('../server/index.ts');
    return startServer({ app, ...at, webRoot: join(root, 'dist', 'web'), setupEffects, riskTexts, library });
  },
  stopped: () =>
    new Promise(resolve => {
      for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
    }),
};

/** What was typed. The end of input is the end of the talk: nothing is recorded. */
async function asked(question: string): Promise<string> {
  const { createInterface } = await import('node:readline/promises');
  const lines = createInterface({ input: process.stdin, output: process.stdout });
  const ended = new Promise<never>((_, reject) =>
    lines.once('close', () => reject(new Error('Expected an answer, got the end of input; nothing was recorded'))),
  );
  try {
    return await Promise.race([lines.question(question), ended]);
  } finally {
    ended.catch(() => undefined);
    lines.close();
  }
}

async function textOf(stream: AsyncIterable<Uint8Array | string>): Promise<string> {
  const chunks: Uint8Array[] = [];
  for await (const chunk of stream) chunks.push(typeof chunk === 'string' ? Buffer.from(chunk) : chunk);
  return Buffer.concat(chunks).toString('utf8');
}

// A reader that has had enough (`| head`) is no error of ours.
process.stdout.on('error', error => {
  if ((error as NodeJS.ErrnoException).code === 'EPIPE') process.exit(0);
  throw error;
});
process.exitCode = await run(process.argv.slice(2), world);
