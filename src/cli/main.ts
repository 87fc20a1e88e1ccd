/** The real machine: files, clock, the SQLite book and the server. The one place of this face that builds them. */
import { readFileSync } from 'node:fs';
import { readFile, writeFile } from 'node:fs/promises';
import { userInfo } from 'node:os';
import { dirname, join, relative, resolve } from 'node:path';
import { createApp } from '../app/index.ts';
import {
  demoText,
  kartReader,
  libraryFiles,
  openDataFolder,
  packageRoot,
  randomIds,
  systemClock,
} from '../host/index.ts';
import type { Library } from '../kart/index.ts';
import { startServer } from '../server/index.ts';
import { memoryStore } from '../store/memory/index.ts';
import { openSqliteStore } from '../store/sqlite/index.ts';
import { run } from './program.ts';
import type { World } from './world.ts';

const root = packageRoot();
let files: Library | undefined;
const library = (): Library => {
  files ??= libraryFiles(root, join(root, 'dist', 'library.json'));
  return files;
};
const reader = { read: (text: string) => kartReaderOnce().read(text) };
let madeReader: ReturnType<typeof kartReader> | undefined;
const kartReaderOnce = () => {
  madeReader ??= kartReader(library());
  return madeReader;
};

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

const world: World = {
  env: process.env,
  user: userName(),
  version: (JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as { version: string }).version,
  now: systemClock.now,
  out: text => void process.stdout.write(text),
  err: text => void process.stderr.write(text),
  stdin: async () => (process.stdin.isTTY ? undefined : await textOf(process.stdin)),
  readFile: path => whenThere(readFile(path, 'utf8')),
  readBytes: path => whenThere(readFile(path)),
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
  demo: () => demoText(root),
  async open() {
    const folder = openDataFolder();
    return createApp({
      store: await openSqliteStore(folder.book),
      clock: systemClock,
      ids: randomIds,
      reader,
      device: folder.device,
    });
  },
  scratch: now =>
    createApp({
      store: memoryStore(),
      clock: now === undefined ? systemClock : { now: () => now },
      ids: randomIds,
      reader,
      device: 'scratch',
    }),
  serve: (app, at) => startServer({ app, ...at, webRoot: join(root, 'dist', 'web') }),
  stopped: () =>
    new Promise(resolve => {
      for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => resolve());
    }),
};

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
