/** Which book and which kart a command works on. */
import type { Command } from 'commander';
import { type App, Refusal } from '../app/index.ts';
import { fail } from './exit.ts';
import { typedTime } from './when.ts';
import type { World } from './world.ts';

export type Common = {
  readonly json?: boolean;
  readonly at?: string;
  readonly demo?: boolean;
  readonly kart?: string;
  readonly by?: string;
  readonly event?: string;
};

/** The options every command on a kart has. */
export const onKart = (
  command: Command,
  which = 'kart of the book, or a kart file (default: the only kart in the book)',
): Command =>
  command
    .option('--kart <name|file>', which)
    .option('--at <time>', 'any past moment: 2026-11-25T15:45:00Z, or "2026-11-25 15:45" by this clock')
    .option('--demo', 'on a throw-away book with the invented demo kart')
    .option('--json', 'print JSON');

export const signed = (command: Command): Command =>
  command.option('--by <name>', 'who did it (default: KARTWRIGHT_BY, else the login name)');

export type Session = { readonly app: App; readonly kart: string; readonly at?: string };

/** Opens the book, runs the work on one kart, and closes the book whatever happened. */
export async function session<T>(
  world: World,
  options: Common,
  mode: 'ask' | 'write',
  work: (session: Session) => Promise<T>,
): Promise<T> {
  const at = options.at === undefined ? {} : { at: typedTime(options.at) };
  const book = await openBook(world, options);
  let app = book;
  try {
    const file = await kartFile(world, options.kart, book);
    if (file === undefined) return await work({ app, kart: options.kart ?? (await onlyKart(book)), ...at });
    if (mode === 'ask' && !(await inForce(book, file.text))) app = await beside(world, book, at.at);
    const filed = await app.fileKart(file.text, { by: personOf(world, options) });
    if (filed.kind === 'refused') throw inFile(file.path, filed.problems);
    return await work({ app, kart: filed.kart, ...at });
  } finally {
    if (app !== book) await app.close();
    await book.close();
  }
}

/** The book of the data folder, or with --demo a throw-away one with the demo kart in it. */
export async function openBook(world: World, options: Pick<Common, 'demo'>): Promise<App> {
  if (!options.demo) return world.open();
  const app = await world.scratch();
  await app.seedDemo(await world.demo());
  return app;
}

export const personOf = (world: World, options: Pick<Common, 'by'>): string =>
  options.by ?? world.env.KARTWRIGHT_BY ?? world.user ?? '';

type File = { readonly path: string; readonly text: string };

/** A name of the book wins over a file of that name. */
async function kartFile(world: World, kart: string | undefined, app: App): Promise<File | undefined> {
  if (kart === undefined || (await app.karts()).some(line => line.name === kart)) return undefined;
  const text = await world.readFile(kart);
  if (text !== undefined) return { path: kart, text };
  if (/\.ya?ml$/.test(kart) || /[\\/]/.test(kart))
    fail(
      'unknown kart',
      '--kart',
      `Expected a kart file, and there is none at ${kart}.`,
      'Make one: kartwright new FILE --template NAME.',
    );
  return undefined;
}

async function inForce(app: App, text: string): Promise<boolean> {
  for (const { name } of await app.karts())
    for (const { fact } of await app.facts(name, { kinds: ['kart filed'], last: 1 }))
      if (fact.kind === 'kart filed' && fact.text === text) return true;
  return false;
}

/** A copy of the book in memory, so that asking about a changed kart file writes nothing. */
async function beside(world: World, book: App, at: string | undefined): Promise<App> {
  const copy = await world.scratch(at === undefined ? undefined : new Date(at));
  await copy.importBook(await book.exportBook());
  return copy;
}

async function onlyKart(app: App): Promise<string> {
  const karts = await app.karts();
  const [only] = karts;
  if (only && karts.length === 1) return only.name;
  return fail(
    'unknown kart',
    '--kart',
    karts.length === 0
      ? 'Expected a kart, and the book is empty.'
      : `Expected one kart, and the book holds ${karts.map(line => line.name).join(', ')}.`,
    karts.length === 0
      ? 'Make a kart file with `kartwright new FILE --template NAME` and name it with --kart FILE, or look round with --demo.'
      : 'Name it with --kart.',
  );
}

export const inFile = (path: string, problems: Refusal['problems']): Refusal =>
  new Refusal(problems.map(problem => ({ ...problem, where: `${path}, ${problem.where}` })));
