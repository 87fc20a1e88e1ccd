/** The page for phone and tablet, served from this machine. `start` is what `npm start` runs. */
import { type Command, InvalidArgumentError } from 'commander';
import type { App } from '../../app/index.ts';
import { fail } from '../exit.ts';
import { planShort } from '../print/plan.ts';
import { openBook } from '../session.ts';
import type { World } from '../world.ts';

type Options = {
  readonly port: number;
  readonly host: string;
  readonly demo?: boolean;
  readonly backup: boolean;
  readonly json?: boolean;
};

/** In the range that is never assigned to a service (RFC 6335, section 6: dynamic ports from 49152). */
const PORT = 50271;

export function addServe(program: Command, world: World): void {
  const common = (command: Command): Command =>
    command
      .option('--port <n>', 'port; 0 takes any free one', port, PORT)
      .option('--host <address>', 'address to listen on; whoever reaches it can write into the book', '127.0.0.1')
      .option('--no-backup', 'make no backup a day (see kartwright backup)')
      .option('--demo', 'on a throw-away book with the invented demo kart')
      .option('--json', 'print the address as JSON');

  common(program.command('serve'))
    .description('serve the page for phone and tablet, on this machine only unless told otherwise')
    .addHelpText('after', '\nExample:\n  kartwright serve --port 8080\n')
    .action(async (options: Options) => {
      await serving(world, await openBook(world, options), options);
    });

  common(program.command('start', { hidden: true })).action(async (options: Options) => {
    const app = await openBook(world, options);
    await app.seedDemo(await world.demo());
    for (const { name, invented } of options.json ? [] : await app.karts()) {
      if (invented) world.out(`Kart ${name} and its season are invented.\n`);
      world.out(`${planShort(await app.plan(name))}\n`);
    }
    await serving(world, app, options);
  });
}

async function serving(world: World, app: App, { port, host, json, demo, backup }: Options): Promise<void> {
  const stopBackups = backup && !demo ? await world.backups.daily() : undefined;
  try {
    const server = await world.serve(app, { port, host }).catch(error => taken(error, port));
    world.out(
      json ? `${JSON.stringify({ url: server.url })}\n` : `Kartwright is at ${server.url}  (Ctrl-C stops it)\n`,
    );
    await world.stopped();
    await server.close();
  } finally {
    stopBackups?.();
    await app.close();
  }
}

function taken(error: unknown, port: number): never {
  if ((error as { code?: unknown } | null)?.code !== 'EADDRINUSE') throw error;
  return fail(
    'book',
    '--port',
    `Expected port ${port} to be free, and another program has it.`,
    'It may be this one, started before: look there; or name another with --port, 0 for any free one.',
  );
}

function port(text: string): number {
  const value = Number(text);
  if (/^\d+$/.test(text) && value <= 65535) return value;
  throw new InvalidArgumentError('Expected a port from 0 to 65535.');
}
